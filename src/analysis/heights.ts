import type { Drop, Room } from '#analysis/room.ts'
import { areaOf, difference, intersection, union } from '#geometry/clip.ts'
import { insetRoom } from '#geometry/inset/insetRoom.ts'
import type { Point, Polygon } from '#geometry/polygon.ts'
import type { CubicMetres, Millimetres } from '#units/quantity.ts'

/** A drop as it ends up: its box in plan and the clear height under it. */
export interface BoxedDrop {
  readonly id: string
  readonly name: string
  readonly plan: readonly Polygon[]
  readonly clearHeightMm: Millimetres
}

/** The measured height of the room; where several were measured, the lowest. */
export function existingHeight(room: Room): Millimetres {
  return Math.min(...room.heights.map((point) => point.heightMm))
}

/** Mean of the measured heights: what the area of a wall is counted with. */
export function meanHeight(room: Room): Millimetres {
  return room.heights.reduce((sum, point) => sum + point.heightMm, 0) / room.heights.length
}

/** Drops with their boxing, over a floor raised by floorTakes. */
export function boxedDrops(room: Room, floorTakes: Millimetres): readonly BoxedDrop[] {
  return room.drops.map((drop) => ({
    id: drop.id,
    name: drop.name,
    plan: grown(drop),
    clearHeightMm: drop.undersideMm - drop.boxBelowMm - floorTakes,
  }))
}

/** The drop's outline moved outward by its boxing at the sides; as drawn, where its sides would run into each other. */
function grown(drop: Drop): readonly Polygon[] {
  const outline: Point[] = drop.corners.map((corner) => [corner.xMm, corner.yMm])
  const grownBy = (mm: Millimetres) => insetRoom({ outline, depthsMm: outline.map(() => -mm), obstacles: [] })
  const box = grownBy(drop.boxSidesMm)
  if (box.ok) return box.value.clear
  const bare = grownBy(0)
  return bare.ok ? bare.value.clear : []
}

/**
 * Volume of the clear room: its plan times its height, less what boxed drops take below the ceiling.
 * @param clear  clear room polygons, mm
 * @param height  clear height away from drops, mm
 */
export function clearVolume(clear: readonly Polygon[], height: Millimetres, drops: readonly BoxedDrop[]): CubicMetres {
  let mm3 = areaOf(clear) * height
  let counted: readonly Polygon[] = []
  for (const drop of [...drops].sort((a, b) => a.clearHeightMm - b.clearHeightMm)) {
    const taken = height - drop.clearHeightMm
    if (taken <= 0) continue
    const part = difference(intersection(drop.plan, clear), counted)
    mm3 -= areaOf(part) * taken
    counted = union(counted, part)
  }
  return mm3 / 1e9
}
