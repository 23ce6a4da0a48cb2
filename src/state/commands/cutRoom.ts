import type { Room } from '#analysis/room.ts'
import type { Scheme } from '#analysis/scheme.ts'
import { type CutRefusal, cutOutline } from '#geometry/cutOutline.ts'
import type { Point } from '#geometry/polygon.ts'
import type { Partition, PartitionSide, Project } from '#project/project.ts'
import type { Refusal } from '#state/command.ts'
import { named } from '#state/commands/check.ts'
import { partOfRoom, type RoomPart } from '#state/commands/cutPart.ts'
import { withTargetsCut } from '#state/commands/cutTargets.ts'
import { shareThings } from '#state/commands/cutThings.ts'
import { idGiver, noRoom } from '#state/commands/edit.ts'
import { checked } from '#state/commands/outline.ts'
import { partitionDepths } from '#state/commands/partitionSides.ts'
import { withPartedPartitions } from '#state/commands/partPartition.ts'
import { ringOf } from '#state/commands/rings.ts'
import { freeRoomName } from '#state/commands/roomNames.ts'
import { withCopies } from '#state/commands/wallChoices.ts'
import { fail, ok, type Result } from '#units/result.ts'

/** What a new partition is. */
export type Cut = Pick<Partition, 'construction' | 'placement' | 'name'>

/** The project with a room cut in two along a line: the part to its left stays the room, the other is a new one. */
export function cutProject(
  project: Project,
  roomId: string,
  [from, to]: readonly [Point, Point],
  cut: Cut,
): Result<Project, Refusal> {
  const room = project.rooms.find((candidate) => candidate.id === roomId)
  if (!room) return noRoom(roomId)
  const refused = named('A partition', cut.name)
  if (refused) return fail(refused)
  const depths = partitionDepths(project, cut)
  if (!depths.ok) return depths
  const split = cutOutline(ringOf(room.corners), { from, to, ...depths.value })
  if (!split.ok) return fail(cutWords(room, split.error))
  const { left, right } = split.value
  const give = idGiver(project)
  const first = partOfRoom(room, left, { ...ofFirst(room), construction: cut.construction, give })
  const second = partOfRoom(room, right, { ...ofSecond(project, room, give), construction: cut.construction, give })
  const openings = openingRefusal(room, [first, second])
  if (openings) return fail(openings)
  const outlines = { left: ringOf(first.room.corners), right: ringOf(second.room.corners) }
  const things = shareThings(room, { line: { from, to, ...depths.value }, ...outlines }, give)
  const rooms = [
    { ...first.room, ...things.left },
    { ...second.room, ...things.right },
  ].map(checked)
  const bad = rooms.find((outcome) => !outcome.ok)
  if (bad && !bad.ok) return fail(cutWords(room, { kind: 'too-many' }))
  const made = rooms.flatMap((outcome) => (outcome.ok ? [outcome.value] : []))
  const id = give('partition')
  const both = withBoth(project, room, [first, second], made, { ...cut, name: cut.name.trim(), id })
  const halves = { first: first.room.id, second: second.room.id, copies: second.copies }
  const cutIn = withTargetsCut(both, { formerId: room.id, ...halves, give })
  const parted = withPartedPartitions(cutIn, { former: room, split: split.value, parts: [first, second], give })
  return parted.ok ? ok({ ...parted.value, partitions: lastOf(parted.value.partitions, id) }) : parted
}

/** The same list with one entry last. */
function lastOf(partitions: readonly Partition[], id: string): readonly Partition[] {
  return [...partitions.filter((other) => other.id !== id), ...partitions.filter((other) => other.id === id)]
}

function ofFirst(room: Room) {
  return { id: room.id, name: room.name, ceilingId: room.ceiling.id, floorId: room.floor.id, keepsWallIds: true }
}

function ofSecond(project: Project, room: Room, give: (prefix: string) => string) {
  return {
    id: give('room'),
    name: freeRoomName(project, room.name),
    ceilingId: give('ceiling'),
    floorId: give('floor'),
    keepsWallIds: false,
  }
}

/** Words for a line that does not cut a room in two. */
function cutWords(room: Room, refusal: CutRefusal): Refusal {
  const code = `cut-${refusal.kind}`
  switch (refusal.kind) {
    case 'too-short':
      return { code, message: 'A partition needs a line; choose two places that lie apart.' }
    case 'misses':
      return {
        code,
        message: `The partition would miss ${room.name}; draw its line across the room, from wall to wall.`,
      }
    case 'too-many':
      return {
        code,
        message: `The partition's line would cut ${room.name} in more than two; draw it from one wall to another, inside the room.`,
      }
    case 'along-wall':
      return {
        code,
        message: `The partition would run along Wall ${refusal.edge + 1}; draw it across the room.`,
      }
    case 'near-corner':
      return {
        code,
        message: `The partition would come closer to Corner ${refusal.corner + 1} than it is deep; draw it further from the corner.`,
      }
  }
}

function openingRefusal(room: Room, parts: readonly RoomPart[]): Refusal | null {
  const kept = new Set(parts.flatMap((part) => part.room.openings.map(({ id }) => id)))
  const lost = room.openings.find(({ id }) => !kept.has(id))
  if (!lost) return null
  const message = `The partition would cross "${lost.name}"; draw it beside the opening, or move the opening first.`
  return { code: 'crosses-opening', message }
}

function withBoth(
  project: Project,
  former: Room,
  [first, second]: readonly [RoomPart, RoomPart],
  made: readonly Room[],
  cut: Omit<Partition, 'sides'>,
): Project {
  const index = project.rooms.indexOf(former)
  const [firstRoom, ...others] = made
  const rooms = firstRoom ? [...project.rooms.with(index, firstRoom), ...others] : project.rooms
  const moved = new Set(second.room.walls.map(({ id }) => id))
  const follow = (side: PartitionSide): PartitionSide =>
    side.room === former.id && moved.has(side.wall) ? { ...side, room: second.room.id } : side
  const partitions = project.partitions.map(
    ({ sides: [one, other], ...rest }): Partition => ({ ...rest, sides: [follow(one), follow(other)] }),
  )
  const sides: Partition['sides'] = [
    { room: first.room.id, wall: first.closingWall },
    { room: second.room.id, wall: second.closingWall },
  ]
  return {
    ...project,
    rooms,
    partitions: [...partitions, { ...cut, sides }],
    schemes: project.schemes.map((scheme) => inBoth(scheme, second)),
  }
}

/** A scheme that says of the new room's surfaces what it said of those they were cut from. */
function inBoth(scheme: Scheme, { copies, room }: RoomPart): Scheme {
  const copied = withCopies(scheme, copies)
  if (!scheme.runsThrough) return copied
  const corners = new Set(room.corners.map(({ id }) => id))
  const runsThrough = Object.fromEntries(
    Object.entries(scheme.runsThrough).map(([corner, wall]) => [
      corner,
      corners.has(corner) ? (copies.get(wall) ?? wall) : wall,
    ]),
  )
  return { ...copied, runsThrough }
}
