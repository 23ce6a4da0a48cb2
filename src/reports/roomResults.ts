import type { SchemeResult } from '#analysis/results.ts'
import type { Room } from '#analysis/room.ts'

/** One room and what was computed for it, a result a scheme. */
export interface RoomResults {
  readonly room: Room
  readonly results: readonly SchemeResult[]
}

/** What the user called a thing; its id where the room does not know it. */
export function nameIn(things: readonly { readonly id: string; readonly name: string }[], id: string): string {
  return things.find((thing) => thing.id === id)?.name ?? id
}

/** "Wall 1 and Wall 2": how a corner is told by its walls. */
export function wallLabels(room: Room, wallIds: readonly string[]): string {
  return wallIds.map((id) => `Wall ${room.walls.findIndex((wall) => wall.id === id) + 1}`).join(' and ')
}
