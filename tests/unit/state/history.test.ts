import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { SurfaceKind } from '#assemblies/assembly.ts'
import { readProject } from '#project/read.ts'
import { writeProject } from '#project/write.ts'
import type { Command } from '#state/command.ts'
import {
  deleteAssembly,
  duplicateAssembly,
  renameAssembly,
  saveAndBuild,
  saveAssembly,
} from '#state/commands/assemblies.ts'
import { deleteCorner, insertCorner, moveCorner, setRoomHeight, startRectangle } from '#state/commands/outline.ts'
import { renameProject, setNote, setUnits } from '#state/commands/project.ts'
import { copyScheme, deleteScheme, proposeScheme } from '#state/commands/schemes.ts'
import { assignAssembly, describeSurfaces, removeLining } from '#state/commands/surfaces.ts'
import { moveWall, setWallLength } from '#state/commands/wall.ts'
import { createDocumentStore } from '#state/history.ts'
import { anOwnAssembly } from '../../support/ownAssembly.ts'
import { CATALOGUE, openSample } from '../../support/samples.ts'

const garage = openSample('garage')
const clips = CATALOGUE.assemblies.get('W07') ?? null

const anyCommand: fc.Arbitrary<Command> = fc.oneof(
  fc
    .record({ x: fc.integer({ min: -900, max: 900 }), y: fc.integer({ min: -900, max: 900 }) })
    .map(({ x, y }) => moveCorner('room-1', 'corner-1', x, y)),
  fc.integer({ min: 0, max: 9000 }).map((length) => setWallLength('room-1', 'wall-2', length, 'to')),
  fc.integer({ min: -500, max: 500 }).map((by) => moveWall('room-1', 'wall-3', by)),
  fc.constantFrom(-10, 0, 1500, 2400, 4000, 99_999_999).map((height) => setRoomHeight('room-1', height)),
  fc.constantFrom('A', 'B', ' ', 'x'.repeat(201)).map(renameProject),
  fc.constantFrom('', 'a line', 'x'.repeat(2001)).map(setNote),
  fc.constantFrom<'mm' | 'ft-in'>('mm', 'ft-in').map(setUnits),
  fc.constantFrom('new one', 'another', 'x'.repeat(300)).map((name) => copyScheme('scheme-2', name)),
  fc.constantFrom('scheme-1', 'scheme-9').map(deleteScheme),
  fc.constantFrom('scheme-1', 'scheme-4').map(proposeScheme),
  fc.subarray(['wall-1', 'wall-2', 'ceiling-1']).map((ids) => assignAssembly('scheme-1', ids, clips)),
  fc.boolean().map((remove) => removeLining('scheme-1', ['wall-1'], remove)),
  fc.constantFrom(-5, 0, 25, 20_000).map((outOfTrueMm) => describeSurfaces('room-1', ['wall-1'], { outOfTrueMm })),
  fc
    .record({
      id: fc.constantFrom('own-1', 'own-2', 'W14'),
      name: fc.constantFrom('One', 'Two', ''),
      surface: fc.constantFrom<SurfaceKind>('wall', 'ceiling'),
    })
    .map((change) => saveAssembly(anOwnAssembly(change))),
  fc.constantFrom('wall-1', 'ceiling-1').map((id) => saveAndBuild(anOwnAssembly(), 'scheme-1', [id])),
  fc.constantFrom('own-1', 'own-2').map((id) => deleteAssembly(garage, id)),
  fc.constant(anOwnAssembly()).map(duplicateAssembly),
  fc.constantFrom('X', ' ').map((name) => renameAssembly('own-1', { name, shortName: name })),
  fc.constant(startRectangle('room-1', 3000, 4000)),
  fc.integer({ min: 0, max: 4000 }).map((along) => insertCorner('room-1', 'wall-1', along)),
  fc.constantFrom('corner-1', 'corner-3', 'corner-5').map((id) => deleteCorner('room-1', id)),
)

describe('the document', () => {
  it('is back where it began after n undos, and where it was after n redos', () => {
    fc.assert(
      fc.property(fc.array(anyCommand, { maxLength: 25 }), (commands) => {
        const store = createDocumentStore(garage)
        for (const command of commands) store.run(command)
        const end = store.store.getState().project
        const steps = store.store.getState().past.length
        for (let i = 0; i < steps; i += 1) store.undo()
        expect(store.store.getState().project).toBe(garage)
        for (let i = 0; i < steps; i += 1) store.redo()
        expect(store.store.getState().project).toBe(end)
      }),
      { numRuns: 60 },
    )
  })

  it('can always be written and opened again, whatever was done to it', () => {
    fc.assert(
      fc.property(fc.array(anyCommand, { maxLength: 25 }), (commands) => {
        const store = createDocumentStore(garage)
        for (const command of commands) store.run(command)
        const read = readProject(writeProject(store.store.getState().project), CATALOGUE)
        expect(read.ok ? read.value : read.error.problems).toEqual({
          project: store.store.getState().project,
          warnings: [],
        })
      }),
      { numRuns: 60 },
    )
  })

  it('keeps the document when a command is refused, and says why', () => {
    const store = createDocumentStore(garage)
    store.run(setWallLength('room-1', 'wall-1', 0, 'to'))
    expect(store.store.getState().project).toBe(garage)
    expect(store.store.getState().past).toEqual([])
    expect(store.store.getState().refusal?.message).toBe(
      'Wall 1: its length has to be more than 0; the drawing was kept as it was.',
    )
  })

  it('previews without recording', () => {
    const store = createDocumentStore(garage)
    store.show(setRoomHeight('room-1', 2000))
    expect(store.store.getState().preview?.rooms[0]?.heights[0]?.heightMm).toBe(2000)
    expect(store.store.getState().past).toEqual([])
    store.cancelPreview()
    expect(store.store.getState().preview).toBeNull()
    expect(store.store.getState().project).toBe(garage)
  })

  it('forgets redo only when something new is done', () => {
    const store = createDocumentStore(garage)
    store.run(renameProject('One'))
    store.undo()
    expect(store.store.getState().future).toHaveLength(1)
    store.show(renameProject('Two'))
    store.cancelPreview()
    expect(store.store.getState().future).toHaveLength(1)
    store.run(renameProject('Two'))
    expect(store.store.getState().future).toHaveLength(0)
  })
})
