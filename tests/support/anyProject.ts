import fc from 'fast-check'
import type { OctaveValues } from '#acoustics/bands.ts'
import type { Duct, Room } from '#analysis/room.ts'
import type { SilencerBox } from '#analysis/scheme.ts'
import type { Receiver, Source } from '#analysis/target.ts'
import type { Point } from '#geometry/polygon.ts'
import type { Project, Underlay } from '#project/project.ts'
import type { Command } from '#state/command.ts'
import { addDuct, makeDuctIn, setAirtightness, setLeaks } from '#state/commands/air.ts'
import { addBox } from '#state/commands/boxes.ts'
import { setDiagonal } from '#state/commands/diagonals.ts'
import { addDrop } from '#state/commands/drops.ts'
import { addFurniture } from '#state/commands/furniture.ts'
import { addCeilingPart, addHeight } from '#state/commands/heights.ts'
import { addObstacle } from '#state/commands/obstacles.ts'
import { wallLength } from '#state/commands/openingChecks.ts'
import { addOpening } from '#state/commands/openings.ts'
import { makeOpening, makeOpeningIn } from '#state/commands/openingsMade.ts'
import { drawOutline } from '#state/commands/outline.ts'
import { cutRoom } from '#state/commands/partitions.ts'
import { layFloorLevel, runThrough, takeOutObstacle } from '#state/commands/schemes.ts'
import { assignAssembly, describeSurfaces } from '#state/commands/surfaces.ts'
import { addMeasured, addReceiver, addSource } from '#state/commands/targets.ts'
import { addUnderlay } from '#state/commands/underlays.ts'
import { usualCeilingPart, usualDrop, usualFurniture, usualObstacle, usualOpening } from '#state/usualThings.ts'
import { rectangularProject } from '#ui/newProject.ts'
import { type RoomDraw, roomDraws } from './geometryFuzz.ts'
import { randomRoom } from './geometryRooms.ts'
import { CATALOGUE, deepFreeze } from './samples.ts'

/** Carries commands out one after the other; throws what a refusal says. */
export function applied(project: Project, ...commands: readonly Command[]): Project {
  return commands.reduce((current, command) => {
    const outcome = command.apply(current)
    if (!outcome.ok) throw new Error(outcome.error.message)
    return deepFreeze(outcome.value)
  }, project)
}

/** What a command says where it refuses; null where it does not. */
export function refusalOf(project: Project, command: Command): string | null {
  const outcome = command.apply(project)
  return outcome.ok ? null : outcome.error.message
}

/** A project of one rectangular room, mm. */
export function plainProject(width = 5000, length = 4000, height = 2400): Project {
  const project = rectangularProject('mm', { width, length, height })
  if (!project.ok) throw new Error(project.error.message)
  return deepFreeze(project.value)
}

/** A room of any shape with doors, linings, a wall of another kind, a diagonal, a lining that runs through, and a bedroom that hears it. */
export function furnishedProject(outline: readonly Point[]): Project {
  let project = applied(
    plainProject(),
    drawOutline(
      'room-1',
      outline.map(([x, y]) => [x + 0, y + 0] as const),
    ),
  )
  const clips = CATALOGUE.assemblies.get('W07') ?? null
  for (const [index, wall] of (project.rooms[0]?.walls ?? []).entries()) {
    const room = project.rooms[0]
    if (!room) continue
    const length = wallLength(room.corners, index)
    if (length > 100) {
      const door = usualOpening('door', wall.id, length * 0.3, 'mm', room)
      const fitted = { ...door, widthMm: length * 0.4, fromMm: length * 0.3 }
      project = applied(project, addOpening('room-1', fitted))
    }
    if (index % 2 === 0) project = applied(project, assignAssembly('scheme-1', [wall.id], clips))
    if (index % 3 === 0) project = applied(project, describeSurfaces('room-1', [wall.id], { farSide: 'soil' }))
    if (index % 4 === 0) project = applied(project, runThrough('scheme-1', wall.to, wall.id))
    if (index % 4 === 1) project = applied(project, runThrough('scheme-1', wall.to, wall.id))
  }
  const walls = (project.rooms[0]?.walls ?? []).filter((_, index) => index % 3 !== 1)
  const through = [...walls.map(({ id }) => ({ surface: id })), { surface: 'ceiling-1' }]
  project = applied(
    project,
    addSource(A_SOURCE),
    addReceiver(aBedroom({ through })),
    addDuct('room-1', { ...A_DUCT, leadsTo: ['receiver-1'] }),
    ...walls.slice(0, 1).map(({ id }) => setLeaks('scheme-1', id, { gapMm: 2, holes: [] })),
  )
  const [first, , third] = project.rooms[0]?.corners ?? []
  if (first && third && (project.rooms[0]?.corners.length ?? 0) > 3) {
    project = applied(project, setDiagonal('room-1', first.id, third.id, 3000))
  }
  return deepFreeze(project)
}

/** Random rooms, half of them askew, furnished. */
export function anyFurnishedProject(): fc.Arbitrary<Project> {
  return roomDraws().map(({ family, seed }: RoomDraw) =>
    furnishedProject(randomRoom(family, seed, { rotated: seed % 2 === 1 }).outline),
  )
}

/** Where two projects differ by more than rounding (1e-6 mm), as a path; null where nowhere. */
export function firstDifference(one: unknown, other: unknown, at = 'project'): string | null {
  if (typeof one === 'number' && typeof other === 'number') {
    return Math.abs(one - other) <= 1e-6 ? null : `${at}: ${one} is not ${other}`
  }
  if (typeof one !== 'object' || typeof other !== 'object' || one === null || other === null) {
    return Object.is(one, other) ? null : `${at}: ${String(one)} is not ${String(other)}`
  }
  const [left, right] = [new Map(Object.entries(one)), new Map(Object.entries(other))]
  for (const key of new Set([...left.keys(), ...right.keys()])) {
    const found = firstDifference(left.get(key), right.get(key), `${at}.${key}`)
    if (found) return found
  }
  return null
}

export const anyShare = fc.double({ min: 0.02, max: 0.98, noNaN: true })

/** A picture that lies nowhere but in tests. */
export const A_PICTURE: Omit<Underlay, 'id'> = {
  name: 'Scan',
  sha256: 'ab'.repeat(32),
  mime: 'image/png',
  widthPx: 2000,
  heightPx: 1500,
  xMm: 0,
  yMm: 0,
  mmPerPx: 5,
  angleDeg: 0,
  opacity: 0.5,
  isLocked: false,
  isShown: true,
}

const square = (x: number, y: number, size: number) => [
  { xMm: x, yMm: y },
  { xMm: x + size, yMm: y },
  { xMm: x + size, yMm: y + size },
  { xMm: x, yMm: y + size },
]

export const A_SPECTRUM: OctaveValues = {
  63: 100,
  125: 103,
  250: 101,
  500: 100,
  1000: 98,
  2000: null,
  4000: 95,
}

/** Something that is heard. */
export const A_SOURCE: Omit<Source, 'id'> = {
  name: 'Drum kit',
  preset: null,
  levelsDb: A_SPECTRUM,
  place: 'room-average',
  basis: 'measured',
  sdDb: 2,
  shakes: true,
}

/** A bedroom behind a wall and the ceiling of a room. */
export function aBedroom(change: Partial<Omit<Receiver, 'id'>> = {}): Omit<Receiver, 'id'> {
  return {
    name: 'Bedroom',
    room: 'room-1',
    source: 'source-1',
    place: { kind: 'room', volumeM3: 30, furnishing: 'furnished', absorptionM2: null },
    through: [{ surface: 'wall-1' }, { surface: 'ceiling-1' }],
    limit: { kind: 'NC', index: 25 },
    limitPreset: null,
    hasBeat: false,
    backgroundNc: 20,
    junction: 'careful',
    linedBeyond: 'none',
    measured: [],
    ...change,
  }
}

export const A_DUCT: Omit<Duct, 'id'> = {
  name: 'Supply',
  surface: 'ceiling-1',
  purpose: 'supply',
  shape: 'round',
  widthMm: 160,
  heightMm: 160,
  lengthMm: 3000,
  leadsTo: [],
  made: { liningMm: 0, linedLengthMm: 0, bends: 1, silencer: null },
}

export const A_BOX: Omit<SilencerBox, 'id'> = {
  name: 'Silencer box',
  duct: null,
  room: 'room-1',
  xMm: 5000,
  yMm: 800,
  widthMm: 900,
  depthMm: 400,
  heightMm: 300,
  angleDeg: 0,
  undersideMm: 2000,
}

/** Commands that say one of everything that has to do with who hears what. */
function targetsAndAir({ name }: Room): readonly Command[] {
  return [
    addSource({ ...A_SOURCE, name: `Kit in ${name}` }),
    addReceiver(aBedroom()),
    addReceiver(aBedroom({ name: 'Garden', place: { kind: 'outdoors', distanceMm: 9000, atFacade: false } })),
    addMeasured('receiver-1', { when: 'before', name: 'Before', differenceDb: A_SPECTRUM }),
    makeOpening('room-1', 'opening-1', { type: 'door-solid-core', seal: 'worn' }),
    makeOpeningIn('scheme-1', 'opening-1', { type: 'door-solid-core', seal: 'good' }),
    addDuct('room-1', { ...A_DUCT, leadsTo: ['receiver-1'] }),
    addDuct('room-1', { ...A_DUCT, name: 'Return', surface: 'wall-2' }),
    makeDuctIn('scheme-1', 'duct-1', { ...A_DUCT.made, liningMm: 25, linedLengthMm: 3000 }),
    setLeaks('scheme-1', 'wall-1', { gapMm: 1, holes: [{ id: 'hole-1', name: 'Cable', diameterMm: 20, count: 1 }] }),
    setAirtightness('scheme-1', 'sealed'),
    addBox('scheme-1', { ...A_BOX, duct: 'duct-2' }),
  ]
}

/** Two rooms with at least one of every kind of thing there is, numbered 1 by kind. */
export function fullProject(): Project {
  const empty = plainProject(6000, 4000)
  const [room] = empty.rooms
  if (!room) throw new Error('no room')
  const made = applied(
    empty,
    addOpening('room-1', usualOpening('door', 'wall-1', 400, 'mm', room)),
    addObstacle('room-1', usualObstacle(square(2000, 2500, 300), room)),
    addDrop('room-1', usualDrop(square(500, 500, 800), room)),
    addHeight('room-1', null, { xMm: 2000, yMm: 0, heightMm: 2350, floorMm: -20 }),
    addCeilingPart('room-1', usualCeilingPart(square(1800, 1000, 1000), room)),
    addFurniture('room-1', usualFurniture('desk', 1500, 3300, 'mm', room)),
    setDiagonal('room-1', 'corner-1', 'corner-3', 7211),
    takeOutObstacle('scheme-1', 'obstacle-1', true),
    layFloorLevel('scheme-1', 'floor-1', true),
    runThrough('scheme-1', 'corner-1', 'wall-1'),
    addUnderlay(A_PICTURE),
    ...targetsAndAir(room),
    cutRoom('room-1', [3600, 0], [3600, 4000], { construction: 'block-dense-100', placement: 'middle', name: 'Wall' }),
    setDiagonal('room-1', 'corner-1', 'corner-5', 5300),
  )
  return made
}
