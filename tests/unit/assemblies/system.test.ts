import { describe, expect, it } from 'vitest'
import type { LayeredSystem } from '#acoustics/layered/system.ts'
import { builtInCatalogue } from '#assemblies/catalogue.ts'
import { combineLayers } from '#assemblies/combine.ts'
import type { BoardLayer, CavityFrame, Layer } from '#assemblies/layer.ts'
import { toLayeredSystem } from '#assemblies/system.ts'

const BOARD: BoardLayer = { kind: 'board', material: 'gypsum-type-x', thicknessMm: 15.875, surfaceMassKgM2: 10.7 }
const LINING: BoardLayer = { kind: 'board', material: 'gypsum-regular', thicknessMm: 12.7 }
const ROW: CavityFrame = {
  name: '2x4 wood studs',
  depthMm: 88.9,
  massKgM2: 2.5,
  members: { material: 'wood', depthMm: 88.9, spacingMm: 609.6 },
}

function systemOf(layers: readonly Layer[]): LayeredSystem {
  const result = toLayeredSystem(layers)
  if (!result.ok) throw new Error(result.error.map((problem) => problem.message).join(' '))
  return result.value
}

function combined(existingId: string, assemblyId: string | null, lining: BoardLayer | null = null): LayeredSystem {
  const { existing, assemblies } = builtInCatalogue()
  const construction = existing.get(existingId)
  const assembly = assemblyId === null ? null : assemblies.get(assemblyId)
  if (!construction || assembly === undefined) throw new Error('no such entry')
  return systemOf(combineLayers({ existing: construction, lining, assembly }).layers)
}

describe('leaves', () => {
  it('are boards in a row, with compound as a damped joint', () => {
    const { leaves, cavities } = systemOf([BOARD, { kind: 'damping-compound' }, BOARD, BOARD])
    expect(cavities).toEqual([])
    expect(leaves).toHaveLength(1)
    expect(leaves[0]?.sheets).toHaveLength(3)
    expect(leaves[0]?.dampedJoints).toEqual([0])
  })

  it('carry the weight of what touches them', () => {
    const { leaves } = combined('stud-2x4-osb-siding', null)
    expect(leaves).toHaveLength(1)
    expect(leaves[0]?.sheets[0]?.surfaceMassKgM2).toBeCloseTo(12, 9)
    const foam: Layer = { kind: 'filler', name: 'foam', thicknessMm: 50.8, surfaceMassKgM2: 1.5 }
    const slab: BoardLayer = { kind: 'board', material: 'concrete', thicknessMm: 100 }
    expect(systemOf([slab, foam]).leaves[0]?.sheets[0]?.surfaceMassKgM2).toBeCloseTo(230 + 1.5, 9)
  })

  it('leave the weight alone where nothing rides on them', () => {
    expect(systemOf([LINING]).leaves[0]?.sheets[0]).toEqual({ material: 'gypsum-regular', thicknessMm: 12.7 })
  })

  it('end where a floor floats on something nobody knows the stiffness of', () => {
    const subfloor: BoardLayer = { kind: 'board', material: 'plywood', thicknessMm: 19.05 }
    const mat: Layer = { kind: 'filler', name: 'mat', thicknessMm: 12, surfaceMassKgM2: 3, floats: true }
    expect(systemOf([subfloor, mat, subfloor, subfloor])).toMatchObject({ leaves: [{ sheets: [{}] }], cavities: [] })
  })

  it('go on over a layer of known stiffness: a mat is a spring, mounts stand in air under their battens', () => {
    const onMat = combined('joist-2x10-floor', 'F02')
    expect(onMat.leaves.map((leaf) => leaf.sheets.length)).toEqual([1, 1, 2])
    expect(onMat.cavities[1]).toEqual({
      depthMm: 12.7,
      fillMm: 0,
      link: { kind: 'resilient-layer', dynamicStiffnessMNm3: 30 },
    })
    const onPads = combined('joist-2x10-floor', 'F03')
    expect(onPads.cavities[1]?.depthMm).toBeCloseTo(12.7 + 38.1, 9)
    expect(onPads.cavities[1]?.link).toEqual({ kind: 'floor-mounts', dynamicStiffnessMNm3: 0.35, spacingMm: 400 })
    expect(onPads.leaves[2]?.sheets[0]?.surfaceMassKgM2).toBeCloseTo(9.3 + 3, 9)
  })
})

describe('cavities', () => {
  it('drop where a frame is open', () => {
    expect(combined('stud-2x4-board-far-side', null).cavities).toEqual([])
  })

  it('join where only foam parts them', () => {
    const { cavities } = combined('stud-2x4-osb-siding', 'W21')
    expect(cavities).toHaveLength(1)
    expect(cavities[0]?.depthMm).toBeCloseTo(88.9 + 12.7 + 88.9, 9)
    expect(cavities[0]?.link).toEqual({ kind: 'none' })
  })

  it('fill whole where no depth of the fill is given', () => {
    const filled: Layer = {
      kind: 'cavity',
      depthMm: 88.9,
      fill: 'mineral-wool',
      link: { kind: 'wood-stud', spacingMm: 406.4 },
    }
    expect(systemOf([BOARD, filled, BOARD]).cavities[0]).toEqual({
      depthMm: 88.9,
      fillMm: 88.9,
      link: { kind: 'wood-stud', spacingMm: 406.4 },
    })
  })
})

describe('ribs', () => {
  it('clips on bare studs: the far leaf keeps its studs, the new boards have none', () => {
    const { cavities } = combined('stud-2x4-osb-siding', 'W07')
    expect(cavities[0]?.ribs).toEqual({ far: { material: 'wood', depthMm: 88.9, spacingMm: 406.4 }, room: null })
  })

  it('two rows: each leaf its own', () => {
    const { cavities } = combined('stud-2x4-osb-siding', 'W14')
    expect(cavities[0]?.ribs?.far?.spacingMm).toBe(406.4)
    expect(cavities[0]?.ribs?.room?.spacingMm).toBe(609.6)
  })

  it('kept lining and own row: the tied middle board gets none', () => {
    const { leaves, cavities } = combined('stud-2x4-osb-siding', 'W14', LINING)
    expect(leaves).toHaveLength(3)
    expect(cavities[0]?.ribs).toBeUndefined()
    expect(cavities[1]?.ribs).toEqual({ far: null, room: ROW.members })
  })

  it('masonry gets none', () => {
    expect(combined('concrete-203', 'W20').cavities[0]?.ribs).toEqual({ far: null, room: ROW.members })
    expect(combined('concrete-203', 'W19').cavities[0]?.ribs).toEqual({ far: null, room: null })
  })

  it('brick veneer: the sheathing takes its studs once', () => {
    const { cavities } = combined('stud-2x4-brick-veneer', 'W14')
    expect(cavities[0]?.ribs).toEqual({ room: null })
    expect(cavities[1]?.ribs?.far?.spacingMm).toBe(406.4)
  })

  it('what layers do not say is left to what is usual for the link', () => {
    const plain: Layer = { kind: 'cavity', depthMm: 203.2, link: { kind: 'none' } }
    expect(systemOf([BOARD, plain, BOARD]).cavities[0]?.ribs).toBeUndefined()
  })

  it('a bare channel beside a tied leaf: none on that leaf only', () => {
    const studs: Layer = { kind: 'cavity', depthMm: 88.9, link: { kind: 'wood-stud', spacingMm: 406.4 } }
    const plain: Layer = { kind: 'cavity', depthMm: 114.3, link: { kind: 'none' } }
    expect(systemOf([BOARD, studs, BOARD, plain, BOARD]).cavities[1]?.ribs).toEqual({ far: null })
  })
})

describe('problems', () => {
  it('tells impossible numbers, and lists without a leaf', () => {
    const bad = toLayeredSystem([{ ...BOARD, thicknessMm: 0 }])
    expect(bad.ok ? [] : bad.error.map((problem) => problem.layer)).toEqual([1])
    const none = toLayeredSystem([{ kind: 'cavity', depthMm: 88.9, link: { kind: 'none' } }])
    expect(none.ok ? '' : none.error[0]?.message).toBe('There is no board or slab in it.')
  })
})
