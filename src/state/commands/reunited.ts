import type { PlanPoint } from '#analysis/room.ts'
import { union } from '#geometry/clip.ts'
import type { Point, Ring } from '#geometry/polygon.ts'
import { ringOf } from '#state/commands/rings.ts'
import type { Millimetres } from '#units/quantity.ts'

/** Two faces of a partition, each through two places. */
export type Faces = readonly [readonly [Point, Point], readonly [Point, Point]]

interface Piece {
  readonly id: string
  readonly corners: readonly PlanPoint[]
}

/** What lies this near a face ends there; the pieces were rounded to the plan's grid. */
const ON_FACE_MM: Millimetres = 0.5

/** A corner this near the line between its neighbours is none. */
const STRAIGHT_MM: Millimetres = 0.05

/**
 * What hangs in two rooms that become one: pieces of the same thing that end at the partition's two faces, as it was
 * cut, are one thing again, under the id of the first room's piece; everything else stays as it is.
 */
export function reunited<Thing extends Piece>(
  one: readonly Thing[],
  other: readonly Thing[],
  faces: Faces,
): readonly Thing[] {
  const left = [...other]
  const kept = one.map((thing) => {
    for (const [index, candidate] of left.entries()) {
      const corners = isAlike(thing, candidate)
        ? acrossGap(ringOf(thing.corners), ringOf(candidate.corners), faces)
        : null
      if (!corners) continue
      left.splice(index, 1)
      return { ...thing, corners }
    }
    return thing
  })
  return [...kept, ...left]
}

/** The same in everything but its ids and its outline. */
function isAlike<Thing extends Piece>(one: Thing, other: Thing): boolean {
  const plain = (thing: Thing) =>
    JSON.stringify({ ...thing, corners: null }, (key, value: unknown) => (key === 'id' ? undefined : value))
  return plain(one) === plain(other)
}

/** Both rings and what lies straight between them, as one ring; null where they do not face each other. */
function acrossGap(one: Ring, other: Ring, [near, far]: Faces): readonly PlanPoint[] | null {
  const [a, b, ...more] = one.filter((point) => isOn(point, near))
  const [c, d, ...others] = other.filter((point) => isOn(point, far))
  if (!a || !b || !c || !d || more.length > 0 || others.length > 0) return null
  const isSameWay = (b[0] - a[0]) * (d[0] - c[0]) + (b[1] - a[1]) * (d[1] - c[1]) > 0
  const gap: Ring = isSameWay ? [a, b, d, c] : [a, b, c, d]
  const [whole, ...apart] = union([one, gap, other].map((outline) => ({ outline, holes: [] })))
  if (!whole || apart.length > 0 || whole.holes.length > 0) return null
  return withoutStraight(whole.outline).map(([xMm, yMm]) => ({ xMm, yMm }))
}

function isOn(point: Point, [from, to]: readonly [Point, Point]): boolean {
  return offLine(point, from, to) <= ON_FACE_MM
}

function offLine([x, y]: Point, from: Point, to: Point): Millimetres {
  const [ux, uy] = [to[0] - from[0], to[1] - from[1]]
  return Math.abs((x - from[0]) * uy - (y - from[1]) * ux) / Math.hypot(ux, uy)
}

/** Corners are dropped one after the other, so that none is judged against a neighbour that is gone. */
function withoutStraight(ring: Ring): readonly Point[] {
  const kept: Point[] = []
  ring.forEach((point, index) => {
    const before = kept.at(-1) ?? ring.at(-1)
    const after = ring[(index + 1) % ring.length]
    if (!before || !after || offLine(point, before, after) > STRAIGHT_MM) kept.push(point)
  })
  return kept
}
