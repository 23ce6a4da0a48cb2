import type { Room } from '#analysis/room.ts'
import { FORMAT, type Project, VERSION } from '#project/project.ts'
import type { Refusal } from '#state/command.ts'
import { setRoomHeight, startRectangle } from '#state/commands/outline.ts'
import type { LengthUnit, Millimetres } from '#units/quantity.ts'
import type { Result } from '#units/result.ts'

/** Heights offered for a new room until the tape says better: 8 ft, 2.4 m. */
export const OFFERED_HEIGHT_MM: Readonly<Record<LengthUnit, Millimetres>> = { 'ft-in': 2438.4, mm: 2400 }

/** A rectangle that holds the place of a room until its picture is traced: our choice, 16 by 12 ft, 5 by 4 m. */
export const STAND_IN_MM: Readonly<Record<LengthUnit, { readonly width: Millimetres; readonly length: Millimetres }>> =
  {
    'ft-in': { width: 4876.8, length: 3657.6 },
    mm: { width: 5000, length: 4000 },
  }

const ROOM_ID = 'room-1'

/** A room without walls; what it is made of is the commonest case, shown and changed in the bench. */
const ROOM: Room = {
  id: ROOM_ID,
  name: 'Room',
  corners: [],
  walls: [],
  ceiling: {
    id: 'ceiling-1',
    existing: 'joist-2x10-subfloor',
    farSide: 'own-house',
    measuredTo: 'finished-face',
    lining: { thicknessMm: 12.7, neededForFire: 'unknown' },
    outOfTrueMm: 0,
  },
  floor: {
    id: 'floor-1',
    existing: 'slab-on-ground',
    farSide: 'soil',
    measuredTo: 'structure',
    lining: null,
    outOfTrueMm: 0,
  },
  heights: [],
  ceilingShape: 'as-measured',
  ceilingParts: [],
  obstacles: [],
  drops: [],
  openings: [],
  furniture: [],
  diagonals: [],
}

/** A project that waits for its outline: not yet one that can be saved. */
export function projectWithoutOutline(units: LengthUnit, height: Millimetres): Result<Project, Refusal> {
  const project: Project = {
    format: FORMAT,
    version: VERSION,
    name: 'New room',
    note: '',
    units,
    rooms: [ROOM],
    partitions: [],
    receivers: [],
    sources: [],
    assemblies: [],
    schemes: [{ id: 'scheme-1', name: 'A as it stands', choices: {} }],
    proposal: null,
    underlays: [],
  }
  return setRoomHeight(ROOM_ID, height).apply(project)
}

/** A project with a rectangular room, width along the page and length up it. */
export function rectangularProject(
  units: LengthUnit,
  size: { readonly width: Millimetres; readonly length: Millimetres; readonly height: Millimetres },
): Result<Project, Refusal> {
  const project = projectWithoutOutline(units, size.height)
  if (!project.ok) return project
  return startRectangle(ROOM_ID, size.width, size.length).apply(project.value)
}
