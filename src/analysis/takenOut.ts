import type { Obstacle, Room } from '#analysis/room.ts'
import type { Scheme } from '#analysis/scheme.ts'

/** The room without the obstacles a scheme takes out; the same room where it takes out none. */
export function roomUnder(room: Room, scheme: Scheme): Room {
  if (takenOut(room, scheme).length === 0) return room
  return { ...room, obstacles: room.obstacles.filter(({ id }) => !scheme.takenOut?.includes(id)) }
}

/** The obstacles of a room that a scheme takes out. */
export function takenOut(room: Room, scheme: Scheme): readonly Obstacle[] {
  return room.obstacles.filter(({ id }) => scheme.takenOut?.includes(id))
}
