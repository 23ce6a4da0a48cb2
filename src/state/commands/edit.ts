import type { Room } from '#analysis/room.ts'
import type { Scheme } from '#analysis/scheme.ts'
import type { Partition, PartitionSide, Project } from '#project/project.ts'
import type { Refusal } from '#state/command.ts'
import { followReceivers } from '#state/commands/followTargets.ts'
import { followWalls } from '#state/commands/wallChoices.ts'
import { fail, ok, type Result } from '#units/result.ts'

/** The project with one room changed, every scheme's choices and every receiver following its walls; refuses an unknown room. */
export function editRoom(
  project: Project,
  roomId: string,
  change: (room: Room) => Result<Room, Refusal>,
): Result<Project, Refusal> {
  const index = project.rooms.findIndex((room) => room.id === roomId)
  const room = project.rooms[index]
  if (!room) return noRoom(roomId)
  const changed = change(room)
  if (!changed.ok) return changed
  if (changed.value === room) return ok(project)
  return ok({
    ...project,
    rooms: project.rooms.with(index, changed.value),
    partitions: withTheirWalls(project.partitions, changed.value),
    receivers: followReceivers(project.receivers, room, changed.value),
    schemes: followWalls(project.schemes, room, changed.value),
  })
}

/** Partitions without those whose wall in this room is gone. */
function withTheirWalls(partitions: readonly Partition[], room: Room): readonly Partition[] {
  const walls = new Set(room.walls.map(({ id }) => id))
  const isThere = (side: PartitionSide) => side.room !== room.id || walls.has(side.wall)
  return partitions.every(({ sides }) => sides.every(isThere))
    ? partitions
    : partitions.filter(({ sides }) => sides.every(isThere))
}

export function noRoom(roomId: string): Result<never, Refusal> {
  return fail({ code: 'no-room', message: `There is no room "${roomId}" in this project.` })
}

/** The project with one scheme changed; refuses an unknown scheme. */
export function editScheme(
  project: Project,
  schemeId: string,
  change: (scheme: Scheme) => Result<Scheme, Refusal>,
): Result<Project, Refusal> {
  const index = project.schemes.findIndex((scheme) => scheme.id === schemeId)
  const scheme = project.schemes[index]
  if (!scheme) return fail({ code: 'no-scheme', message: `There is no scheme "${schemeId}" in this project.` })
  const changed = change(scheme)
  return changed.ok ? ok({ ...project, schemes: project.schemes.with(index, changed.value) }) : changed
}

/** What a command answers where the thing it speaks of is not there any more. */
export function noThing(what: string, id: string): Result<never, Refusal> {
  return fail({ code: `no-${what.replace(' ', '-')}`, message: `There is no ${what} "${id}" in this room any more.` })
}

/** A list with the entry of this id changed; null where there is none. */
export function changedEntry<Entry extends { readonly id: string }>(
  entries: readonly Entry[],
  id: string,
  change: (entry: Entry) => Entry,
): { readonly entries: readonly Entry[]; readonly entry: Entry } | null {
  const index = entries.findIndex((entry) => entry.id === id)
  const former = entries[index]
  if (!former) return null
  const entry = change(former)
  return { entries: entries.with(index, entry), entry }
}

/** Wall 1, Wall 2 ..., Ceiling, Floor. */
export function surfaceLabel(room: Room, surfaceId: string): string {
  if (surfaceId === room.ceiling.id) return 'Ceiling'
  if (surfaceId === room.floor.id) return 'Floor'
  return `Wall ${room.walls.findIndex((wall) => wall.id === surfaceId) + 1}`
}

/** The first id of the form prefix-n that is not taken. */
export function freeId(prefix: string, taken: Iterable<string>): string {
  const used = new Set(taken)
  let n = 1
  while (used.has(`${prefix}-${n}`)) n += 1
  return `${prefix}-${n}`
}

/** Hands out ids that nothing in the project has, nor anything handed out before. */
export function idGiver(project: Project): (prefix: string) => string {
  const taken = new Set(projectIds(project))
  return (prefix) => {
    const id = freeId(prefix, taken)
    taken.add(id)
    return id
  }
}

function projectIds({ rooms, partitions, underlays, schemes, receivers, sources }: Project): readonly string[] {
  const boxes = schemes.flatMap((scheme) => scheme.boxes ?? [])
  const heard = [...sources, ...receivers, ...receivers.flatMap(({ measured }) => measured)]
  return [...rooms.flatMap(roomIds), ...[...partitions, ...underlays, ...boxes, ...heard].map(({ id }) => id)]
}

function roomIds(room: Room): readonly string[] {
  const parts = [room.ceiling, room.floor, ...room.corners, ...room.walls, ...room.diagonals]
  const things = [...room.openings, ...room.obstacles, ...room.drops, ...room.furniture, ...room.ceilingParts]
  const ducts = room.ducts ?? []
  const heights = [...room.heights, ...room.ceilingParts.flatMap((part) => part.heights)]
  return [room.id, ...[...parts, ...things, ...ducts, ...heights].map(({ id }) => id)]
}
