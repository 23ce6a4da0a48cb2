import { readdirSync, readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import type { Source } from '#assemblies/assembly.ts'
import { assembliesFor, builtInCatalogue, isBuildable } from '#assemblies/catalogue.ts'
import { type Layer, layersDepth } from '#assemblies/layer.ts'
import { layerProblems, numberProblems } from '#assemblies/layerProblems.ts'
import { assemblySchema } from '#assemblies/schema.ts'

const catalogue = builtInCatalogue()
const assemblies = [...catalogue.assemblies.values()]
const existing = [...catalogue.existing.values()]
const folder = (name: string): string => new URL(`../../../src/assemblies/${name}/`, import.meta.url).pathname

describe('the files of the catalogue', () => {
  it.each([
    ['catalogue', [...catalogue.assemblies.keys()]],
    ['existing', [...catalogue.existing.keys()]],
  ] as const)('imports every file of %s, each named after its id', (name, ids) => {
    expect(readdirSync(folder(name)).toSorted()).toEqual(ids.map((id) => `${id}.json`).toSorted())
    for (const id of ids) expect(JSON.parse(readFileSync(`${folder(name)}${id}.json`, 'utf8')).id).toBe(id)
  })

  it('covers walls, ceilings and floors', () => {
    const count = (kind: string): number => assemblies.filter((assembly) => assembly.surface === kind).length
    expect(count('wall')).toBeGreaterThanOrEqual(14)
    expect(count('ceiling')).toBeGreaterThanOrEqual(6)
    expect(count('floor')).toBeGreaterThanOrEqual(4)
  })

  it('refuses a key it does not know', () => {
    const file = JSON.parse(readFileSync(`${folder('catalogue')}W07.json`, 'utf8'))
    expect(assemblySchema.safeParse(file).success).toBe(true)
    expect(assemblySchema.safeParse({ ...file, rating: 60 }).success).toBe(false)
    expect(assemblySchema.safeParse({ ...file, depthMm: 73.025 }).success).toBe(false)
  })
})

describe('every number has a source', () => {
  it.each([...assemblies, ...existing].map((entry) => [entry.id, entry] as const))('%s', (_, entry) => {
    const sources: readonly Source[] = entry.layerSources ?? []
    expect(sources).toHaveLength(entry.layers.length)
    for (const source of [...sources, entry.source]) {
      expect(source.text).toMatch(/^[A-Z].+\.$/)
    }
    const weakest = (source: Source): boolean => source.status === 'seen' && /memory|no source/.test(source.text)
    expect(sources.filter(weakest)).toEqual([])
  })
})

describe('every entry is sound', () => {
  it.each(assemblies.map((entry) => [entry.id, entry] as const))('%s', (_, entry) => {
    expect(numberProblems(entry.layers)).toEqual([])
    expect(layersDepth(entry.layers)).toBeGreaterThan(0)
    expect(entry.shortName).not.toMatch(/\d\s*(mm|in|")/)
    for (const caution of entry.cautions) expect(caution).toMatch(/^[A-Z].+\.$/)
    if (entry.surface === 'floor') return
    const facing: Layer = { kind: 'board', material: 'concrete', thicknessMm: 100 }
    expect(layerProblems([facing, ...entry.layers])).toEqual([])
  })

  it.each(existing.map((entry) => [entry.id, entry] as const))('%s', (_, entry) => {
    expect(numberProblems(entry.layers)).toEqual([])
    const isOpen = entry.layers.at(-1)?.kind === 'cavity'
    const isFrame = entry.structure !== 'masonry' && entry.structure !== 'slab'
    expect(isOpen).toBe(isFrame && entry.surface !== 'floor')
    const room: Layer = { kind: 'board', material: 'gypsum-regular', thicknessMm: 12.7 }
    expect(layerProblems(isOpen ? [...entry.layers, room] : entry.layers)).toEqual([])
  })

  it('no two of a surface share a short name', () => {
    for (const kind of ['wall', 'ceiling', 'floor']) {
      const names = assemblies.filter((entry) => entry.surface === kind).map((entry) => entry.shortName)
      expect(new Set(names).size).toBe(names.length)
    }
  })

  it('marks what hangs on existing joists', () => {
    const hanging = assemblies.filter((entry) => entry.loadsExistingJoists).map((entry) => entry.id)
    expect(hanging).toEqual(['C01', 'C02', 'C03', 'C04', 'C05', 'C06', 'C07', 'C10', 'C11'])
  })
})

describe('assembliesFor', () => {
  const idsFor = (...where: Parameters<typeof assembliesFor> extends [infer S, infer T, unknown] ? [S, T] : never) =>
    assembliesFor(where[0], where[1], catalogue).map((assembly) => assembly.id)

  it('offers framed walls what fixes to a frame or stands alone, least depth first', () => {
    const offered = assembliesFor('wall', 'wood-frame', catalogue)
    expect(offered.map((assembly) => assembly.id)).toEqual(
      ['W01', 'W02', 'W03', 'W09', 'W04', 'W06', 'W07', 'W10', 'W08', 'W12', 'W13', 'W14', 'W15', 'W16'], //
    )
    const depths = offered.map((assembly) => layersDepth(assembly.layers))
    expect(depths).toEqual(depths.toSorted((a, b) => a - b))
  })

  it('offers masonry its own, and drops the one that is the same layer by layer', () => {
    expect(idsFor('wall', 'masonry')).toEqual(['W19', 'W12', 'W13', 'W20', 'W22', 'W15', 'W21', 'W16'])
  })

  it('keeps nested joists from trusses', () => {
    expect(idsFor('ceiling', 'truss')).not.toContain('C09')
    expect(idsFor('ceiling', 'wood-frame')).toContain('C09')
  })

  it('offers a concrete ceiling what hangs from concrete or stands alone', () => {
    expect(idsFor('ceiling', 'slab')).toEqual(['C11', 'C08'])
  })

  it('puts heavy floors on slabs only', () => {
    expect(idsFor('floor', 'slab')).toEqual(['F01', 'F02', 'F03', 'F04', 'F05'])
    expect(idsFor('floor', 'wood-frame')).toEqual(['F01', 'F02', 'F03'])
  })

  it('agrees with isBuildable', () => {
    const masonry = assemblies.filter((assembly) => isBuildable(assembly, 'masonry') && assembly.surface === 'wall')
    expect(masonry.map((assembly) => assembly.id)).toContain('W14')
  })
})
