import type { Room } from '#analysis/room.ts'
import type { Millimetres } from '#units/quantity.ts'

/** Length of a wall as drawn; 0 for what is no wall. */
export function wallLength(room: Room, wallId: string): Millimetres {
  const index = room.walls.findIndex(({ id }) => id === wallId)
  const from = room.corners[index]
  const to = room.corners[(index + 1) % room.corners.length]
  return from && to ? Math.hypot(to.xMm - from.xMm, to.yMm - from.yMm) : 0
}
