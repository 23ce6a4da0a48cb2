import { describe, expect, it } from 'vitest'
import type { Assembly } from '#assemblies/assembly.ts'
import { assembliesFor } from '#assemblies/catalogue.ts'
import { assemblyLayerProblems } from '#assemblies/layerProblems.ts'
import { copyOfAssembly, idProblem, isOwn, ownAssemblyProblems, withOwnAssemblies } from '#assemblies/ownAssembly.ts'
import { anOwnAssembly } from '../../support/ownAssembly.ts'
import { CATALOGUE } from '../../support/samples.ts'

const messages = (change: Partial<Assembly>): readonly string[] =>
  ownAssemblyProblems(anOwnAssembly(change)).map(({ message }) => message)
const [cavity, plywood, compound, board] = anOwnAssembly().layers
if (cavity?.kind !== 'cavity' || !cavity.frame || !plywood || !compound || !board)
  throw new Error('the builder makes four layers')
const { frame } = cavity

describe('what an assembly may say of its layers', () => {
  it.each([...CATALOGUE.assemblies.values()])('lets every built-in one be copied: $id', ({ layers }) => {
    expect(assemblyLayerProblems(layers)).toEqual([])
  })

  it('lets it begin with a cavity, for the surface is the leaf behind it', () => {
    expect(messages({})).toEqual([])
  })

  it.each<[string, Partial<Assembly>, string]>([
    [
      'a cavity at the end',
      { layers: [board, cavity] },
      'Layer 2 (cavity): its link needs a leaf on both sides, and there is no board on its room side.',
    ],
    [
      'two cavities in a row',
      { layers: [cavity, cavity, board] },
      'Layer 2 (cavity): it follows another cavity; give the two as one, or put a board between them.',
    ],
    [
      'compound at the end',
      { layers: [board, compound] },
      'Layer 2 (damping compound): it belongs between two boards.',
    ],
    ['no layers', { layers: [] }, 'There are no layers.'],
    [
      'studs deeper than their cavity',
      { layers: [{ ...cavity, depthMm: 60 }, board] },
      'Layer 1 (cavity): its own wood studs are 63.5 mm deep in a cavity of 60 mm.',
    ],
    [
      'studs nobody would set',
      {
        layers: [{ ...cavity, frame: { ...frame, members: { material: 'wood', depthMm: 63.5, spacingMm: 4 } } }, board],
      },
      'Layer 1 (cavity): the stud spacing of 4 mm is too small to be built; check its unit.',
    ],
    ['sources for other layers', { layerSources: [] }, 'There are 4 layers and 0 layer sources.'],
  ])('tells %s', (_, change, message) => {
    expect(messages(change)).toEqual([message])
  })
})

describe('the catalogue with own assemblies', () => {
  const own = anOwnAssembly()
  const catalogue = withOwnAssemblies(CATALOGUE, [own])

  it('has the built-in ones and the own ones, and knows which is which', () => {
    expect(catalogue.assemblies.size).toBe(CATALOGUE.assemblies.size + 1)
    expect(isOwn(catalogue, 'own-1')).toBe(true)
    expect(isOwn(catalogue, 'W14')).toBe(false)
    expect(isOwn(CATALOGUE, 'own-1')).toBe(false)
    expect(withOwnAssemblies(CATALOGUE, [])).toBe(CATALOGUE)
  })

  it('keeps the built-in ids and the word for building nothing to themselves', () => {
    expect(idProblem('W14', CATALOGUE)).toContain('built-in')
    expect(idProblem('as-is', CATALOGUE)).toContain('nothing is built')
    expect(idProblem('own-1', CATALOGUE)).toBeNull()
  })

  it('offers an own copy beside the built-in one it equals layer by layer', () => {
    const W14 = CATALOGUE.assemblies.get('W14')
    if (!W14) throw new Error('no W14')
    const copied = withOwnAssemblies(CATALOGUE, [copyOfAssembly(W14, 'own-1', 'Copy')])
    const offered = assembliesFor('wall', 'masonry', copied).map(({ id }) => id)
    expect(offered).toContain('own-1')
    expect(offered).toContain('W20')
  })

  it('leaves behind what the original says of its own weight, and nothing else', () => {
    const C05 = CATALOGUE.assemblies.get('C05')
    if (!C05) throw new Error('no C05')
    const copy = copyOfAssembly(C05, 'own-1', 'Copy')
    const gone = C05.cautions.filter((text) => !copy.cautions.includes(text))
    expect(gone).toEqual([expect.stringContaining('weigh about 25 kg/m2')])
    expect(copy.layers).toEqual(C05.layers)
    expect(copy.source.status).toBe('derived')
  })
})
