import type { Corner, Room, Wall } from '#analysis/room.ts'
import type { Refusal } from '#state/command.ts'
import { withoutCorner } from '#state/commands/mergeWalls.ts'
import { checked } from '#state/commands/outline.ts'
import { fail, type Result } from '#units/result.ts'

export type Vector = readonly [x: number, y: number]

/** What a slide needs to know beside the room. */
export interface Slide {
  readonly shift: Vector
  /** The neighbour that is given another length: where it runs in line with the wall, only their corner moves. */
  readonly pulls: 'before' | 'after' | null
  readonly give: (prefix: string) => string
  /** Whether nothing is lost when one wall takes another's place. */
  readonly isAlike: (one: Wall, other: Wall) => boolean
}

/** Sine of the angle below which two walls count as running in one line: about 1 degree. */
const IN_LINE = 0.02
/** A wall shorter than this has no length left, mm. */
const NO_LENGTH_MM = 1e-3

/**
 * Shifts wall `at`; its ends slide along the neighbouring walls' lines. Where a neighbour runs on in the same line, a
 * short wall is put between the two, and taken out again where a slide back leaves it no length.
 */
export function slideWall(room: Room, at: number, slide: Slide): Result<Room, Refusal> {
  const count = room.corners.length
  const index = ((at % count) + count) % count
  const along = direction(room, index)
  const moved = shiftedEnds(room, index, along, slide.shift)
  if (slide.pulls === 'before' && moved.start === null) return pulledAlong(room, index, slide.shift)
  if (slide.pulls === 'after' && moved.end === null) return pulledAlong(room, index + 1, slide.shift)
  const across = Math.abs(slide.shift[0] * along[1] - slide.shift[1] * along[0]) > NO_LENGTH_MM
  const stepsBefore = moved.start === null && across
  const stepsAfter = moved.end === null && across
  const [from, to] = ends(room, index)
  const start = moved.start ?? [from.xMm + slide.shift[0], from.yMm + slide.shift[1]]
  const end = moved.end ?? [to.xMm + slide.shift[0], to.yMm + slide.shift[1]]
  let slid = withStep(room, index, stepsBefore, stepsAfter, slide.give)
  const place = slid.walls.findIndex(({ id }) => id === room.walls[index]?.id)
  slid = {
    ...slid,
    corners: slid.corners.map((corner, i) => {
      if (i === place) return { ...corner, xMm: start[0], yMm: start[1] }
      if (i === (place + 1) % slid.corners.length) return { ...corner, xMm: end[0], yMm: end[1] }
      return corner
    }),
    openings: stepsAfter ? slid.openings : keptInPlace(room, index + 1, end),
  }
  const turned = turnedRound(room, index, slid)
  if (turned !== null) return noLength(turned)
  const settled = withoutSpentWalls(slid, room.walls[index]?.id ?? '', slide.isAlike)
  return settled.ok ? checked(settled.value) : settled
}

/** Moves only the corner that begins wall `at`, along the line it runs in with the wall before it. */
function pulledAlong(room: Room, at: number, shift: Vector): Result<Room, Refusal> {
  const index = at % room.walls.length
  const moved: Vector = [room.corners[index]!.xMm + shift[0], room.corners[index]!.yMm + shift[1]]
  const corners = room.corners.map((corner, i) => (i === index ? { ...corner, xMm: moved[0], yMm: moved[1] } : corner))
  const pulled = { ...room, corners, openings: keptInPlace(room, index, moved) }
  const turned = turnedRound(room, index, pulled)
  return turned === null ? checked(pulled) : noLength(turned)
}

/** Where a shifted wall's ends come to lie on the lines of its neighbours; null where those run along with it. */
function shiftedEnds(room: Room, index: number, along: Vector, shift: Vector) {
  const [from, to] = ends(room, index)
  const moved: Vector = [from.xMm + shift[0], from.yMm + shift[1]]
  return {
    start: meet(moved, along, from, direction(room, index - 1)),
    end: meet(moved, along, to, direction(room, index + 1)),
  }
}

/** New corners for the wall's own ends where a short wall is to come between it and a neighbour in line with it. */
function withStep(room: Room, index: number, before: boolean, after: boolean, give: (prefix: string) => string): Room {
  const [from, to] = ends(room, index)
  const wall = room.walls[index]!
  const neighbour = room.walls.at(index - 1)!
  const start: Corner = before ? { ...from, id: give('corner') } : from
  const end: Corner = after ? { ...to, id: give('corner') } : to
  const walls: Wall[] = []
  if (before) walls.push({ ...neighbour, id: give('wall'), from: from.id, to: start.id })
  walls.push({ ...wall, from: start.id, to: end.id })
  if (after) walls.push({ ...wall, id: give('wall'), from: end.id, to: to.id })
  const corners = room.corners.toSpliced(index + 1, 0, ...(before ? [start] : []), ...(after ? [end] : []))
  return { ...room, corners, walls: room.walls.toSpliced(index, 1, ...walls) }
}

/** The wall, of the one that slid and its neighbours, whose ends have passed each other; null: none. */
function turnedRound(room: Room, index: number, slid: Room): number | null {
  const count = room.walls.length
  for (const at of [index - 1, index, index + 1].map((k) => (k + count) % count)) {
    const [ux, uy] = direction(room, at)
    const [from, to] = ends(
      slid,
      slid.walls.findIndex(({ id }) => id === room.walls[at]?.id),
    )
    if ((to.xMm - from.xMm) * ux + (to.yMm - from.yMm) * uy < -NO_LENGTH_MM) return at
  }
  return null
}

/** Openings of a wall whose first corner slides along it: they stay at their places in the plan. */
function keptInPlace(room: Room, at: number, start: Vector): Room['openings'] {
  const wall = room.walls[at % room.walls.length]
  const along = direction(room, at)
  const [from] = ends(room, at)
  const slid = (start[0] - from.xMm) * along[0] + (start[1] - from.yMm) * along[1]
  return room.openings.map((opening) => {
    if (opening.wall !== wall?.id || slid === 0) return opening
    const fromMm = opening.fromMm - slid
    return { ...opening, fromMm: Math.abs(fromMm) < NO_LENGTH_MM ? 0 : fromMm }
  })
}

/** Without neighbours of the wall that a slide left no length, where that loses nothing. */
function withoutSpentWalls(
  room: Room,
  wallId: string,
  isAlike: (one: Wall, other: Wall) => boolean,
): Result<Room, Refusal> {
  let settled = room
  for (const step of [-1, 1]) {
    const count = settled.walls.length
    const index = settled.walls.findIndex(({ id }) => id === wallId)
    const [wall, spent, beyond] = [0, step, 2 * step].map((k) => settled.walls[(index + k + count) % count])
    const spentAt = (index + step + count) % count
    const [from, to] = ends(settled, spentAt)
    if (!wall || !spent || !beyond || count <= 4 || gap(from, to) >= NO_LENGTH_MM) continue
    if (!isAlike(spent, wall) && !isAlike(spent, beyond)) return noLength(spentAt)
    if (settled.openings.some((opening) => opening.wall === spent.id)) return noLength(spentAt)
    settled = withoutCorner(settled, step < 0 ? index : (index + 1) % count, step < 0 ? 'after' : 'before')
  }
  return { ok: true, value: settled }
}

function noLength(index: number): Result<never, Refusal> {
  const message = `Wall ${index + 1} would have no length left; move the wall less far, or delete a corner first.`
  return fail({ code: 'no-length', message })
}

/** Where two lines cross; null when they are nearly parallel. */
function meet(p: Vector, u: Vector, corner: Corner, w: Vector): Vector | null {
  const cross = u[0] * w[1] - u[1] * w[0]
  if (Math.abs(cross) < IN_LINE) return null
  const t = ((corner.xMm - p[0]) * w[1] - (corner.yMm - p[1]) * w[0]) / cross
  return [p[0] + t * u[0], p[1] + t * u[1]]
}

/** A wall's two corners. */
export function ends(room: Room, index: number): readonly [Corner, Corner] {
  const count = room.corners.length
  const at = ((index % count) + count) % count
  return [room.corners[at]!, room.corners[(at + 1) % count]!]
}

/** Unit direction of a wall. */
export function direction(room: Room, index: number): Vector {
  const [from, to] = ends(room, index)
  const length = gap(from, to)
  return [(to.xMm - from.xMm) / length, (to.yMm - from.yMm) / length]
}

function gap(from: Corner, to: Corner): number {
  return Math.hypot(to.xMm - from.xMm, to.yMm - from.yMm)
}
