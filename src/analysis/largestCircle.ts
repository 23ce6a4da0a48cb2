import { largestCircle } from '#geometry/outline.ts'
import type { Polygon } from '#geometry/polygon.ts'
import type { Millimetres } from '#units/quantity.ts'

const known = new WeakMap<Polygon, Millimetres>()

/**
 * Diameter of the largest circle that fits into the largest clear part, mm; 0 where nothing is left. Looked for only when
 * somebody asks: a hall of hundreds of walls takes longer than all its other figures.
 * @param clear  clear room polygons, largest first
 */
export function largestCircleAcross(clear: readonly Polygon[]): Millimetres {
  const [largest] = clear
  if (!largest) return 0
  const found = known.get(largest) ?? 2 * largestCircle(largest).radiusMm
  known.set(largest, found)
  return found
}
