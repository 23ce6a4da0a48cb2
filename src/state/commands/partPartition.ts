import type { Room } from '#analysis/room.ts'
import type { OutlineCut } from '#geometry/cutOutline.ts'
import type { Point } from '#geometry/polygon.ts'
import type { Partition, PartitionSide, Project } from '#project/project.ts'
import type { Refusal } from '#state/command.ts'
import type { RoomPart } from '#state/commands/cutPart.ts'
import { throughCopies } from '#state/commands/followTargets.ts'
import { isAlike, isStraight, withoutCorner } from '#state/commands/mergeWalls.ts'
import { splitWall } from '#state/commands/outline.ts'
import { partitionAt } from '#state/commands/partitionSides.ts'
import { cornersFollowed, withCopies } from '#state/commands/wallChoices.ts'
import { fail, ok, type Result } from '#units/result.ts'

/** A cut that was made in a room: what the room was, where it was cut, and its two parts. */
export interface MadeCut {
  readonly former: Room
  readonly split: OutlineCut
  readonly parts: readonly [RoomPart, RoomPart]
  readonly give: (prefix: string) => string
}

/**
 * The project with partitions parted where a new one ends on them: what lies behind them is parted there too, so that
 * every partition still stands between two walls.
 */
export function withPartedPartitions(project: Project, cut: MadeCut): Result<Project, Refusal> {
  let parted: Result<Project, Refusal> = ok(project)
  for (const edge of [cut.split.left.firstEdge, cut.split.left.lastEdge]) {
    if (parted.ok) parted = partedAt(parted.value, cut, edge)
  }
  return parted
}

function partedAt(project: Project, { former, split, parts, give }: MadeCut, edge: number): Result<Project, Refusal> {
  const wall = former.walls[edge]
  const partition = wall && partitionAt(project, former.id, wall.id)
  if (!wall || !partition) return ok(project)
  const mine = partition.sides[0].wall === wall.id ? 0 : 1
  const behind = partition.sides[mine === 0 ? 1 : 0]
  const room = project.rooms.find(({ id }) => id === behind.room)
  const place = room && alongWall(room, behind.wall, middle(split, edge))
  if (!room || place === undefined) return ok(project)
  const splitRoom = splitWall(room, behind.wall, place, give)
  if (!splitRoom.ok) return cannotPart(partition, splitRoom.error)
  const index = splitRoom.value.walls.findIndex(({ id }) => id === behind.wall)
  const added = splitRoom.value.walls[index + 1]?.id ?? behind.wall
  // The wall behind runs the other way: its first piece faces the last piece of the wall that was cut. The piece that
  // faces the left part keeps its id, as the wall there does.
  const swaps = split.left.lastEdge === edge
  const behindNow = swaps ? withSwappedIds(splitRoom.value, behind.wall, added) : splitRoom.value
  const left = { here: { room: parts[0].room.id, wall: wall.id }, behind: behind.wall }
  const right = { here: { room: parts[1].room.id, wall: parts[1].copies.get(wall.id) ?? wall.id }, behind: added }
  const pair = ({ here, behind: face }: typeof left): Partition['sides'] => {
    const other: PartitionSide = { room: behind.room, wall: face }
    return mine === 0 ? [here, other] : [other, here]
  }
  const kept = project.partitions.map((it) => (it.id === partition.id ? { ...it, sides: pair(left) } : it))
  const name = freePartitionName(project, partition.name)
  return ok({
    ...project,
    rooms: project.rooms.map((it) => (it === room ? behindNow : it)),
    schemes: project.schemes.map((scheme) =>
      cornersFollowed(withCopies(scheme, [[behind.wall, added]]), room, behindNow),
    ),
    receivers: project.receivers.map((receiver) =>
      receiver.room === room.id
        ? { ...receiver, through: throughCopies(receiver.through, [[behind.wall, added]]) }
        : receiver,
    ),
    partitions: [...kept, { ...partition, id: give('partition'), name, sides: pair(right) }],
  })
}

/** The same walls and openings with two ids changed for each other. */
function withSwappedIds(room: Room, one: string, other: string): Room {
  const swapped = (id: string) => (id === one ? other : id === other ? one : id)
  return {
    ...room,
    walls: room.walls.map((wall) => ({ ...wall, id: swapped(wall.id) })),
    openings: room.openings.map((opening) => ({ ...opening, wall: swapped(opening.wall) })),
  }
}

function cannotPart({ name }: Partition, { message }: Refusal): Result<never, Refusal> {
  return fail({
    code: 'on-a-partition',
    message: `The line would end on "${name}", which has to be parted there. ${message}`,
  })
}

function freePartitionName(project: Project, wanted: string): string {
  let name = `${wanted} 2`
  for (let n = 3; project.partitions.some((other) => other.name === name); n += 1) name = `${wanted} ${n}`
  return name
}

/** The middle of the new partition where it meets a wall. */
function middle({ left, right }: OutlineCut, edge: number): Point {
  const one = left.firstEdge === edge ? left.start : left.end
  const other = right.firstEdge === edge ? right.start : right.end
  return [(one[0] + other[0]) / 2, (one[1] + other[1]) / 2]
}

function alongWall(room: Room, wallId: string, [x, y]: Point): number | undefined {
  const index = room.walls.findIndex(({ id }) => id === wallId)
  const [from, to] = [room.corners[index], room.corners[(index + 1) % room.corners.length]]
  if (!from || !to) return undefined
  const length = Math.hypot(to.xMm - from.xMm, to.yMm - from.yMm)
  return ((x - from.xMm) * (to.xMm - from.xMm) + (y - from.yMm) * (to.yMm - from.yMm)) / length
}

/**
 * The project after two rooms became one: partitions that no longer stand between two rooms go, and a wall behind that
 * was parted for one of them becomes whole.
 */
export function withWholePartitions(project: Project): Project {
  const stands = ({ sides: [one, other] }: Partition) =>
    one.room !== other.room && [one, other].every((side) => isThere(project, side))
  const gone = project.partitions.filter((partition) => !stands(partition))
  const kept = { ...project, partitions: project.partitions.filter(stands) }
  return gone.flatMap(({ sides }) => sides.filter((side) => isThere(project, side))).reduce(madeWhole, kept)
}

function isThere(project: Project, side: PartitionSide): boolean {
  return project.rooms.some((room) => room.id === side.room && room.walls.some(({ id }) => id === side.wall))
}

/** Lets the neighbour of a wall that a partition no longer needs swallow it, where they run on in one line alike. */
function madeWhole(project: Project, side: PartitionSide): Project {
  const room = project.rooms.find(({ id }) => id === side.room)
  const index = room?.walls.findIndex(({ id }) => id === side.wall) ?? -1
  const wall = room?.walls[index]
  if (!room || !wall || partitionAt(project, room.id, wall.id)) return project
  const count = room.walls.length
  for (const [neighbour, corner, keeps] of [
    [(index - 1 + count) % count, index, 'before'],
    [(index + 1) % count, (index + 1) % count, 'after'],
  ] as const) {
    const other = room.walls[neighbour]
    if (!other || !partitionAt(project, room.id, other.id)) continue
    if (!isStraight(room, corner) || !isAlike(wall, other, project.schemes)) continue
    const whole = withoutCorner(room, corner, keeps)
    const schemes = project.schemes.map((scheme) => cornersFollowed(scheme, room, whole))
    return { ...project, schemes, rooms: project.rooms.map((it) => (it === room ? whole : it)) }
  }
  return project
}
