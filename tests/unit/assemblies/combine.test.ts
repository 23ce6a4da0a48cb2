import { describe, expect, it } from 'vitest'
import type { Assembly, ExistingConstruction } from '#assemblies/assembly.ts'
import { builtInCatalogue } from '#assemblies/catalogue.ts'
import { combineLayers } from '#assemblies/combine.ts'
import type { BoardLayer, CavityLayer, Layer } from '#assemblies/layer.ts'

const catalogue = builtInCatalogue()
const existingOf = (id: string): ExistingConstruction => {
  const found = catalogue.existing.get(id)
  if (!found) throw new Error(`no existing construction ${id}`)
  return found
}
const assemblyOf = (id: string): Assembly => {
  const found = catalogue.assemblies.get(id)
  if (!found) throw new Error(`no assembly ${id}`)
  return found
}
const LINING: BoardLayer = { kind: 'board', material: 'gypsum-regular', thicknessMm: 12.7 }

function combine(existing: string, assembly: string | null, lining: BoardLayer | null = null) {
  return combineLayers({
    existing: existingOf(existing),
    lining,
    assembly: assembly === null ? null : assemblyOf(assembly),
  })
}
const kinds = (layers: readonly Layer[]): string => layers.map((layer) => layer.kind).join(' ')
const cavities = (layers: readonly Layer[]): CavityLayer[] => layers.filter((layer) => layer.kind === 'cavity')
const codes = (...args: Parameters<typeof combine>): string[] => combine(...args).notes.map((note) => note.code)

describe('a surface left as it is', () => {
  it('keeps its layers, with the lining last', () => {
    const { layers, existingLayerCount, notes } = combine('stud-2x4-osb-siding', null, LINING)
    expect(layers).toEqual([...existingOf('stud-2x4-osb-siding').layers, LINING])
    expect(existingLayerCount).toBe(4)
    expect(notes).toEqual([])
  })
})

describe('an open frame and an assembly that begins with a cavity', () => {
  it('become one cavity: depths add, wool fills the bay, clips tie the leaves, studs stiffen the far one', () => {
    const { layers, existingLayerCount } = combine('stud-2x4-osb-siding', 'W07')
    expect(kinds(layers)).toBe('filler board cavity board board')
    expect(existingLayerCount).toBe(3)
    const [cavity] = cavities(layers)
    expect(cavity?.depthMm).toBeCloseTo(88.9 + 41.275, 9)
    expect(cavity).toMatchObject({ fill: 'mineral-wool', fillMm: 88.9, fillAgainst: 'far' })
    expect(cavity?.link).toEqual({
      kind: 'sound-clip',
      frame: 'wood-stud',
      rowSpacingMm: 609.6,
      clipSpacingMm: 1219.2,
    })
    expect(cavity?.farFrame?.members).toEqual({ material: 'wood', depthMm: 88.9, spacingMm: 406.4 })
    expect(cavity?.frame?.members).toBeUndefined()
  })

  it('add the wool of both rows for an independent lining: 203.2 mm with 177.8 mm of wool', () => {
    const [cavity] = cavities(combine('stud-2x4-osb-siding', 'W14').layers)
    expect(cavity?.depthMm).toBeCloseTo(203.2, 9)
    expect(cavity?.fillMm).toBeCloseTo(177.8, 9)
    expect(cavity).toMatchObject({ link: { kind: 'none' }, fillAgainst: 'both' })
    expect(cavity?.farFrame?.members?.spacingMm).toBe(406.4)
    expect(cavity?.frame?.members?.spacingMm).toBe(609.6)
  })

  it('take the kind and spacing of the frame that stands there', () => {
    const steel = cavities(combine('steel-stud-board-far-side', 'W07').layers)[0]
    expect(steel?.link).toMatchObject({ kind: 'sound-clip', frame: 'light-steel-stud' })
    const truss = cavities(combine('truss-osb-shingles', 'C02').layers)[0]
    expect(truss?.link).toMatchObject({ kind: 'resilient-channel', frame: 'wood-stud', studSpacingMm: 609.6 })
  })

  it('do not count wool twice in bays that are full', () => {
    const [cavity] = cavities(combine('stud-2x6-osb-siding', 'W07').layers)
    expect(cavity?.fillMm).toBeCloseTo(139.7, 9)
  })

  it('lay the wool of a roof space low', () => {
    const [cavity] = cavities(combine('truss-osb-shingles', 'C05').layers)
    expect(cavity).toMatchObject({ depthMm: 441.275, fillMm: 88.9, fillAgainst: 'room' })
  })

  it('stay untied where the near row never touched the far leaf', () => {
    const [cavity] = cavities(combine('party-2x4-two-rows', 'W07').layers)
    expect(cavity).toMatchObject({ link: { kind: 'none' }, fillMm: 177.8 })
    expect(cavity?.frame).toMatchObject({ depthMm: 88.9 + 41.275 })
    expect(cavity?.frame?.members).toBeUndefined()
    expect(cavity?.farFrame?.members).toBeDefined()
  })
})

describe('an open frame and an assembly that begins with a board', () => {
  it('keep the frame as the tie', () => {
    const { layers, existingLayerCount } = combine('stud-2x4-board-far-side', 'W01')
    expect(kinds(layers)).toBe('board cavity board')
    expect(cavities(layers)[0]).toMatchObject({ link: { kind: 'wood-stud', spacingMm: 406.4 }, fillMm: 88.9 })
    expect(existingLayerCount).toBe(2)
  })
})

describe('a kept lining', () => {
  it('stays a leaf, its bay as empty as it was', () => {
    const { layers, existingLayerCount } = combine('stud-2x4-osb-siding', 'W14', LINING)
    expect(kinds(layers)).toBe('filler board cavity board cavity board board')
    expect(existingLayerCount).toBe(4)
    expect(cavities(layers)[0]?.fill).toBeUndefined()
    expect(cavities(layers)[1]).toMatchObject({ depthMm: 114.3, fillMm: 88.9, fillAgainst: 'room' })
  })

  it('takes a second board as part of the same leaf', () => {
    expect(kinds(combine('stud-2x4-osb-siding', 'W02', LINING).layers)).toBe(
      'filler board cavity board damping-compound board',
    )
  })
})

describe('masonry', () => {
  it('carries clips without studs', () => {
    const { layers } = combine('concrete-203', 'W19')
    expect(kinds(layers)).toBe('board cavity board board')
    expect(cavities(layers)[0]).toMatchObject({ depthMm: 41.275, link: { frame: 'masonry' } })
  })

  it('takes a hung ceiling by its own frame kind', () => {
    expect(cavities(combine('concrete-slab-above-150', 'C11').layers)[0]?.link).toMatchObject({ frame: 'masonry' })
    expect(cavities(combine('joist-2x10-subfloor', 'C11').layers)[0]?.link).toMatchObject({ frame: 'wood-stud' })
  })
})

describe('notes', () => {
  it('warn of channel and clips over a kept board', () => {
    for (const id of ['W03', 'W04', 'W06', 'W07', 'W08']) {
      expect(codes('stud-2x4-osb-siding', id, LINING)).toEqual(['resilient-over-board'])
      expect(codes('stud-2x4-osb-siding', id)).toEqual([])
    }
  })

  it.each([
    ['stud-2x4-osb-siding', 'W14', LINING, ['lining-divides-cavity']],
    ['stud-2x4-osb-siding', 'W14', null, []],
    ['stud-2x4-osb-siding', 'W09', LINING, ['needs-bare-bays']],
    ['stud-2x4-osb-siding', 'W10', LINING, ['needs-bare-bays']],
    ['joist-2x10-subfloor', 'C09', LINING, ['needs-bare-bays']],
    ['joist-2x10-subfloor', 'C10', LINING, ['needs-bare-bays']],
    ['concrete-203', 'W19', LINING, ['resilient-over-board']],
    ['stud-2x4-osb-siding', 'W09', null, ['shallow-void']],
    ['stud-2x4-osb-siding', 'W02', null, ['compound-alone']],
    ['stud-2x4-osb-siding', 'W02', LINING, []],
    ['stud-2x4-osb-siding', 'W20', null, ['masonry-on-frame']],
    ['concrete-203', 'W07', null, ['frame-on-masonry', 'shallow-void']],
    ['concrete-203', 'W19', null, ['shallow-void']],
    ['concrete-203', 'W20', null, []],
    ['concrete-203', 'W14', null, []],
    ['truss-osb-shingles', 'C05', null, ['vented-roof']],
    ['truss-osb-shingles', 'C09', null, ['nested-under-trusses', 'vented-roof']],
    ['truss-osb-shingles', null, null, ['vented-roof']],
    ['slab-on-ground', 'F03', null, []],
    ['slab-on-ground', 'F01', null, []],
    ['joist-2x10-subfloor', 'C11', LINING, ['lining-divides-cavity']],
  ] as const)('%s with %s', (existing, assembly, lining, expected) => {
    expect(codes(existing, assembly, lining)).toEqual(expected)
  })

  it('are full sentences', () => {
    for (const { text } of combine('truss-osb-shingles', 'C09').notes) expect(text).toMatch(/^[A-Z].+\.$/)
  })
})

describe('every assembly on every construction it is offered for', () => {
  const pairs = [...catalogue.existing.values()].flatMap((existing) =>
    [...catalogue.assemblies.values()]
      .filter((assembly) => assembly.surface === existing.surface)
      .map((assembly) => [existing, assembly] as const),
  )

  it('adds exactly the depth of the assembly, and never changes what went in', () => {
    const depth = (layers: readonly Layer[]): number =>
      layers.reduce(
        (sum, layer) =>
          sum + ('depthMm' in layer ? layer.depthMm : 'thicknessMm' in layer ? (layer.thicknessMm ?? 0) : 0.5),
        0,
      )
    for (const [existing, assembly] of pairs) {
      const before = JSON.stringify([existing, assembly])
      const { layers } = combineLayers({ existing, lining: null, assembly })
      expect(depth(layers)).toBeCloseTo(depth(existing.layers) + depth(assembly.layers), 9)
      expect(JSON.stringify([existing, assembly])).toBe(before)
    }
  })
})
