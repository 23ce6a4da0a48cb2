import { difference } from '#geometry/clip.ts'
import { type Circle, centroid, isCounterClockwise, largestCircle, outlineArea } from '#geometry/outline.ts'
import type { Point, Polygon } from '#geometry/polygon.ts'
import { useAnalysis, useRoom, useShownProject } from '#ui/session.ts'
import type { LengthUnit, Millimetres } from '#units/quantity.ts'

/** Places offered lie on round numbers, mm: whole inches or centimetres. */
const ROUND_MM: Readonly<Record<LengthUnit, Millimetres>> = { 'ft-in': 25.4, mm: 10 }

/** Where a new thing has most room: the middle of the largest circle on the clear floor beside the furniture; worked out when asked. */
export function useFreePlace(): () => Point {
  const analysis = useAnalysis()
  const room = useRoom()
  const { units } = useShownProject()
  return () => {
    const free = analysis.ok
      ? difference(
          analysis.value.clear,
          analysis.value.furniture.map(({ footprint }) => shapeOf(footprint)),
        )
      : []
    const largest = free.map(largestCircle).reduce<Circle | null>(larger, null)
    const [x, y] = largest?.centre ?? centroid(room.corners.map(({ xMm, yMm }): Point => [xMm, yMm])) ?? [0, 0]
    const step = ROUND_MM[units]
    return [Math.round(x / step) * step, Math.round(y / step) * step]
  }
}

function shapeOf(footprint: readonly Point[]): Polygon {
  const outline = isCounterClockwise(footprint) ? footprint : footprint.toReversed()
  return { outline, holes: [], areaMm2: outlineArea(outline) }
}

function larger(one: Circle | null, other: Circle): Circle {
  return one !== null && one.radiusMm >= other.radiusMm ? one : other
}
