import { describe, expect, it } from 'vitest'
import { BANDS_HZ } from '#acoustics/bands.ts'
import type { Prediction } from '#acoustics/layered/predict.ts'
import { rate, STC } from '#acoustics/rating.ts'
import { builtInCatalogue } from '#assemblies/catalogue.ts'
import { combineLayers } from '#assemblies/combine.ts'
import type { BoardLayer, Layer } from '#assemblies/layer.ts'
import { layersMass, predictLayers } from '#assemblies/predict.ts'

const BOARD: BoardLayer = { kind: 'board', material: 'gypsum-type-x', thicknessMm: 15.875, surfaceMassKgM2: 10.7 }
const LINING: BoardLayer = { kind: 'board', material: 'gypsum-regular', thicknessMm: 12.7 }

function predict(layers: readonly Layer[], quality: 'drag' | 'plot' = 'drag'): Prediction {
  const result = predictLayers(layers, quality)
  if (!result.ok) throw new Error(result.error.map((problem) => problem.message).join(' '))
  return result.value
}

function stcOf(existingId: string, assemblyId: string | null, lining: BoardLayer | null = null): number {
  const { existing: constructions, assemblies } = builtInCatalogue()
  const existing = constructions.get(existingId)
  const assembly = assemblyId === null ? null : assemblies.get(assemblyId)
  if (!existing || assembly === undefined) throw new Error('no such entry')
  return rate(predict(combineLayers({ existing, lining, assembly }).layers).lossDb, STC).value
}

describe('predictLayers', () => {
  it('gives a curve over the bands', () => {
    expect(predict([BOARD]).lossDb).toHaveLength(BANDS_HZ.length)
  })

  it('computes equal layers once, whatever the order of their keys', () => {
    const reordered: BoardLayer = {
      surfaceMassKgM2: 10.7,
      thicknessMm: 15.875,
      material: 'gypsum-type-x',
      kind: 'board',
    }
    expect(predict([reordered, BOARD])).toBe(predict([BOARD, reordered]))
    expect(predict([BOARD, BOARD], 'plot')).not.toBe(predict([BOARD, BOARD], 'drag'))
  })

  it('keeps specimens of different area apart', () => {
    const small = predictLayers([BOARD], 'drag', 2)
    expect(small.ok && small.value).not.toBe(predict([BOARD]))
  })

  it('forgets the least recently asked, and gives the same again', () => {
    const first = predict([BOARD, BOARD, BOARD])
    for (let i = 0; i < 600; i++) predict([{ ...BOARD, thicknessMm: 10 + i / 100 }])
    const again = predict([BOARD, BOARD, BOARD])
    expect(again).not.toBe(first)
    expect(again).toEqual(first)
  })

  it('passes problems on', () => {
    const result = predictLayers([{ ...BOARD, thicknessMm: -1 }], 'drag')
    expect(result.ok ? '' : result.error[0]?.message).toContain('Layer 1 (board)')
  })
})

describe('what is built changes the figure the way rooms do', () => {
  it('decoupling beats one more board on shared studs', () => {
    const board = stcOf('stud-2x4-osb-siding', 'W01')
    expect(stcOf('stud-2x4-osb-siding', 'W03')).toBeGreaterThan(board + 5)
    expect(stcOf('stud-2x4-osb-siding', 'W07')).toBeGreaterThan(board + 10)
  })

  it('a second and a third board help', () => {
    const [one, two, three] = ['W06', 'W07', 'W08'].map((id) => stcOf('stud-2x4-board-far-side', id))
    expect(two).toBeGreaterThan(one ?? 0)
    expect(three).toBeGreaterThan(two ?? 0)
  })

  it('a lining left under an independent one costs isolation', () => {
    expect(stcOf('stud-2x4-osb-siding', 'W14', LINING)).toBeLessThan(stcOf('stud-2x4-osb-siding', 'W14') - 3)
  })

  it('channel over a kept board gains at most 3, half a point of rounding allowed', () => {
    const lined = stcOf('stud-2x4-osb-siding', null, LINING)
    expect(stcOf('stud-2x4-osb-siding', 'W03', LINING)).toBeLessThanOrEqual(lined + 3.5)
  })

  it('a floating floor helps by what it weighs and by how softly it lies', () => {
    const [bare, mat, screed, slab] = [null, 'F02', 'F04', 'F05'].map((id) => stcOf('concrete-slab-suspended-150', id))
    // 55 to 70 STC is seen in print for double slabs; a hard thin mat may lose what its resonance takes.
    expect(slab!).toBeGreaterThan(bare! + 10)
    expect(screed!).toBeGreaterThan(bare! + 10)
    expect(slab!).toBeLessThanOrEqual(74)
    expect(Math.abs(mat! - bare!)).toBeLessThan(8)
  })

  it('every assembly can be predicted on every construction of its surface', () => {
    const { existing, assemblies } = builtInCatalogue()
    for (const construction of existing.values()) {
      for (const assembly of assemblies.values()) {
        if (assembly.surface !== construction.surface) continue
        for (const lining of [null, LINING]) {
          const { layers } = combineLayers({ existing: construction, lining, assembly })
          for (const lossDb of predict(layers).lossDb) expect(Number.isFinite(lossDb)).toBe(true)
        }
      }
    }
  })
})

describe('layersMass', () => {
  it('adds boards, compound, frames and fillers, as weighed or by density', () => {
    expect(layersMass([LINING])).toBeCloseTo(0.615 * 12.7, 9)
    expect(layersMass([BOARD, { kind: 'damping-compound' }, BOARD])).toBeCloseTo(21.9, 9)
    expect(layersMass([{ kind: 'damping-compound', thicknessMm: 1 }])).toBeCloseTo(1, 9)
    const frame = { name: 'studs', depthMm: 88.9, massKgM2: 2.5 }
    const rows: Layer = { kind: 'cavity', depthMm: 203.2, link: { kind: 'none' }, frame, farFrame: frame }
    expect(layersMass([rows, { kind: 'filler', name: 'foam', thicknessMm: 50, surfaceMassKgM2: 1.5 }])).toBeCloseTo(
      6.5,
      9,
    )
  })
})
