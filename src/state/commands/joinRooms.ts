import type { CeilingPart, HeightPoint, PlanPoint, Room, Wall } from '#analysis/room.ts'
import type { Scheme } from '#analysis/scheme.ts'
import type { Point } from '#geometry/polygon.ts'
import type { PartitionSide, Project } from '#project/project.ts'
import type { Refusal } from '#state/command.ts'
import { turned } from '#state/commands/cutPart.ts'
import { withTargetsJoined } from '#state/commands/cutTargets.ts'
import { idGiver } from '#state/commands/edit.ts'
import { throughCopies } from '#state/commands/followTargets.ts'
import { withIdsApart } from '#state/commands/idsApart.ts'
import { diagonalsOf, isAlike, isStraight, withoutCorner } from '#state/commands/mergeWalls.ts'
import { checked } from '#state/commands/outline.ts'
import { withWholePartitions } from '#state/commands/partPartition.ts'
import { type Faces, reunited } from '#state/commands/reunited.ts'
import { cornersFollowed, prunedSchemes, withCopies } from '#state/commands/wallChoices.ts'
import { fail, ok, type Result } from '#units/result.ts'

/** The project with the two rooms of a partition made one again: the first stays, the partition and its openings go. */
export function joinedRooms(given: Project, partitionId: string): Result<Project, Refusal> {
  const partition = given.partitions.find(({ id }) => id === partitionId)
  if (!partition) {
    return fail({ code: 'no-partition', message: `There is no partition "${partitionId}" in this project any more.` })
  }
  const give = idGiver(given)
  const project = withIdsApart(given, partition.sides[0].room, partition.sides[1].room, give)
  const [first, second] = partition.sides.map((side) => openRing(project, side))
  if (!first || !second || first.room === second.room) return cannotJoin(partition.name)
  const jambs = [give('wall'), give('wall')] as const
  // What is built against the two short walls is what is built against the walls beside them.
  const beside = [
    [first.lastWall.id, jambs[0]],
    [first.firstWall.id, jambs[1]],
  ] as const
  const schemes = project.schemes.map((scheme) => withCopies(scheme, beside))
  const joined = checked(mergedEnds(ringAround(first, second, jambs, give), jambs, schemes))
  if (!joined.ok) return cannotJoin(partition.name)
  const room = startedWhereItWas(joined.value, [first.room, second.room])
  const rooms = project.rooms.filter((other) => other !== second.room).map((it) => (it === first.room ? room : it))
  const follow = (side: PartitionSide): PartitionSide =>
    side.room === second.room.id ? { ...side, room: room.id } : side
  const partitions = project.partitions
    .filter((other) => other !== partition)
    .map(({ sides: [one, other], ...rest }) => ({ ...rest, sides: [follow(one), follow(other)] as const }))
  const followed = schemes.map((scheme) =>
    cornersFollowed(cornersFollowed(scheme, first.room, room), second.room, room),
  )
  const heard = project.receivers.map((receiver) =>
    receiver.room === first.room.id ? { ...receiver, through: throughCopies(receiver.through, beside) } : receiver,
  )
  const whole = withWholePartitions({ ...project, rooms, partitions, receivers: heard, schemes: followed })
  const targets = withTargetsJoined(whole, whole.rooms.find(({ id }) => id === room.id) ?? room, second.room)
  return ok({ ...targets, schemes: prunedSchemes(targets.schemes, targets.rooms) })
}

function cannotJoin(name: string): Result<never, Refusal> {
  const message = `The two rooms no longer face each other along "${name}", so they cannot become one; move their walls back first.`
  return fail({ code: 'not-joined', message })
}

/** A room without the wall it shows a partition: from the corner where that wall ends to the one where it begins. */
interface OpenRing {
  readonly room: Room
  readonly corners: Room['corners']
  readonly walls: Room['walls']
  readonly firstWall: Wall
  readonly lastWall: Wall
  /** The partition's face in this room. */
  readonly face: readonly [Point, Point]
}

function openRing(project: Project, side: PartitionSide): OpenRing | null {
  const room = project.rooms.find(({ id }) => id === side.room)
  const index = room?.walls.findIndex(({ id }) => id === side.wall) ?? -1
  if (!room || index < 0) return null
  const { corners, walls } = turned(room.corners, room.walls, (index + 1) % room.walls.length)
  const kept = walls.slice(0, -1)
  const [firstWall, lastWall] = [kept[0], kept.at(-1)]
  const [to, from] = [corners[0], corners.at(-1)]
  if (!firstWall || !lastWall || !from || !to) return null
  const face = [at(from), at(to)] as const
  return { room, corners, walls: kept, firstWall, lastWall, face }
}

function at({ xMm, yMm }: PlanPoint): Point {
  return [xMm, yMm]
}

/** Both rings as one, joined by a short wall at either end of the partition. */
function ringAround(first: OpenRing, second: OpenRing, jambs: readonly [string, string], give: Give): Room {
  const corners = [...first.corners, ...second.corners]
  const jamb = (id: string, like: Wall): Wall => ({ ...like, id })
  const walls = [...first.walls, jamb(jambs[0], first.lastWall), ...second.walls, jamb(jambs[1], first.firstWall)].map(
    (wall, i) => ({
      ...wall,
      from: corners[i]?.id ?? wall.from,
      to: corners[(i + 1) % corners.length]?.id ?? wall.to,
    }),
  )
  const there = new Set(walls.map(({ id }) => id))
  const [one, other] = [first.room, second.room]
  const faces = [first.face, second.face] as const
  const ring = {
    ...one,
    corners,
    walls,
    ...heightsOf(one, other, faces, give),
    openings: [...one.openings, ...other.openings].filter(({ wall }) => there.has(wall)),
    obstacles: [...one.obstacles, ...other.obstacles],
    drops: reunited(one.drops, other.drops, faces),
    furniture: [...one.furniture, ...other.furniture],
    diagonals: [...one.diagonals, ...other.diagonals],
    ...ductsOf(one, other, there),
  }
  return { ...ring, diagonals: diagonalsOf(ring) }
}

/** A duct through the second room's ceiling or floor goes through the first's now; one through the partition goes. */
function ductsOf(one: Room, other: Room, walls: ReadonlySet<string>): Pick<Room, 'ducts'> {
  if (!one.ducts && !other.ducts) return {}
  const became = new Map([
    [other.ceiling.id, one.ceiling.id],
    [other.floor.id, one.floor.id],
  ])
  const moved = (other.ducts ?? []).map((duct) => ({ ...duct, surface: became.get(duct.surface) ?? duct.surface }))
  const stays = (surface: string) => walls.has(surface) || surface === one.ceiling.id || surface === one.floor.id
  return { ducts: [...(one.ducts ?? []), ...moved].filter(({ surface }) => stays(surface)) }
}

type Give = (prefix: string) => string

/** Heights that both rooms have count once; where the second has others, they become a part of the ceiling. */
function heightsOf(one: Room, other: Room, faces: Faces, give: Give): Pick<Room, 'heights' | 'ceilingParts'> {
  const plain = (heights: readonly HeightPoint[]) => JSON.stringify(heights.map(({ id: _, ...rest }) => rest))
  if (plain(one.heights) === plain(other.heights)) {
    return { heights: one.heights, ceilingParts: reunited(one.ceilingParts, other.ceilingParts, faces) }
  }
  const corners = other.corners.map(({ xMm, yMm }) => ({ xMm, yMm }))
  const part: CeilingPart = { id: give('part'), name: other.name, corners, heights: other.heights }
  return { heights: one.heights, ceilingParts: [...one.ceilingParts, part, ...other.ceilingParts] }
}

/** Takes out the corners at the partition's ends where walls run on in one line and are alike. */
function mergedEnds(ring: Room, jambs: readonly [string, string], schemes: readonly Scheme[]): Room {
  const atStart = (room: Room, wallId: string) => room.walls.findIndex(({ id }) => id === wallId)
  let room = ring
  // At the far end of the first ring: its last wall swallows the short wall, then the second ring's first wall.
  const lastWall = room.walls[atStart(room, jambs[0]) - 1]
  if (isStraight(room, atStart(room, jambs[0]))) room = withoutCorner(room, atStart(room, jambs[0]))
  room = mergedAfter(room, lastWall?.id ?? '', schemes)
  // At the other end the first ring's first wall swallows backwards.
  const firstWall = room.walls[0]
  if (isStraight(room, 0)) room = withoutCorner(room, 0, 'after')
  return mergedBefore(room, firstWall?.id ?? '', schemes)
}

function mergedAfter(room: Room, wallId: string, schemes: readonly Scheme[]): Room {
  const index = room.walls.findIndex(({ id }) => id === wallId)
  const [wall, next] = [room.walls[index], room.walls[(index + 1) % room.walls.length]]
  const corner = (index + 1) % room.corners.length
  if (!wall || !next || !isStraight(room, corner) || !isAlike(wall, next, schemes)) return room
  return withoutCorner(room, corner)
}

function mergedBefore(room: Room, wallId: string, schemes: readonly Scheme[]): Room {
  const index = room.walls.findIndex(({ id }) => id === wallId)
  const [wall, before] = [room.walls[index], room.walls.at(index - 1)]
  if (!wall || !before || !isStraight(room, index) || !isAlike(wall, before, schemes)) return room
  return withoutCorner(room, index, 'after')
}

/** Begins the ring at the corner that either room began with, the older of the two. */
function startedWhereItWas(room: Room, former: readonly Room[]): Room {
  const starts = former
    .flatMap(({ corners }) => corners.slice(0, 1).map(({ id }) => room.corners.findIndex((corner) => corner.id === id)))
    .filter((index) => index >= 0)
  const age = (index: number) => Number(/\d+$/.exec(room.corners[index]?.id ?? '')?.[0] ?? Number.MAX_SAFE_INTEGER)
  const [start] = starts.sort((one, other) => age(one) - age(other))
  return start === undefined ? room : { ...room, ...turned(room.corners, room.walls, start) }
}
