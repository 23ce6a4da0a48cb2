import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { OctaveValues } from '#acoustics/bands.ts'
import { SOURCE_PRESETS } from '#analysis/presets.ts'
import { FURNITURE_KINDS, OPENING_KINDS } from '#analysis/room.ts'
import { AIRTIGHTNESS, type SchemeChange } from '#analysis/scheme.ts'
import type { Limit, ReceiverPlace } from '#analysis/target.ts'
import type { SurfaceKind } from '#assemblies/assembly.ts'
import { readProject } from '#project/read.ts'
import { writeProject } from '#project/write.ts'
import type { Command } from '#state/command.ts'
import {
  addDuct,
  changeDuct,
  deleteDuct,
  makeDuctIn,
  setAirtightness,
  setLeaks,
  setPeople,
  setReverberation,
} from '#state/commands/air.ts'
import {
  deleteAssembly,
  duplicateAssembly,
  renameAssembly,
  saveAndBuild,
  saveAssembly,
} from '#state/commands/assemblies.ts'
import { addBox, changeBox, deleteBox, moveBox } from '#state/commands/boxes.ts'
import { changeScheme } from '#state/commands/changeScheme.ts'
import { deleteDiagonal, setDiagonal, squareToDiagonal } from '#state/commands/diagonals.ts'
import { addDrop, changeDrop } from '#state/commands/drops.ts'
import { addFurniture, changeFurniture } from '#state/commands/furniture.ts'
import { addCeilingPart, addHeight, changeCeilingPart, changeHeight, setCeilingShape } from '#state/commands/heights.ts'
import { addObstacle, changeObstacle } from '#state/commands/obstacles.ts'
import { addOpening, changeOpening } from '#state/commands/openings.ts'
import { makeOpening, makeOpeningIn } from '#state/commands/openingsMade.ts'
import { deleteCorner, insertCorner, moveCorner, setRoomHeight, startRectangle } from '#state/commands/outline.ts'
import { changePartition, cutRoom, joinRooms } from '#state/commands/partitions.ts'
import { renameProject, setNote, setUnits } from '#state/commands/project.ts'
import { addRoom, deleteRoom, renameRoom } from '#state/commands/rooms.ts'
import {
  copyScheme,
  deleteScheme,
  layFloorLevel,
  proposeScheme,
  runThrough,
  takeOutObstacle,
} from '#state/commands/schemes.ts'
import { assignAssembly, describeSurfaces, removeLining } from '#state/commands/surfaces.ts'
import {
  addMeasured,
  addReceiver,
  addSource,
  changeMeasured,
  changeReceiver,
  changeSource,
  deleteMeasured,
  deleteReceiver,
  deleteSource,
  hearSource,
} from '#state/commands/targets.ts'
import { deleteThing, moveThing, moveThingCorner } from '#state/commands/things.ts'
import { addUnderlay, changeUnderlay } from '#state/commands/underlays.ts'
import { moveWall, setWallLength } from '#state/commands/wall.ts'
import { createDocumentStore } from '#state/history.ts'
import { SILENCER_PRESETS, usualBox, usualDuct } from '#state/usualAir.ts'
import { sourceOf, usualReceiver, usualSourceOf } from '#state/usualTargets.ts'
import { usualCeilingPart, usualDrop, usualFurniture, usualObstacle, usualOpening } from '#state/usualThings.ts'
import type { Thing } from '#state/view.ts'
import { A_PICTURE, A_SOURCE, A_SPECTRUM, aBedroom, fullProject } from '../../support/anyProject.ts'
import { made } from '../../support/openings.ts'
import { anOwnAssembly } from '../../support/ownAssembly.ts'
import { CATALOGUE, openSample } from '../../support/samples.ts'

const garage = openSample('garage')
const clips = CATALOGUE.assemblies.get('W07') ?? null

const anyCommand: fc.Arbitrary<Command> = fc.oneof(
  fc
    .record({ x: fc.integer({ min: -900, max: 900 }), y: fc.integer({ min: -900, max: 900 }) })
    .map(({ x, y }) => moveCorner('room-1', 'corner-1', x, y)),
  fc
    .record({ length: fc.integer({ min: 0, max: 9000 }), moves: fc.constantFrom<'from' | 'to'>('from', 'to') })
    .map(({ length, moves }) => setWallLength('room-1', 'wall-2', length, moves)),
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

/** Names of things that the commands below may or may not have made. */
const things = fc.constantFrom<Thing>(
  { kind: 'opening', id: 'opening-1' },
  { kind: 'opening', id: 'opening-3' },
  { kind: 'obstacle', id: 'obstacle-1' },
  { kind: 'drop', id: 'drop-1' },
  { kind: 'height', id: 'height-1' },
  { kind: 'height', id: 'height-3' },
  { kind: 'ceiling-part', id: 'part-1' },
  { kind: 'furniture', id: 'furniture-1' },
  { kind: 'partition', id: 'partition-1' },
  { kind: 'underlay', id: 'underlay-1' },
)
const places = fc.integer({ min: -3000, max: 9000 })
const depths = fc.constantFrom(-1, 0, 25, 300, 70_000, Number.NaN)
const sizes = fc.constantFrom(-5, 0, 40, 900, 2300, 70_000, Number.POSITIVE_INFINITY)
const names = fc.constantFrom('Duct', '', 'x'.repeat(201))
const rooms = fc.constantFrom('room-1', 'room-2', 'room-9')
const rings = fc.record({ x: places, y: places, width: fc.integer({ min: 0, max: 2000 }) }).map(({ x, y, width }) => [
  { xMm: x, yMm: y },
  { xMm: x + width, yMm: y },
  { xMm: x + width, yMm: y + 700 },
  { xMm: x, yMm: y + 700 },
])
const room = garage.rooms[0]
if (!room) throw new Error('no room')

/** What can or cannot be put into openings that may or may not be there. */
const openingsMade = fc.tuple(
  fc.constantFrom('opening-1', 'opening-2', 'opening-3', 'opening-9'),
  fc.constantFrom(
    null,
    made('door-solid-core', 'worn'),
    made('pair-solid-core', 'good', { second: { type: 'door-metal-filled', seal: 'undercut' } }),
    made('plug'),
    made('window-sash-4', 'undercut'),
    made('door-of-gold'),
  ),
)

const thingCommand: fc.Arbitrary<Command> = fc.oneof(
  fc
    .record({
      kind: fc.constantFrom(...OPENING_KINDS),
      from: places,
      wall: fc.constantFrom('wall-1', 'wall-3', 'wall-7'),
    })
    .map(({ kind, from, wall }) => addOpening('room-1', usualOpening(kind, wall, from, 'mm', room))),
  fc
    .record({ fromMm: depths, widthMm: sizes, sillMm: depths, revealLiningMm: depths, name: names })
    .map((patch) => changeOpening('room-1', 'opening-1', patch)),
  openingsMade.map(([id, what]) => makeOpening('room-1', id, what)),
  openingsMade.map(([id, what]) => makeOpeningIn('scheme-1', id, what)),
  rings.map((corners) => addObstacle('room-1', usualObstacle(corners, room))),
  depths.map((liningMm) => changeObstacle('room-1', 'obstacle-1', { liningMm })),
  rings.map((corners) => addDrop('room-1', usualDrop(corners, room))),
  fc
    .record({ undersideMm: sizes, boxBelowMm: depths, boxSidesMm: depths })
    .map((patch) => changeDrop('room-1', 'drop-1', patch)),
  fc
    .record({ xMm: places, yMm: places, heightMm: sizes, floorMm: depths })
    .chain((point) => fc.constantFrom(null, 'part-1').map((part) => addHeight('room-1', part, point))),
  sizes.map((heightMm) => changeHeight('room-1', 'height-1', { heightMm })),
  fc.constantFrom<'level' | 'as-measured'>('level', 'as-measured').map((shape) => setCeilingShape('room-1', shape)),
  rings.map((corners) => addCeilingPart('room-1', usualCeilingPart(corners, room))),
  names.map((name) => changeCeilingPart('room-1', 'part-1', { name })),
  fc
    .record({ kind: fc.constantFrom(...FURNITURE_KINDS), x: places, y: places })
    .map(({ kind, x, y }) => addFurniture('room-1', usualFurniture(kind, x, y, 'mm', room))),
  fc
    .record({ widthMm: sizes, angleDeg: fc.constantFrom(15, -200, 900, Number.NaN) })
    .map((patch) => changeFurniture('room-1', 'furniture-1', patch)),
  fc
    .record({ room: rooms, thing: things, dx: places, dy: places })
    .map(({ room: id, thing, dx, dy }) => moveThing(id, thing, dx, dy)),
  fc
    .record({ thing: things, index: fc.nat(4), x: places, y: places })
    .map(({ thing, index, x, y }) => moveThingCorner('room-1', thing, index, x, y)),
  fc.record({ room: rooms, thing: things }).map(({ room: id, thing }) => deleteThing(id, thing)),
  fc
    .record({ room: rooms, from: fc.tuple(places, places), to: fc.tuple(places, places), name: names })
    .map(({ room: id, from, to, name }) =>
      cutRoom(id, from, to, { construction: 'block-dense-100', placement: 'middle', name }),
    ),
  fc
    .constantFrom('block-dense-100', 'brick-215', 'slab-on-ground')
    .map((construction) => changePartition('partition-1', { construction, placement: 'first' })),
  fc.constant(joinRooms('partition-1')),
  fc.record({ x: places, y: places, name: names }).map(({ x, y, name }) =>
    addRoom(name, [
      [x, y],
      [x + 2000, y],
      [x + 2000, y + 1500],
      [x, y + 1500],
    ]),
  ),
  fc.record({ room: rooms, name: names }).map(({ room: id, name }) => renameRoom(id, name)),
  rooms.map(deleteRoom),
  fc
    .record({ to: fc.constantFrom('corner-2', 'corner-3', 'corner-4'), measured: sizes })
    .map(({ to, measured }) => setDiagonal('room-1', 'corner-1', to, measured)),
  fc.integer({ min: 6900, max: 7400 }).map((measured) => setDiagonal('room-1', 'corner-1', 'corner-3', measured)),
  fc.constant(squareToDiagonal('room-1', 'diagonal-1')),
  fc.constant(deleteDiagonal('room-1', 'diagonal-1')),
  fc.boolean().map((out) => takeOutObstacle('scheme-1', 'obstacle-1', out)),
  fc.boolean().map((level) => layFloorLevel('scheme-1', 'floor-1', level)),
  fc.constantFrom('wall-1', 'wall-2', 'wall-4', null).map((wall) => runThrough('scheme-1', 'corner-1', wall)),
  fc.constant(addUnderlay(A_PICTURE)),
  fc
    .record({ mmPerPx: sizes, opacity: fc.constantFrom(0, 0.5, 2), isLocked: fc.boolean() })
    .map((patch) => changeUnderlay('underlay-1', patch)),
)

const receivers = fc.constantFrom('receiver-1', 'receiver-2', 'receiver-9')
const sources = fc.constantFrom('source-1', 'source-2', 'source-9')
const through = fc
  .subarray(['wall-1', 'wall-2', 'wall-3', 'ceiling-1', 'wall-99'])
  .chain((ids) =>
    fc.record({ distanceMm: sizes }).map(({ distanceMm }) => ids.map((surface) => ({ surface, distanceMm }))),
  )
const receiverPlaces: fc.Arbitrary<ReceiverPlace> = fc.oneof(
  fc.record({
    kind: fc.constant('room' as const),
    volumeM3: fc.constantFrom(0, 30, Number.NaN),
    furnishing: fc.constantFrom('furnished' as const, 'typed' as const),
    absorptionM2: fc.constantFrom(null, 0, 12),
  }),
  fc.record({ kind: fc.constant('outdoors' as const), distanceMm: sizes, atFacade: fc.boolean() }),
  fc.constant({ kind: 'this-room' as const }),
)
const limits = fc.constantFrom<Limit>(
  { kind: 'NC', index: 20 },
  { kind: 'NR', index: -4 },
  { kind: 'dBA', levelDb: 45 },
  { kind: 'dBC', levelDb: Number.NaN },
)
const spectra = fc.constantFrom<OctaveValues>(
  A_SPECTRUM,
  { ...A_SPECTRUM, 125: Number.NaN },
  { 63: null, 125: null, 250: null, 500: null, 1000: null, 2000: null, 4000: null },
)

const targetCommand: fc.Arbitrary<Command> = fc.oneof(
  fc.record({ levelsDb: spectra, name: names }).map((change) => addSource({ ...A_SOURCE, ...change })),
  fc.constantFrom(...SOURCE_PRESETS).map((preset) => addSource(sourceOf(preset))),
  fc.tuple(receivers, fc.constantFrom(...SOURCE_PRESETS)).map(([id, preset]) => hearSource(id, sourceOf(preset))),
  fc
    .record({ id: sources, levelsDb: spectra, sdDb: fc.constantFrom(3, -1, 400) })
    .map(({ id, ...patch }) => changeSource(id, patch)),
  sources.map(deleteSource),
  fc
    .record({ place: receiverPlaces, through, room: rooms, source: fc.option(sources) })
    .map((change) => addReceiver(aBedroom(change))),
  fc
    .constantFrom<ReceiverPlace['kind']>('room', 'outdoors', 'this-room')
    .map((kind) => addReceiver(usualReceiver(kind, room, { sources: [] }), usualSourceOf(kind))),
  fc
    .record({ id: receivers, place: receiverPlaces, through, limit: limits, name: names })
    .chain(({ id, ...whole }) =>
      fc.subarray(Object.entries(whole)).map((some): Command => changeReceiver(id, Object.fromEntries(some))),
    ),
  fc.record({ id: receivers, room: rooms }).map(({ id, ...patch }) => changeReceiver(id, patch)),
  receivers.map(deleteReceiver),
  fc
    .record({ id: receivers, differenceDb: spectra, name: names })
    .map(({ id, ...set }) => addMeasured(id, { when: 'after', ...set })),
  receivers.map((id) => changeMeasured(id, 'measured-1', { when: 'after' })),
  receivers.map((id) => deleteMeasured(id, 'measured-1')),
  fc
    .constantFrom<SchemeChange>(
      { choices: { 'wall-1': { assembly: 'W07', removeLining: false } }, airtightness: 'sealed' },
      { leaks: { 'wall-1': { gapMm: 0, holes: [] }, 'wall-9': { holes: [] } } },
      { openings: { 'opening-9': { type: 'door-solid-core', seal: 'good' } } },
      { ducts: { 'duct-1': { liningMm: 25, linedLengthMm: 1000, bends: 2, silencer: null } } },
    )
    .map((change) => changeScheme('scheme-1', change, 'do what is next')),
)

/** A document as it came, and one with a thing of every kind in two rooms. */
const anyStart = fc.constantFrom(garage, fullProject())
const ductIds = fc.constantFrom('duct-1', 'duct-2', 'duct-9')
const ductsMade = fc.record({
  liningMm: depths,
  linedLengthMm: depths,
  bends: fc.constantFrom(0, 2, 1.5, 99),
  silencer: fc
    .constantFrom(null, SILENCER_PRESETS[0]!, { ...SILENCER_PRESETS[0]!, name: '' })
    .map((silencer) => silencer && { name: silencer.name, insertionLossDb: silencer.insertionLossDb }),
})
const boxIds = fc.constantFrom('box-1', 'box-2', 'box-9')

const airCommand: fc.Arbitrary<Command> = fc.oneof(
  fc
    .record({
      surface: fc.constantFrom('wall-1', 'wall-2', 'ceiling-1', 'wall-99'),
      receiver: receivers,
      widthMm: sizes,
    })
    .map(({ surface, receiver, widthMm }) =>
      addDuct('room-1', { ...usualDuct('supply', room, 'mm'), surface, widthMm, leadsTo: [receiver] }),
    ),
  fc.constant(addDuct('room-1', usualDuct('return', room, 'mm'))),
  fc.record({ id: ductIds, lengthMm: sizes, name: names }).map(({ id, ...patch }) => changeDuct('room-1', id, patch)),
  fc.record({ id: ductIds, made: ductsMade }).map(({ id, made: now }) => changeDuct('room-1', id, { made: now })),
  ductIds.map((id) => deleteDuct('room-1', id)),
  fc.record({ id: ductIds, made: fc.option(ductsMade) }).map(({ id, made: now }) => makeDuctIn('scheme-1', id, now)),
  fc.constantFrom(null, 0, 4, 1.5, 999).map((people) => setPeople('room-1', people)),
  fc.constantFrom(null, 0, 0.4, 99).map((seconds) => setReverberation('room-1', seconds)),
  fc.constantFrom(...AIRTIGHTNESS).map((airtightness) => setAirtightness('scheme-1', airtightness)),
  fc
    .record({
      id: fc.constantFrom('wall-1', 'floor-1', 'wall-99'),
      gapMm: depths,
      name: names,
      count: fc.constantFrom(0, 1),
    })
    .map(({ id, gapMm, ...hole }) =>
      setLeaks('scheme-1', id, { gapMm, holes: [{ id: 'hole-1', diameterMm: 20, ...hole }] }),
    ),
  fc.constantFrom('wall-1', 'wall-99').map((id) => setLeaks('scheme-1', id, null)),
  fc
    .record({ x: places, y: places, duct: fc.constantFrom(null, 'duct-1', 'duct-9'), undersideMm: depths })
    .map(({ x, y, ...more }) => addBox('scheme-1', { ...usualBox(room, {}, x, y, 'mm'), ...more })),
  fc
    .record({ id: boxIds, widthMm: sizes, angleDeg: fc.constantFrom(15, -200, Number.NaN) })
    .map(({ id, ...patch }) => changeBox('scheme-1', id, patch)),
  fc.record({ id: boxIds, dx: places, dy: places }).map(({ id, dx, dy }) => moveBox('scheme-1', id, dx, dy)),
  boxIds.map((id) => deleteBox('scheme-1', id)),
)

const anyChange = fc.oneof(anyCommand, thingCommand, targetCommand, airCommand)

describe('the document', () => {
  it('is back where it began after n undos, and where it was after n redos', () => {
    fc.assert(
      fc.property(anyStart, fc.array(anyChange, { maxLength: 40 }), (start, commands) => {
        const store = createDocumentStore(start)
        for (const command of commands) store.run(command)
        const end = store.store.getState().project
        const steps = store.store.getState().past.length
        for (let i = 0; i < steps; i += 1) store.undo()
        expect(store.store.getState().project).toBe(start)
        for (let i = 0; i < steps; i += 1) store.redo()
        expect(store.store.getState().project).toBe(end)
      }),
      { numRuns: 60 },
    )
  })

  it('can always be written and opened again, whatever was done to it', () => {
    fc.assert(
      fc.property(anyStart, fc.array(anyChange, { maxLength: 40 }), (start, commands) => {
        const store = createDocumentStore(start)
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
