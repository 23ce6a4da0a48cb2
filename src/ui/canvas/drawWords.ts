import type { Point } from '#geometry/polygon.ts'
import { directionName } from '#ui/canvas/direction.ts'
import type { DrawPointer } from '#ui/canvas/useDrawGestures.ts'
import { formatLength } from '#units/format.ts'
import type { LengthUnit } from '#units/quantity.ts'

/** What stands at the pointer while an outline is drawn: 12'-6", 90° to the last wall. */
export function runningText(points: readonly Point[], pointer: DrawPointer, units: LengthUnit): string {
  const last = points.at(-1)
  if (!last) return 'first corner'
  const length = formatLength(Math.hypot(pointer.point[0] - last[0], pointer.point[1] - last[1]), units)
  if (pointer.closes) return `close: ${length}`
  const before = points.at(-2)
  if (!before) return `${length}, ${directionName(degrees(last, pointer.point))}`
  return `${length}, ${angleBetween(before, last, pointer.point)}° to the last wall`
}

/** Direction from a to b, degrees counter-clockwise from right, 0 up to 360. */
export function degrees(a: Point, b: Point): number {
  const angle = (Math.atan2(b[1] - a[1], b[0] - a[0]) * 180) / Math.PI
  return (angle + 360) % 360
}

/** Angle at b between a and c, 0 to 180, to a tenth of a degree. */
function angleBetween(a: Point, b: Point, c: Point): number {
  const turn = Math.abs(degrees(b, a) - degrees(b, c))
  return Math.round(Math.min(turn, 360 - turn) * 10) / 10
}
