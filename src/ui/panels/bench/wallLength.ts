import type { Room } from '#analysis/room.ts'
import type { Millimetres } from '#units/quantity.ts'

/** Length of a wall as drawn; 0 for what is no wall. */
export function wallLength(room: Room, wallId: string): Millimetres {
  const index = room.walls.findIndex(({ id }) => id === wallId)
  const from = room.corners[index]
  const to = room.corners[(index + 1) % room.corners.length]
  return from && to ? Math.hypot(to.xMm - from.xMm, to.yMm - from.yMm) : 0
}

/** Numbers of the corners a wall runs between, as they are called on the page: wall 1 runs from corner 1 to corner 2. */
export function wallEnds(room: Room, wallId: string): readonly [first: number, second: number] {
  const index = room.walls.findIndex(({ id }) => id === wallId)
  return [index + 1, ((index + 1) % room.corners.length) + 1]
}
