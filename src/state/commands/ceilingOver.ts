import { type RoomLevels, roomLevels } from '#analysis/heights/levels.ts'
import { planeAt } from '#analysis/heights/plane.ts'
import { ceilingAt } from '#analysis/heights/risers.ts'
import type { PlanPoint, Room } from '#analysis/room.ts'
import type { Point } from '#geometry/polygon.ts'
import { ringOf } from '#state/commands/rings.ts'
import type { Millimetres } from '#units/quantity.ts'

/** Existing height from floor to ceiling at a place; null while nothing was measured. */
export function heightAt(room: Room, place: Point): Millimetres | null {
  return heightsAt(room, [place])[0] ?? null
}

/** Level of the floor over the datum at a place, read from what was measured; null while nothing was. */
export function floorLevelAt(room: Room, place: Point): Millimetres | null {
  return room.heights.length === 0 ? null : planeAt(roomLevels(room).floor, place)
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
  const heights = heightsAt(room, [at(startMm), at((startMm + endMm) / 2), at(endMm)])
  return heights.length === 0 ? null : Math.min(...heights)
}

/** Highest existing height over a footprint; null while nothing was measured. */
export function highestCeilingOver(room: Room, corners: readonly PlanPoint[]): Millimetres | null {
  const heights = heightsAt(room, ringOf(corners))
  return heights.length === 0 ? null : Math.max(...heights)
}

function heightsAt(room: Room, places: readonly Point[]): readonly Millimetres[] {
  if (room.heights.length === 0) return []
  const levels: RoomLevels = roomLevels(room)
  return places.map((place) => planeAt(ceilingAt(levels, place), place) - planeAt(levels.floor, place))
}
