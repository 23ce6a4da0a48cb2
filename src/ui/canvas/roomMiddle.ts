import type { SchemeResult } from '#analysis/results.ts'
import type { Room } from '#analysis/room.ts'
import type { Point, Ring } from '#geometry/polygon.ts'
import { ringEdges } from '#ui/canvas/measures.ts'
import { cornerPoints, distanceToSegment, isInside } from '#ui/canvas/nearest.ts'

/** Places tried across and along. */
const TRIES = 24

/** The roomiest place of the clear room, to 1 part in 24 of its size; of the room as drawn where nothing is clear. */
export function roomMiddle(room: Room, result: SchemeResult | null): Point {
  const largest = result?.clear[0]
  const rings: readonly Ring[] = largest ? [largest.outline, ...largest.holes] : [cornerPoints(room)]
  const [outline = []] = rings
  const edges = rings.flatMap(ringEdges)
  const xs = outline.map(([x]) => x)
  const ys = outline.map(([, y]) => y)
  const [left, right, low, high] = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)]
  let best: Point = [(left + right) / 2, (low + high) / 2]
  let most = Number.NEGATIVE_INFINITY
  for (let i = 0; i <= TRIES; i += 1) {
    for (let j = 0; j <= TRIES; j += 1) {
      const at: Point = [left + ((right - left) * i) / TRIES, low + ((high - low) * j) / TRIES]
      if (!rings.every((ring, index) => isInside(ring, at) === (index === 0))) continue
      const free = Math.min(...edges.map((edge) => distanceToSegment(at, ...edge)))
      // The middle of an oblong room is as good as any place on its long axis, and looks it.
      const away = Math.hypot(at[0] - (left + right) / 2, at[1] - (low + high) / 2)
      if (free - away / 1000 > most) {
        most = free - away / 1000
        best = at
      }
    }
  }
  return best
}
