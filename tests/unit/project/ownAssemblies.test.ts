import { describe, expect, it } from 'vitest'
import { projectCatalogue } from '#project/catalogue.ts'
import { readProject } from '#project/read.ts'
import { writeProject } from '#project/write.ts'
import { anOwnAssembly } from '../../support/ownAssembly.ts'
import { CATALOGUE, openSample } from '../../support/samples.ts'

const garage = openSample('garage')

/** What reading says of a garage whose own assemblies are these, and whose first wall has one. */
function said(assemblies: unknown, choice = 'as-is'): readonly string[] {
  const schemes = garage.schemes.map((scheme) => ({
    ...scheme,
    choices: { ...scheme.choices, 'wall-1': { assembly: choice, removeLining: false } },
  }))
  const read = readProject(
    JSON.stringify({ ...garage, assemblies, schemes: schemes.slice(0, 1), proposal: null }),
    CATALOGUE,
  )
  return read.ok ? [] : read.error.problems.map(({ message }) => message)
}

describe('own assemblies in the project file', () => {
  it('come back as they were written', () => {
    const project = { ...garage, assemblies: [anOwnAssembly()] }
    const read = readProject(writeProject(project), CATALOGUE)
    expect(read.ok && read.value.project).toEqual(project)
    expect(read.ok && writeProject(read.value.project)).toBe(writeProject(project))
  })

  it('can be named by a scheme, and only by one for that kind of surface', () => {
    expect(said([anOwnAssembly()], 'own-1')).toEqual([])
    expect(said([], 'own-1')).toEqual([
      'assembly "own-1" is not in the catalogue, at schemes[0].choices.wall-1.assembly',
    ])
    expect(said([anOwnAssembly({ surface: 'ceiling' })], 'own-1')).toEqual([
      'assembly "own-1" is for a ceiling, not a wall, at schemes[0].choices.wall-1.assembly',
    ])
  })

  it.each<[string, unknown, string]>([
    [
      'a built-in id',
      [anOwnAssembly({ id: 'W14' })],
      `the id "W14" is one of the built-in assemblies', at assemblies[0].id`,
    ],
    [
      'the id of nothing',
      [anOwnAssembly({ id: 'as-is' })],
      'the id "as-is" means that nothing is built, at assemblies[0].id',
    ],
    ['one id twice', [anOwnAssembly(), anOwnAssembly()], 'the id "own-1" is used twice, at assemblies'],
    [
      'a key nobody knows',
      [{ ...anOwnAssembly(), colour: 'red' }],
      '"colour" is not known to this version of the format, at assemblies[0]',
    ],
    [
      'a key nobody knows in a layer',
      [{ ...anOwnAssembly(), layers: [{ kind: 'board', material: 'osb', thicknessMm: 18, brand: 'x' }] }],
      '"brand" is not known to this version of the format, at assemblies[0].layers[0]',
    ],
    [
      'a kind of layer nobody knows',
      [{ ...anOwnAssembly(), layers: [{ kind: 'paint' }] }],
      '"kind" is none of those this version of the format knows, at assemblies[0].layers[0].kind',
    ],
    [
      'an unknown material',
      [{ ...anOwnAssembly(), layers: [{ kind: 'board', material: 'cheese', thicknessMm: 18 }] }],
      '"Mixed boards on own studs": Layer 1 (board): the material "cheese" is not known, at assemblies[0].layers[0]',
    ],
    [
      'a negative thickness',
      [{ ...anOwnAssembly(), layers: [{ kind: 'board', material: 'osb', thicknessMm: -18 }] }],
      '"Mixed boards on own studs": Layer 1 (board): the thickness of -18 mm must be above 0 and at most 1500 mm, at assemblies[0].layers[0]',
    ],
    ['no layers', [anOwnAssembly({ layers: [] })], '"layers" must not be empty, at assemblies[0].layers'],
    [
      'something that an earlier version kept unread',
      [{ id: 'x-1', note: 'reserved', list: [1, 2] }],
      'this is not an assembly, for it has no list of "layers"; take it out of the file, at assemblies[0]',
    ],
    [
      'an endless name',
      [anOwnAssembly({ name: 'x'.repeat(201) })],
      'a text here has at most 200 letters, at assemblies[0].name',
    ],
  ])('are refused with %s, naming the place', (_, assemblies, message) => {
    expect(said(assemblies)).toEqual([message])
  })

  it('are in the catalogue of their project only, and the catalogue is made once', () => {
    const assemblies = [anOwnAssembly()]
    const catalogue = projectCatalogue({ assemblies })
    expect(catalogue.assemblies.get('own-1')).toBe(assemblies[0])
    expect(projectCatalogue({ assemblies })).toBe(catalogue)
    expect(projectCatalogue(garage).assemblies.has('own-1')).toBe(false)
  })
})
