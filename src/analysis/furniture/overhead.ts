import { bothLengths } from '#analysis/cautions/words.ts'
import { planeAt } from '#analysis/heights/plane.ts'
import type { HeightField, HeightPatch, Note } from '#analysis/results.ts'
import type { Furniture, Room } from '#analysis/room.ts'
import { intersection } from '#geometry/clip.ts'
import { areaWithin } from '#geometry/convex.ts'
import type { Ring } from '#geometry/polygon.ts'
import type { Millimetres } from '#units/quantity.ts'

/** Parts of a footprint under less than this are rounding, mm2. */
const TOUCH_MM2 = 200

/** Sentences where a ceiling or a drop hangs lower than a piece is high. */
export function lowProblems(
  piece: Pick<Furniture, 'name' | 'heightMm'>,
  footprint: Ring,
  { drops }: Room,
  { patches }: HeightField,
): readonly Note[] {
  const lowest = new Map<string, Millimetres>()
  for (const patch of patches) {
    const over = leastHeightOver(footprint, patch)
    if (over === null || over >= piece.heightMm - 0.5) continue
    const name = drops.find(({ id }) => id === patch.drop)?.name ?? 'The ceiling'
    lowest.set(name, Math.min(over, lowest.get(name) ?? over))
  }
  return [...lowest].map(([name, over]) => ({
    code: 'furniture-too-high',
    text: `${name} leaves ${bothLengths(over)} where ${piece.name} stands, which is ${bothLengths(piece.heightMm)} high: move it to where the room is higher.`,
  }))
}

/** Least height of a patch over a footprint; null where they share nothing. A plane is lowest at a corner. */
export function leastHeightOver(footprint: Ring, { plan, plane }: HeightPatch): Millimetres | null {
  if (areaWithin(footprint, plan) < TOUCH_MM2) return null
  const shared = intersection(plan, [{ outline: footprint, holes: [] }])
  const corners = shared.flatMap(({ outline, holes }) => [outline, ...holes].flat())
  return corners.length > 0 ? Math.min(...corners.map((corner) => planeAt(plane, corner))) : null
}
