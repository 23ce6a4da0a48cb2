import { isIn } from '#analysis/heights/along.ts'
import { type DropBox, dropBoxes } from '#analysis/heights/boxes.ts'
import type { Faces } from '#analysis/heights/faces.ts'
import { type Least, leastOver } from '#analysis/heights/measure.ts'
import { planeAt, planeOver } from '#analysis/heights/plane.ts'
import { type Region, regionsOf } from '#analysis/heights/regions.ts'
import { partAtBoxes } from '#analysis/heights/underBoxes.ts'
import type { HeightField, HeightPatch, Plane } from '#analysis/results.ts'
import type { Room } from '#analysis/room.ts'
import { intersection } from '#geometry/clip.ts'
import type { Point, Polygon } from '#geometry/polygon.ts'
import type { Millimetres } from '#units/quantity.ts'

/** The height over part of the clear plan, and the ceiling's face there. */
export interface AwayPatch {
  readonly plan: readonly Polygon[]
  readonly plane: Plane
  readonly ceiling: Plane
  readonly part: string | null
}

/** The clear heights of a scheme and what they were made of. */
export interface ClearSpace {
  readonly faces: Faces
  readonly field: HeightField
  /** Clear plan under each ceiling, drops not looked at. */
  readonly ceilings: readonly AwayPatch[]
  /** The same away from drops. */
  readonly away: readonly AwayPatch[]
  readonly boxes: readonly DropBox[]
}

/**
 * The clear height everywhere over a clear plan, as patches that do not overlap and together make it up: the ceilings
 * away from drops, then what lies under each drop.
 */
export function clearSpace(room: Room, faces: Faces, clear: readonly Polygon[]): ClearSpace {
  const regions = regionsOf(clear, faces.ceiling, faces.parts)
  const boxes = dropBoxes(faces.levels, room.drops)
  const parted = partAtBoxes(regions, boxes, faces.floor)
  const overFloor = (some: readonly Region[]): AwayPatch[] =>
    some.map((region) => ({ ...region, plane: planeOver(region.ceiling, faces.floor) }))
  const away = overFloor(parted.away)
  const patches: HeightPatch[] = away.map(({ plan, plane }) => ({ plan, plane, drop: null }))
  return {
    faces,
    field: { patches: [...patches, ...parted.under], worstMissMm: faces.levels.worstMissMm },
    ceilings: parted.under.length > 0 ? overFloor(regions) : away,
    away,
    boxes,
  }
}

/** Clear height at a place, mm: 0 where build-ups meet, null outside the clear plan. */
export function clearHeightAt(field: HeightField, point: Point): Millimetres | null {
  const patch = field.patches.find(({ plan }) => plan.some((shape) => isIn(point, shape)))
  return patch ? Math.max(0, planeAt(patch.plane, point)) : null
}

/** Where the room is lowest away from drops; where drops cover all of it, under its ceiling. */
export function lowestPlace({ away, ceilings }: ClearSpace): Least<AwayPatch> | null {
  return leastOver(away) ?? leastOver(ceilings)
}

/**
 * Least clear height under a drop: of the patches it makes; where it makes none, hidden by the ceiling or by a lower
 * drop, the least height over its box; null: it hangs over no clear floor.
 */
export function leastUnder({ field }: ClearSpace, box: DropBox): Millimetres | null {
  const own = leastOver(field.patches.filter(({ drop }) => drop === box.id))
  if (own) return own.heightMm
  const shared = field.patches.map((patch) => ({ ...patch, plan: intersection(patch.plan, box.plan) }))
  return leastOver(shared)?.heightMm ?? null
}
