import { describe, expect, it } from 'vitest'
import { analyseScheme } from '#analysis/analyse.ts'
import type { Assembly } from '#assemblies/assembly.ts'
import { layersDepth } from '#assemblies/layer.ts'
import { projectCatalogue } from '#project/catalogue.ts'
import type { Project } from '#project/project.ts'
import type { Command } from '#state/command.ts'
import {
  broughtIn,
  countUses,
  deleteAssembly,
  duplicateAssembly,
  freeAssemblyId,
  renameAssembly,
  saveAndBuild,
  saveAssembly,
} from '#state/commands/assemblies.ts'
import { assignAssembly } from '#state/commands/surfaces.ts'
import { createDocumentStore } from '#state/history.ts'
import { anOwnAssembly } from '../../support/ownAssembly.ts'
import { CATALOGUE, openSample } from '../../support/samples.ts'

const garage = openSample('garage')

function done(project: Project, ...commands: readonly Command[]): Project {
  return commands.reduce((current, command) => {
    const outcome = command.apply(current)
    if (!outcome.ok) throw new Error(outcome.error.message)
    return outcome.value
  }, project)
}

function refusal(project: Project, command: Command): string {
  const outcome = command.apply(project)
  return outcome.ok ? 'was done' : outcome.error.message
}

const saved = done(garage, saveAssembly(anOwnAssembly()))
const built = done(
  saved,
  assignAssembly('scheme-1', ['wall-1', 'wall-2'], anOwnAssembly()),
  assignAssembly('scheme-2', ['wall-3'], anOwnAssembly()),
)

describe('own assemblies as commands', () => {
  it('save, and save again in the same place', () => {
    expect(saved.assemblies).toEqual([anOwnAssembly()])
    const again = done(
      saved,
      saveAssembly(anOwnAssembly({ id: 'own-2', name: 'B' })),
      saveAssembly(anOwnAssembly({ name: 'C' })),
    )
    expect(again.assemblies.map(({ name }) => name)).toEqual(['C', 'B'])
  })

  it('say of every own one that its user built it', () => {
    const source = { text: 'seen in a dream', status: 'seen' } as const
    expect(done(garage, saveAssembly(anOwnAssembly({ source }))).assemblies[0]?.source).toEqual({
      text: 'Built by the user of this project.',
      status: 'derived',
    })
  })

  it('save and build as one undo step', () => {
    const store = createDocumentStore(garage)
    store.run(saveAndBuild(anOwnAssembly(), 'scheme-1', ['wall-1']))
    expect(store.store.getState().project.schemes[0]?.choices['wall-1']?.assembly).toBe('own-1')
    store.undo()
    expect(store.store.getState().project).toBe(garage)
  })

  it('take the depth of its layers off the room like any other', () => {
    const room = built.rooms[0]
    const scheme = built.schemes[0]
    if (!room || !scheme) throw new Error('no room')
    const analysed = analyseScheme({ room, scheme, catalogue: projectCatalogue(built), quality: 'drag' })
    if (!analysed.ok) throw new Error(analysed.error.message)
    const wall = analysed.value.surfaces[0]
    expect(wall?.depthFromStructureMm).toBeCloseTo(layersDepth(anOwnAssembly().layers), 9)
    expect(wall?.assemblyName).toBe('Mixed boards on own studs')
  })

  it('delete: surfaces that have it go back to as is in the same step, and the step says how many', () => {
    const command = deleteAssembly(built, 'own-1')
    expect(countUses(built, 'own-1')).toEqual({ surfaces: 3, schemes: 2 })
    expect(command.label).toBe('delete mixed boards, 3 surfaces back to as is')
    const after = done(built, command)
    expect(after.assemblies).toEqual([])
    expect(after.schemes[0]?.choices['wall-1']?.assembly).toBe('as-is')
    expect(countUses(after, 'own-1')).toEqual({ surfaces: 0, schemes: 0 })
    expect(after.schemes[2]).toBe(built.schemes[2])
    expect(deleteAssembly(saved, 'own-1').label).toBe('delete mixed boards')
  })

  it('duplicate a built-in one and an own one, under names that say so', () => {
    const W14 = CATALOGUE.assemblies.get('W14')
    if (!W14) throw new Error('no W14')
    const copies = done(saved, duplicateAssembly(W14), duplicateAssembly(W14), duplicateAssembly(anOwnAssembly()))
    expect(copies.assemblies.map(({ id, name }) => [id, name])).toEqual([
      ['own-1', 'Mixed boards on own studs'],
      ['own-2', `Copy of ${W14.name}`],
      ['own-3', `Copy of ${W14.name} 2`],
      ['own-4', 'Copy of Mixed boards on own studs'],
    ])
  })

  it('rename, trimmed, and keep the layers', () => {
    const renamed = done(saved, renameAssembly('own-1', { name: ' Drum wall ', shortName: 'drum wall' }))
    expect(renamed.assemblies).toEqual([anOwnAssembly({ name: 'Drum wall', shortName: 'drum wall' })])
  })

  it.each<[string, () => Command, string]>([
    ['an empty name', () => renameAssembly('own-1', { name: ' ', shortName: 'x' }), 'An assembly needs a name.'],
    [
      'an empty short name',
      () => renameAssembly('own-1', { name: 'x', shortName: '' }),
      'An assembly needs a short name, for its mark on the ruler.',
    ],
    [
      'nothing of that id',
      () => renameAssembly('own-9', { name: 'x', shortName: 'x' }),
      'There is no own assembly "own-9" in this project.',
    ],
    [
      'a name that is taken',
      () => saveAssembly(anOwnAssembly({ id: 'own-2' })),
      'There is already an own assembly called "Mixed boards on own studs"; give this one another name.',
    ],
    [
      'a built-in id',
      () => saveAssembly(anOwnAssembly({ id: 'W14' })),
      `It cannot be saved: the id "W14" is one of the built-in assemblies'.`,
    ],
    [
      'impossible layers',
      () => saveAssembly(anOwnAssembly({ layers: [{ kind: 'board', material: 'osb', thicknessMm: -1 }] })),
      'It was not saved. Layer 1 (board): the thickness of -1 mm must be above 0 and at most 1500 mm.',
    ],
    [
      'another kind of surface while it is built',
      () => saveAssembly(anOwnAssembly({ surface: 'ceiling' })),
      '"Mixed boards on own studs" is built against a wall, so it cannot become one for a ceiling: save it as a copy.',
    ],
    [
      'deleting what is not there',
      () => deleteAssembly(built, 'own-7'),
      'There is no own assembly "own-7" in this project.',
    ],
    [
      'building what is no longer there',
      () => assignAssembly('scheme-1', ['wall-1'], anOwnAssembly({ id: 'own-5' })),
      '"Mixed boards on own studs" is no longer in this project; nothing was changed.',
    ],
  ])('refuse %s with a sentence', (_, command, message) => {
    expect(refusal(built, command())).toBe(message)
  })

  it('bring a shared one in under an id and a name that are free, and say so', () => {
    expect(broughtIn(garage, anOwnAssembly())).toEqual({ assembly: anOwnAssembly(), told: [] })
    const second = broughtIn(saved, anOwnAssembly())
    expect([second.assembly.id, second.assembly.name]).toEqual(['own-2', 'Mixed boards on own studs 2'])
    expect(second.told.join(' ')).toMatch(
      /"own-1" is already used here, so it was given "own-2".*called "Mixed boards on own studs 2"/,
    )
    const builtIn: Assembly = anOwnAssembly({ id: 'W14', name: 'Another' })
    expect(broughtIn(garage, builtIn).assembly.id).toBe('own-1')
    expect(freeAssemblyId(saved)).toBe('own-2')
  })
})
