import type { Plane } from '#analysis/results.ts'
import { difference, intersection } from '#geometry/clip.ts'
import { boundingBox } from '#geometry/outline.ts'
import type { Point, Polygon } from '#geometry/polygon.ts'

/** Part of a plan under one ceiling; null: under what is no part. */
export interface Region {
  readonly plan: readonly Polygon[]
  readonly ceiling: Plane
  readonly part: string | null
}

/** A ceiling over a shape of the plan. */
export interface Roof {
  readonly id: string
  readonly plan: readonly Polygon[]
  readonly ceiling: Plane
}

/** Cuts a plan into what lies under each part and what lies under none; of parts that overlap the later one counts. */
export function regionsOf(plan: readonly Polygon[], ceiling: Plane, parts: readonly Roof[]): readonly Region[] {
  const regions: Region[] = []
  let rest = plan
  for (const part of parts.toReversed()) {
    if (!mayMeet(rest, part.plan)) continue
    const under = intersection(rest, part.plan)
    if (under.length === 0) continue
    regions.push({ plan: under, ceiling: part.ceiling, part: part.id })
    rest = difference(rest, part.plan)
  }
  return rest.length > 0 ? [...regions, { plan: rest, ceiling, part: null }] : regions
}

/** Whether the boxes round two plans overlap: asked before anything is cut. */
export function mayMeet(one: readonly Polygon[], other: readonly Polygon[]): boolean {
  const corners = (plan: readonly Polygon[]): Point[] => plan.flatMap(({ outline }) => [...outline])
  const [a, b] = [boundingBox(corners(one)), boundingBox(corners(other))]
  return a !== null && b !== null && a.minX < b.maxX && b.minX < a.maxX && a.minY < b.maxY && b.minY < a.maxY
}
