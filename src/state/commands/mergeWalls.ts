import type { Corner, Room, SurfaceFacts } from '#analysis/room.ts'
import type { Scheme } from '#analysis/scheme.ts'
import { choiceFor } from '#analysis/scheme.ts'
import type { Millimetres } from '#units/quantity.ts'

/** Walls whose corner lies this near to the line through their far ends run in one line, mm. */
const ON_LINE_MM = 0.1

/**
 * Takes a corner out: its two walls become one, which keeps the id and the facts of one of them. Openings and ducts stay at
 * their places; diagonals that ended there, or that a wall now joins, go.
 */
export function withoutCorner(room: Room, index: number, keeps: 'before' | 'after' = 'before'): Room {
  const count = room.corners.length
  const [before, corner, after] = [-1, 0, 1].map((step) => room.corners[(index + step + count) % count]!)
  const [first, second] = [room.walls[(index - 1 + count) % count]!, room.walls[index]!]
  if (!before || !corner || !after) return room
  const kept = { ...(keeps === 'before' ? first : second), from: before.id, to: after.id }
  const along = alongOf(before, after)
  const openings = room.openings.map((opening) => {
    if (opening.wall !== first.id && opening.wall !== second.id) return opening
    const [start, end] = opening.wall === first.id ? [before, corner] : [corner, after]
    const fromMm = opening.wall === first.id ? opening.fromMm : along(onWall(start, end, opening.fromMm))
    return { ...opening, wall: kept.id, fromMm: Math.max(0, fromMm) }
  })
  const corners = room.corners.toSpliced(index, 1)
  const walls = room.walls.map((wall) => (wall.id === first.id ? kept : wall)).toSpliced(index, 1)
  const merged = { ...room, corners, walls, openings, ...ductsMoved(room, [first.id, second.id], kept.id) }
  return { ...merged, diagonals: diagonalsOf(merged) }
}

function ductsMoved({ ducts }: Room, walls: readonly string[], kept: string): Pick<Room, 'ducts'> {
  if (!ducts) return {}
  return { ducts: ducts.map((duct) => (walls.includes(duct.surface) ? { ...duct, surface: kept } : duct)) }
}

/** The diagonals that still run across the room, between corners that are there and no wall joins. */
export function diagonalsOf(room: Room): Room['diagonals'] {
  const count = room.corners.length
  const place = new Map(room.corners.map(({ id }, i) => [id, i]))
  const kept = room.diagonals.filter(({ from, to }) => {
    const [one, other] = [place.get(from), place.get(to)]
    if (one === undefined || other === undefined) return false
    const steps = Math.abs(one - other)
    return steps > 1 && steps < count - 1
  })
  return kept.length === room.diagonals.length ? room.diagonals : kept
}

/** Whether the two walls at a corner run in one line. */
export function isStraight(room: Room, index: number): boolean {
  const count = room.corners.length
  const [before, corner, after] = [-1, 0, 1].map((step) => room.corners[(index + step + count) % count])
  if (!before || !corner || !after) return false
  const [ux, uy] = unit(before, after)
  const [dx, dy] = [corner.xMm - before.xMm, corner.yMm - before.yMm]
  const along = dx * ux + dy * uy
  const length = Math.hypot(after.xMm - before.xMm, after.yMm - before.yMm)
  return Math.abs(dx * uy - dy * ux) <= ON_LINE_MM && along > 0 && along < length
}

/** Whether two surfaces say the same of themselves and every scheme builds the same against them. */
export function isAlike(one: SurfaceFacts, other: SurfaceFacts, schemes: readonly Scheme[]): boolean {
  const facts = ({ existing, farSide, measuredTo, lining, outOfTrueMm }: SurfaceFacts) =>
    JSON.stringify([existing, farSide, measuredTo, lining, outOfTrueMm])
  if (facts(one) !== facts(other)) return false
  return schemes.every((scheme) => {
    const [a, b] = [choiceFor(scheme, one.id), choiceFor(scheme, other.id)]
    const gaps = [one, other].map(({ id }) => scheme.leaks?.[id]?.gapMm)
    return a.assembly === b.assembly && a.removeLining === b.removeLining && gaps[0] === gaps[1]
  })
}

function unit(from: Corner, to: Corner): readonly [number, number] {
  const length = Math.hypot(to.xMm - from.xMm, to.yMm - from.yMm)
  return [(to.xMm - from.xMm) / length, (to.yMm - from.yMm) / length]
}

type Place = Pick<Corner, 'xMm' | 'yMm'>

function alongOf(from: Corner, to: Corner): (place: Place) => Millimetres {
  const [ux, uy] = unit(from, to)
  return ({ xMm, yMm }) => (xMm - from.xMm) * ux + (yMm - from.yMm) * uy
}

function onWall(from: Corner, to: Corner, distance: Millimetres): Place {
  const [ux, uy] = unit(from, to)
  return { xMm: from.xMm + ux * distance, yMm: from.yMm + uy * distance }
}
