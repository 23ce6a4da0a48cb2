import type { Room } from '#analysis/room.ts'
import { boundingBox } from '#geometry/outline.ts'
import type { Point, Ring } from '#geometry/polygon.ts'
import type { DrawTarget } from '#ui/canvas/drawStore.ts'
import type { Millimetres } from '#units/quantity.ts'

/** Free floor between the rooms there are and one typed beside them: our choice, room for two walls and a dimension. */
const BESIDE_MM: Millimetres = 1000

/** Where the first corner of a typed outline stands: beside the other rooms for a further one, else at the plan's origin. */
export function firstCorner(target: DrawTarget, rooms: readonly Room[]): Point {
  if (target.kind !== 'another-room') return [0, 0]
  const box = boundingBox(rooms.flatMap((room) => [...outlineOf(room)]))
  return box ? [box.maxX + BESIDE_MM, box.minY] : [0, 0]
}

/** Outlines that an outline being drawn can hold on to. */
export function standingOutlines(target: DrawTarget, rooms: readonly Room[]): readonly Ring[] {
  return target.kind === 'new-project' ? [] : rooms.map(outlineOf)
}

/** A corner of a room that stands, as a place to begin a further one. */
export interface StandingCorner {
  readonly id: string
  readonly name: string
  readonly at: Point
}

/** Every corner of every room, named as its table names it: Garage, corner 2. */
export function standingCorners(rooms: readonly Room[]): readonly StandingCorner[] {
  return rooms.flatMap((room) =>
    room.corners.map(({ id, xMm, yMm }, index) => ({
      id: `${room.id} ${id}`,
      name: `${room.name}, corner ${index + 1}`,
      at: [xMm, yMm] as const,
    })),
  )
}

function outlineOf(room: Room): Ring {
  return room.corners.map(({ xMm, yMm }) => [xMm, yMm] as const)
}
