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

function outlineOf(room: Room): Ring {
  return room.corners.map(({ xMm, yMm }) => [xMm, yMm] as const)
}
