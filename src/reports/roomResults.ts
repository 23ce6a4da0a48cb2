import type { SchemeResult } from '#analysis/results.ts'
import type { Room } from '#analysis/room.ts'
import type { SchemeHeard } from '#reports/heard.ts'

/** One room and what was computed for it, a result a scheme. */
export interface RoomResults {
  readonly room: Room
  readonly results: readonly SchemeResult[]
  /** What is heard from it, in the order of the results; absent: nobody asked. */
  readonly heard?: readonly SchemeHeard[] | undefined
}

/** What is heard under one result. */
export function heardIn({ heard }: RoomResults, index: number): SchemeHeard | null {
  return heard?.[index] ?? null
}

/** What the user called a thing; its id where the room does not know it. */
export function nameIn(things: readonly { readonly id: string; readonly name: string }[], id: string): string {
  return things.find((thing) => thing.id === id)?.name ?? id
}

/** "Wall 1 and Wall 2": how a corner is told by its walls. */
export function wallLabels(room: Room, wallIds: readonly string[]): string {
  return wallIds.map((id) => `Wall ${room.walls.findIndex((wall) => wall.id === id) + 1}`).join(' and ')
}
