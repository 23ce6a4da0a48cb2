// Depths and weights of usual build-ups. Depths: common practice, no source, as sums of exact inches.
// Weights: 2.2 lb/ft2 a 5/8 in board (retail trade material weight guide, seen), hardware and timber from memory.
// Tolerances: depth 1e-9 mm, because sums of exact inches have no reason to differ; weight 0.3 kg/m2, because the
// weights are rounded to 0.1.
import { describe, expect, it } from 'vitest'
import { builtInCatalogue } from '#assemblies/catalogue.ts'
import { type BoardLayer, type Layer, layerDepth, layersDepth } from '#assemblies/layer.ts'
import { layersMass } from '#assemblies/predict.ts'
import { inches } from '#units/quantity.ts'

const { assemblies } = builtInCatalogue()
const layersOf = (id: string): readonly Layer[] => {
  const assembly = assemblies.get(id)
  if (!assembly) throw new Error(`no assembly ${id}`)
  return assembly.layers
}

/** id, depth in inches, added weight kg/m2. */
const BUILD_UPS: readonly (readonly [string, number, number])[] = [
  ['W01', 0.625, 10.7],
  ['W03', 1.125, 11.2],
  ['W04', 1.75, 21.9],
  ['W06', 2.25, 11.6],
  ['W07', 2.875, 22.3],
  ['W08', 3.5, 33.0],
  ['W09', 1.5, 22.3],
  ['W10', 3.25, 22.8],
  ['W12', 3.875, 22.6],
  ['W13', 4.75, 23.2],
  ['W14', 5.75, 23.9],
  ['W15', 6.75, 23.9],
  ['W16', 8.75, 23.9],
  ['W19', 2.875, 22.3],
  ['W20', 5.75, 23.9],
  ['W21', 7.25, 25.4],
  ['C01', 0.625, 10.7],
  ['C02', 1.125, 11.2],
  ['C03', 1.75, 21.9],
  ['C04', 2.25, 11.6],
  ['C05', 2.875, 22.3],
  ['C06', 3.5, 33.0],
  ['C07', 1.5, 22.3],
  ['C08', 7.75, 27.3],
  ['C09', 2.75, 27.3],
  ['C10', 4.125, 22.9],
  ['C11', 7.25, 21.4],
  ['F01', 0.5, 9.0],
  ['F02', 2.0, 24.6],
  ['F03', 3.5, 22.2],
  ['F05', 6.0, 239.0],
]

describe('depths and weights of the catalogue', () => {
  it.each(BUILD_UPS)('%s takes %d in and weighs %d kg/m2', (id, depthIn, massKgM2) => {
    expect(layersDepth(layersOf(id))).toBeCloseTo(inches(depthIn), 9)
    expect(Math.abs(layersMass(layersOf(id)) - massKgM2)).toBeLessThanOrEqual(0.3)
  })

  it('keeps the metric ones in millimetres', () => {
    expect(layersDepth(layersOf('W22'))).toBeCloseTo(162.7, 9)
    expect(layersMass(layersOf('W22'))).toBeCloseTo(156, 1)
    expect(layersDepth(layersOf('F04'))).toBeCloseTo(90, 9)
    expect(layersMass(layersOf('F04'))).toBeCloseTo(145.5, 1)
  })

  it('W02 takes one board and a film of compound', () => {
    expect(layersDepth(layersOf('W02'))).toBeCloseTo(16.375, 9)
    expect(layersMass(layersOf('W02'))).toBeCloseTo(11.2, 1)
  })

  it.each(['W06', 'W07', 'W08', 'W19', 'C04', 'C05', 'C06'])(
    '%s: clip and 22 mm channel stand 1 5/8 in off the structure',
    (id) => {
      const first = layersOf(id)[0]
      expect(first && layerDepth(first)).toBe(41.275)
    },
  )

  it.each(['W09', 'C07'])('%s: the low-profile clip leaves a gap of 1/4 in', (id) => {
    const first = layersOf(id)[0]
    expect(first && layerDepth(first)).toBe(6.35)
  })
})

describe('a whole double-stud partition', () => {
  it('with a gap of 1 in and two 5/8 in boards each side is 10 1/2 in, 266.7 mm, thick', () => {
    const board: BoardLayer = { kind: 'board', material: 'gypsum-type-x', thicknessMm: 15.875, surfaceMassKgM2: 10.7 }
    const row = { name: '2x4 wood studs', depthMm: 88.9, massKgM2: 2.5 }
    const partition: readonly Layer[] = [
      board,
      board,
      { kind: 'cavity', depthMm: 88.9 + 25.4 + 88.9, link: { kind: 'none' }, frame: row, farFrame: row },
      board,
      board,
    ]
    expect(layersDepth(partition)).toBeCloseTo(266.7, 9)
    expect(layersMass(partition)).toBeCloseTo(47.8, 1)
  })
})
