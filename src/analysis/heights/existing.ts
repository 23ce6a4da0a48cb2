import type { Between } from '#analysis/heights/along.ts'
import { outlineOf } from '#analysis/heights/faces.ts'
import type { RoomLevels } from '#analysis/heights/levels.ts'
import { leastOver, volumeUnder } from '#analysis/heights/measure.ts'
import { planeOver, steepness } from '#analysis/heights/plane.ts'
import { regionsOf } from '#analysis/heights/regions.ts'
import { existingRoofs } from '#analysis/heights/risers.ts'
import type { Room } from '#analysis/room.ts'
import { areaOf } from '#geometry/clip.ts'
import { isCounterClockwise, outlineArea } from '#geometry/outline.ts'
import type { Polygon } from '#geometry/polygon.ts'
import type { Millimetres, SquareMetres } from '#units/quantity.ts'

/** The room as it stands, over its whole outline; drops and obstacles are not taken off. */
export interface ExistingSpace {
  readonly lowestMm: Millimetres
  readonly volumeMm3: number
  /** Area of the ceiling and of the floor themselves, which on a slope is more than the plan's. */
  readonly ceilingM2: SquareMetres
  readonly floorM2: SquareMetres
  readonly between: Between
}

export function existingSpace(room: Room, levels: RoomLevels): ExistingSpace {
  const plan = [outlineShape(room)]
  const parts = existingRoofs(levels)
  const regions = regionsOf(plan, levels.ceiling, parts)
  const shapes = regions.map((region) => ({ plan: region.plan, plane: planeOver(region.ceiling, levels.floor) }))
  return {
    lowestMm: leastOver(shapes)?.heightMm ?? 0,
    volumeMm3: shapes.reduce((sum, shape) => sum + volumeUnder(shape), 0),
    ceilingM2: regions.reduce((sum, region) => sum + areaOf(region.plan) * steepness(region.ceiling), 0) / 1e6,
    floorM2: (areaOf(plan) * steepness(levels.floor)) / 1e6,
    between: { floor: levels.floor, ceiling: levels.ceiling, parts },
  }
}

function outlineShape(room: Room): Polygon {
  const outline = outlineOf(room)
  const ring = isCounterClockwise(outline) ? outline : outline.toReversed()
  return { outline: ring, holes: [], areaMm2: outlineArea(ring) }
}
