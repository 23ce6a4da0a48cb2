import type { Room } from '#analysis/room.ts'
import type { SilencerBox } from '#analysis/scheme.ts'
import type { Receiver, Through } from '#analysis/target.ts'
import { contains } from '#geometry/outline.ts'
import type { Project } from '#project/project.ts'
import { withBoxesMoved, withBoxesOf } from '#state/commands/ductChoices.ts'
import { ledTo, surfaceIds, throughOnce } from '#state/commands/followTargets.ts'
import { ringOf } from '#state/commands/rings.ts'

/** A room that was cut in two, and the surfaces of the second that say what those of the former say. */
export interface CutInTwo {
  readonly formerId: string
  readonly first: string
  readonly second: string
  readonly copies: ReadonlyMap<string, string>
  readonly give: (prefix: string) => string
}

/**
 * The project with what was heard from a room that is two now: a receiver hears from the rooms whose surfaces it is behind.
 * Behind surfaces of both it stands twice, once for each room, and the second is numbered.
 */
export function withTargetsCut(project: Project, cut: CutInTwo): Project {
  const first = project.rooms.find(({ id }) => id === cut.first)
  const second = project.rooms.find(({ id }) => id === cut.second)
  if (!first || !second) return project
  const twins = new Map<string, string>()
  const added: Receiver[] = []
  const receivers = project.receivers.map((receiver) => {
    if (receiver.room !== cut.formerId) return receiver
    const here = partOf(receiver.through, surfaceIds(first))
    const beyond = partOf(moved(receiver.through, cut.copies), surfaceIds(second))
    if (beyond.length === 0) return { ...receiver, room: first.id, through: here }
    if (here.length === 0) return { ...receiver, room: second.id, through: beyond }
    const id = cut.give('receiver')
    twins.set(receiver.id, id)
    const name = numbered(receiver.name, [...project.receivers, ...added])
    added.push({ ...receiver, id, name, room: second.id, through: beyond, measured: [] })
    return { ...receiver, through: here }
  })
  const led = ledTo(second, (id) => [twins.get(id) ?? id])
  const rooms = project.rooms.map((room) => (room === second ? led : room))
  const roomOf = boxRoom(cut.formerId, second)
  const schemes = project.schemes.map((scheme) => withBoxesOf(withBoxesMoved(scheme, roomOf), rooms))
  return { ...project, rooms, receivers: [...receivers, ...added], schemes }
}

function partOf(through: readonly Through[], surfaces: ReadonlySet<string>): readonly Through[] {
  return through.filter(({ surface }) => surfaces.has(surface))
}

function moved(through: readonly Through[], copies: ReadonlyMap<string, string>): readonly Through[] {
  return through.map((part) => ({ ...part, surface: copies.get(part.surface) ?? part.surface }))
}

/** The second name of a listener: "Bedroom 2". */
function numbered(name: string, others: readonly Receiver[]): string {
  let n = 2
  while (others.some((other) => other.name === `${name} ${n}`)) n += 1
  return `${name} ${n}`
}

function boxRoom(formerId: string, second: Room): (box: SilencerBox) => string {
  const ring = ringOf(second.corners)
  return ({ room, xMm, yMm }) => (room === formerId && contains(ring, [xMm, yMm]) ? second.id : room)
}

/**
 * The project with what was heard from two rooms that are one now. Two receivers that a cut made of one are one again.
 * @param room  the joined room
 * @param formerSecond  the room that went into it
 */
export function withTargetsJoined(project: Project, room: Room, formerSecond: Room): Project {
  const became = joinedSurfaces(room, formerSecond)
  const surfaces = new Map(project.rooms.map((other) => [other.id, surfaceIds(other)]))
  const twins = new Map<string, string>()
  const kept: Receiver[] = []
  for (const receiver of project.receivers) {
    const theirs = receiver.room === formerSecond.id
    const roomId = theirs ? room.id : receiver.room
    const through = theirs ? moved(receiver.through, became) : receiver.through
    // A wall of any room may have been swallowed by its neighbour, which a partition no longer needs apart.
    const there = throughOnce(partOf(through, surfaces.get(roomId) ?? new Set()))
    const now = { ...receiver, room: roomId, through: there }
    const twin = theirs ? kept.findIndex((other) => isTwin(other, now)) : -1
    const first = kept[twin]
    if (!first) kept.push(now)
    else {
      twins.set(now.id, first.id)
      kept[twin] = asOne(first, now, room)
    }
  }
  const rooms = project.rooms.map((other) => ledTo(other, (id) => [twins.get(id) ?? id]))
  const roomOf = (box: SilencerBox) => (box.room === formerSecond.id ? room.id : box.room)
  const schemes = project.schemes.map((scheme) => withBoxesMoved(scheme, roomOf))
  return { ...project, rooms, receivers: kept, schemes }
}

/** What each surface of the second room is called now: ceiling and floor are the first's, a wall may have been swallowed. */
function joinedSurfaces(room: Room, former: Room): ReadonlyMap<string, string> {
  const became = new Map([
    [former.ceiling.id, room.ceiling.id],
    [former.floor.id, room.floor.id],
  ])
  const there = surfaceIds(room)
  for (const { id, from, to } of former.walls.filter((wall) => !there.has(wall.id))) {
    const heir = room.walls.find((wall) => wall.to === to || wall.from === from)
    if (heir) became.set(id, heir.id)
  }
  return became
}

/** Whether two receivers say the same but for their number and what they are behind. */
function isTwin(one: Receiver, other: Receiver): boolean {
  if (one.room !== other.room || plainName(one.name) !== plainName(other.name)) return false
  const rest = ({ id: _, name: _name, through: _through, measured: _measured, ...kept }: Receiver) =>
    JSON.stringify(kept)
  return rest(one) === rest(other)
}

function plainName(name: string): string {
  return name.replace(/ \d+$/, '')
}

function asOne(one: Receiver, other: Receiver, { walls, ceiling, floor }: Room): Receiver {
  const place = new Map([...walls, ceiling, floor].map(({ id }, i) => [id, i]))
  const through = throughOnce([...one.through, ...other.through]).toSorted(
    (a, b) => (place.get(a.surface) ?? 0) - (place.get(b.surface) ?? 0),
  )
  return { ...one, through, measured: [...one.measured, ...other.measured] }
}
