import type { AnalysisInput } from '#analysis/analyse.ts'
import type { SchemeResult } from '#analysis/results.ts'
import { areaWithin } from '#geometry/convex.ts'
import { outlineArea } from '#geometry/outline.ts'
import type { Point, Polygon, Ring } from '#geometry/polygon.ts'

/** Shapes that share less than this only touch, mm2. */
const TOUCH_MM2 = 200

/** A shape of the plan with the name it has in a sentence. */
export interface Named {
  readonly name: string
  readonly shapes: readonly Pick<Polygon, 'outline' | 'holes'>[]
}

/** What nothing can stand in: linings by wall, and obstacles with theirs. */
export function solidThings(
  { room }: Pick<AnalysisInput, 'room'>,
  { inset, surfaces }: Pick<SchemeResult, 'inset' | 'surfaces'>,
): readonly Named[] {
  const walls = room.walls.map(({ id }, index): Named => {
    const label = surfaces.find((surface) => surface.id === id)?.label ?? `Wall ${index + 1}`
    return { name: `${label}'s lining`, shapes: inset.strips.filter(({ wall }) => wall === index) }
  })
  let edge = room.walls.length
  const obstacles = room.obstacles.map(({ name, corners }): Named => {
    const [first, end] = [edge, edge + corners.length]
    edge = end
    const outline = corners.map(({ xMm, yMm }): Point => [xMm, yMm])
    return {
      name,
      shapes: [{ outline, holes: [] }, ...inset.strips.filter(({ wall }) => wall >= first && wall < end)],
    }
  })
  return [...walls, ...obstacles]
}

/** What leaves that open into the room pass over. */
export function inwardSweeps(
  { room }: Pick<AnalysisInput, 'room'>,
  { openings }: Pick<SchemeResult, 'openings'>,
): readonly Named[] {
  return room.openings.flatMap(({ id, name }): Named[] => {
    const leaves = openings.find((check) => check.id === id)?.door?.leaves ?? []
    const inward = leaves.filter(({ swing }) => swing === 'in')
    if (inward.length === 0) return []
    return [{ name, shapes: inward.map(({ sweep }) => ({ outline: sweep, holes: [] })) }]
  })
}

/** Names of what a convex ring shares more than a touch with. */
export function met(ring: Ring, named: readonly Named[]): string[] {
  return named.filter(({ shapes }) => areaWithin(ring, shapes) > TOUCH_MM2).map(({ name }) => name)
}

/** Whether all of a convex ring lies in the clear room. */
export function isInClear(ring: Ring, { clear }: Pick<SchemeResult, 'clear'>): boolean {
  return Math.abs(outlineArea(ring)) - areaWithin(ring, clear) <= TOUCH_MM2
}
