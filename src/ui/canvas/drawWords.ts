import type { Point } from '#geometry/polygon.ts'
import type { Misclosure } from '#geometry/survey.ts'
import { directionName } from '#ui/canvas/direction.ts'
import type { DrawPointer } from '#ui/canvas/useDrawGestures.ts'
import { bothReadings } from '#ui/fields/readLength.ts'
import { formatLength } from '#units/format.ts'
import type { LengthUnit, Millimetres } from '#units/quantity.ts'

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

/** By how much a survey does not meet, which way, and how good that is. */
export function misclosureWords({ xMm, yMm, distanceMm, perimeterMm, oneIn }: Misclosure, units: LengthUnit): string {
  const parts = [aside(xMm, 'right', 'left', units), aside(yMm, 'above', 'below', units)].filter(
    (part) => part !== null,
  )
  const ratio = oneIn === null ? '' : `, 1 in ${Math.round(oneIn)} of the ${formatLength(perimeterMm, units)} measured`
  return `The last wall ends ${bothReadings(distanceMm, units)} off the first corner (${parts.join(' and ')})${ratio}.`
}

/** Parts of a misclosure smaller than this are not worth a word, mm. */
const LEAST_PART_MM = 0.5

function aside(mm: Millimetres, more: string, less: string, units: LengthUnit): string | null {
  if (Math.abs(mm) < LEAST_PART_MM) return null
  const side = mm > 0 ? more : less
  return `${formatLength(Math.abs(mm), units)} ${side === 'right' || side === 'left' ? `to the ${side}` : side}`
}

/** Said when a drawing is left with corners standing. */
export function keptWords(count: number): string {
  return `The outline is kept with its ${count === 1 ? 'one corner' : `${count} corners`}: Draw room goes on with it.`
}
