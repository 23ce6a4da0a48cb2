import type { Corner, SurfaceFacts, Wall } from '#analysis/room.ts'
import { outlineArea } from '#geometry/outline.ts'
import type { Point, Ring } from '#geometry/polygon.ts'

/** What a surface says about itself until the user says better: the commonest case. */
export const NEW_SURFACE: Omit<SurfaceFacts, 'id'> = {
  existing: 'stud-2x4-osb-siding',
  farSide: 'outdoors',
  measuredTo: 'finished-face',
  lining: { thicknessMm: 12.7, neededForFire: 'unknown' },
  outOfTrueMm: 0,
}
export const NEW_CEILING: Omit<SurfaceFacts, 'id'> = {
  ...NEW_SURFACE,
  existing: 'joist-2x10-subfloor',
  farSide: 'own-house',
}
export const NEW_FLOOR: Omit<SurfaceFacts, 'id'> = {
  existing: 'slab-on-ground',
  farSide: 'soil',
  measuredTo: 'structure',
  lining: null,
  outOfTrueMm: 0,
}

/** Corners closer than this are one: what is left of a survey that came back to where it began, mm. */
export const SAME_CORNER_MM = 1

/** Points as they were drawn, as a ring that runs counter-clockwise. */
export function drawnRing(points: readonly Point[]): Ring {
  const given = withoutRepeats(points)
  return outlineArea(given) < 0 ? [...given].reverse() : given
}

/** Without a corner that repeats the one before it, the last one that returns to the first among them. */
function withoutRepeats(points: readonly Point[]): Ring {
  return points.filter(([x, y], i) => {
    const [nextX, nextY] = points[(i + 1) % points.length] ?? [x, y]
    return i === 0 || Math.hypot(nextX - x, nextY - y) >= SAME_CORNER_MM
  })
}

/** New corners and walls for a ring, every wall with the same facts. */
export function outlineFrom(
  ring: Ring,
  facts: Omit<SurfaceFacts, 'id'>,
  give: (prefix: string) => string,
): { readonly corners: readonly Corner[]; readonly walls: readonly Wall[] } {
  const { existing, farSide, measuredTo, lining } = facts
  const corners = ring.map(([xMm, yMm]): Corner => ({ id: give('corner'), xMm, yMm }))
  const walls = corners.map((corner, i): Wall => {
    const to = corners[(i + 1) % corners.length]?.id ?? corner.id
    return { existing, farSide, measuredTo, lining, outOfTrueMm: 0, id: give('wall'), from: corner.id, to }
  })
  return { corners, walls }
}
