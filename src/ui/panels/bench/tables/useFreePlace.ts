import { centroid, largestCircle } from '#geometry/outline.ts'
import type { Point } from '#geometry/polygon.ts'
import { useAnalysis, useRoom } from '#ui/session.ts'

/** Where a new thing has most room: the middle of the largest circle on the clear floor; worked out when asked. */
export function useFreePlace(): () => Point {
  const analysis = useAnalysis()
  const room = useRoom()
  return () => {
    const largest = analysis.ok ? analysis.value.clear[0] : undefined
    if (largest) {
      const [x, y] = largestCircle(largest).centre
      return [Math.round(x), Math.round(y)]
    }
    return centroid(room.corners.map(({ xMm, yMm }): Point => [xMm, yMm])) ?? [0, 0]
  }
}
