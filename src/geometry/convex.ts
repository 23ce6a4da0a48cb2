import { outlineArea } from '#geometry/outline.ts'
import type { Point, Polygon, Ring } from '#geometry/polygon.ts'

/**
 * What of a ring lies inside a convex one. Where the ring is not convex the answer may hold sides that run over each
 * other; its area is right all the same.
 * @param convex  corners in any direction
 * @source Sutherland and Hodgman, reentrant polygon clipping, 1974, memory
 */
export function partWithin(convex: Ring, ring: Ring): Point[] {
  const turn = outlineArea(convex) >= 0 ? 1 : -1
  let left: Point[] = [...ring]
  for (const [index, from] of convex.entries()) {
    const to = convex[(index + 1) % convex.length]!
    left = keepLeft(left, from, to, turn)
    if (left.length === 0) return []
  }
  return left
}

/** Area that shapes share with a convex ring, mm2. */
export function areaWithin(convex: Ring, shapes: readonly Pick<Polygon, 'outline' | 'holes'>[]): number {
  const area = (ring: Ring): number => Math.abs(outlineArea(partWithin(convex, ring)))
  return shapes.reduce(
    (sum, { outline, holes }) => sum + area(outline) - holes.reduce((taken, hole) => taken + area(hole), 0),
    0,
  )
}

/** The part of a ring on one side of a line: on its left for turn 1, on its right for turn -1. */
function keepLeft(ring: Ring, from: Point, to: Point, turn: number): Point[] {
  const side = ([x, y]: Point): number => turn * ((to[0] - from[0]) * (y - from[1]) - (to[1] - from[1]) * (x - from[0]))
  const kept: Point[] = []
  let before = ring[ring.length - 1]
  if (before === undefined) return kept
  let sideBefore = side(before)
  for (const here of ring) {
    const sideHere = side(here)
    if (sideBefore >= 0 !== sideHere >= 0) {
      const share = sideBefore / (sideBefore - sideHere)
      kept.push([before[0] + (here[0] - before[0]) * share, before[1] + (here[1] - before[1]) * share])
    }
    if (sideHere >= 0) kept.push(here)
    before = here
    sideBefore = sideHere
  }
  return kept
}
