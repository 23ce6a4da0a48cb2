import type { HeightPoint, PlanPoint, Room } from '#analysis/room.ts'
import { contains } from '#geometry/outline.ts'
import type { Point } from '#geometry/polygon.ts'
import { ringOf } from '#state/commands/rings.ts'
import type { Millimetres } from '#units/quantity.ts'

/** Existing height from floor to ceiling at a place; null while nothing was measured. */
export function ceilingAt(room: Room, [x, y]: Point): Millimetres | null {
  const part = room.ceilingParts.findLast(({ corners }) => contains(ringOf(corners), [x, y]))
  return highest(part?.heights ?? room.heights)
}

/** Lowest existing height along a stretch of a wall; null while nothing was measured. */
export function lowestCeilingAlong(
  room: Room,
  from: PlanPoint,
  to: PlanPoint,
  startMm: Millimetres,
  endMm: Millimetres,
): Millimetres | null {
  const length = Math.hypot(to.xMm - from.xMm, to.yMm - from.yMm)
  const at = (mm: Millimetres): Point => [
    from.xMm + ((to.xMm - from.xMm) * mm) / length,
    from.yMm + ((to.yMm - from.yMm) * mm) / length,
  ]
  const heights = [startMm, (startMm + endMm) / 2, endMm].map((mm) => ceilingAt(room, at(mm)))
  return heights.reduce((least, height) => (least === null || height === null ? null : Math.min(least, height)))
}

/** Highest existing height over a footprint; null while nothing was measured. */
export function highestCeilingOver(room: Room, corners: readonly PlanPoint[]): Millimetres | null {
  const heights = ringOf(corners).map((point) => ceilingAt(room, point))
  return heights.reduce((most, height) => (most === null || height === null ? null : Math.max(most, height)))
}

function highest(heights: readonly HeightPoint[]): Millimetres | null {
  return heights.length === 0 ? null : Math.max(...heights.map((point) => point.heightMm))
}
