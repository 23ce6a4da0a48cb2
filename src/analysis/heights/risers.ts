import type { LevelPart, RoomLevels } from '#analysis/heights/levels.ts'
import { planeAt, shifted } from '#analysis/heights/plane.ts'
import type { Roof } from '#analysis/heights/regions.ts'
import type { Plane } from '#analysis/results.ts'
import { insetRoom } from '#geometry/inset/insetRoom.ts'
import { contains, isCounterClockwise, outlineEdges } from '#geometry/outline.ts'
import type { Point, Polygon } from '#geometry/polygon.ts'
import type { Millimetres } from '#units/quantity.ts'

/** How far beside an edge its neighbour is looked up, mm. */
const BESIDE_MM = 1
/** Ceilings nearer to each other than this have no riser between them, mm. */
const SAME_LEVEL_MM = 1

/** The parts as they stand, each with the shape that was drawn. */
export function existingRoofs(levels: RoomLevels): readonly Roof[] {
  return levels.parts.map((part) => ({ id: part.id, plan: shapeOf(part.ring, () => 0), ceiling: part.ceiling }))
}

/**
 * The parts under a new ceiling lining. Where a part is lower than what lies beside it all along an edge, the lining
 * stands on its riser and the part grows by the lining's thickness there; where it is higher, it shrinks by it.
 *
 * An approximation in three ways: an edge along which one ceiling crosses the other gets no riser; what lies beside an
 * edge is looked up at the edge's middle only; and the lining on a riser is counted with its full thickness square to
 * the edge, however low the riser is. Where the moved edges would run into each other the part stays as drawn.
 */
export function linedRoofs(levels: RoomLevels, outline: readonly Point[], thicknessMm: Millimetres): readonly Roof[] {
  return levels.parts.map((part) => ({
    id: part.id,
    plan: shapeOf(part.ring, (k) => (thicknessMm > 0 ? thicknessMm * riser(levels, outline, part, k) : 0)),
    ceiling: shifted(part.ceiling, -thicknessMm),
  }))
}

/** Which way the riser at an edge moves it: 1 into the part, which is higher; -1 out of it; 0: there is none. */
function riser(levels: RoomLevels, outline: readonly Point[], part: LevelPart, edge: number): -1 | 0 | 1 {
  const { from, to, lengthMm } = outlineEdges(part.ring)[edge]!
  if (lengthMm === 0) return 0
  const out = isCounterClockwise(part.ring) ? BESIDE_MM / lengthMm : -BESIDE_MM / lengthMm
  const beside: Point = [
    (from[0] + to[0]) / 2 + (to[1] - from[1]) * out,
    (from[1] + to[1]) / 2 - (to[0] - from[0]) * out,
  ]
  if (!contains(outline, beside)) return 0
  const other = ceilingAt(levels, beside, part.id)
  const steps = [from, to].map((end) => planeAt(part.ceiling, end) - planeAt(other, end))
  if (steps.every((step) => step > SAME_LEVEL_MM)) return 1
  return steps.every((step) => step < -SAME_LEVEL_MM) ? -1 : 0
}

/** The ceiling as it stands over a place, one part left out of account if it is named. */
export function ceilingAt(levels: RoomLevels, point: Point, without: string | null = null): Plane {
  const part = levels.parts.findLast(({ id, ring }) => id !== without && contains(ring, point))
  return part ? part.ceiling : levels.ceiling
}

/** A ring as a shape, each edge moved inward by its own depth; as drawn where that leaves no shape. */
function shapeOf(ring: readonly Point[], depthMm: (edge: number) => Millimetres): readonly Polygon[] {
  const moved = insetRoom({ outline: ring, depthsMm: ring.map((_, k) => depthMm(k)), obstacles: [] })
  if (moved.ok) return moved.value.clear
  const drawn = insetRoom({ outline: ring, depthsMm: ring.map(() => 0), obstacles: [] })
  return drawn.ok ? drawn.value.clear : []
}
