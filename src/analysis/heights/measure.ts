import { levelPlane, planeAt, planeOver } from '#analysis/heights/plane.ts'
import type { Plane } from '#analysis/results.ts'
import { centroid, outlineArea, perimeter } from '#geometry/outline.ts'
import type { Point, Polygon, Ring } from '#geometry/polygon.ts'
import type { Millimetres } from '#units/quantity.ts'

/** A shape of the plan and the plane over it. */
export interface UnderPlane {
  readonly plan: readonly Polygon[]
  readonly plane: Plane
}

/** Heights this near are the same one, mm. */
const SAME_HEIGHT_MM = 1e-6
/** A shape this much thinner than it is long is rounding between two shapes that touch, mm. */
const CRUMB_MM = 0.05

/**
 * What of a ring lies where the plane is at least at 0. Where it falls apart the pieces stay joined along the line of
 * the cut by sides that run there and back, so areas and integrals are exact, but it is no outline to draw.
 */
export function cutAtZero(ring: Ring, plane: Plane): Point[] {
  return ring.flatMap((from, k): Point[] => {
    const to = ring[(k + 1) % ring.length]!
    const [a, b] = [planeAt(plane, from), planeAt(plane, to)]
    const kept = a >= 0 ? [from] : []
    if (a >= 0 === b >= 0) return kept
    const share = a / (a - b)
    return [...kept, [from[0] + share * (to[0] - from[0]), from[1] + share * (to[1] - from[1])]]
  })
}

function ringsOf({ outline, holes }: Polygon): readonly Ring[] {
  return [outline, ...holes]
}

/** The rings of a shape where the plane is at least at 0; outlines count positive, holes negative by their direction. */
function ringsAbove({ plan, plane }: UnderPlane): readonly Ring[] {
  return plan.flatMap(ringsOf).map((ring) => {
    const isWhole = ring.every((point) => planeAt(plane, point) >= -SAME_HEIGHT_MM)
    return isWhole ? ring : cutAtZero(ring, plane)
  })
}

/** Volume between a shape and the plane over it, mm3, exact: area times height at its centroid; nothing below 0 counts. */
export function volumeUnder(shape: UnderPlane): number {
  return ringsAbove(shape).reduce((sum, ring) => {
    const middle = centroid(ring)
    return middle ? sum + outlineArea(ring) * planeAt(shape.plane, middle) : sum
  }, 0)
}

/** Area of a shape that has at least this height over it, mm2. */
export function areaUnder({ plan, plane }: UnderPlane, heightMm: Millimetres): number {
  const above = ringsAbove({ plan, plane: planeOver(plane, levelPlane(heightMm)) })
  return above.reduce((sum, ring) => sum + outlineArea(ring), 0)
}

/** A least height and where it is. */
export interface Least<Shape> {
  readonly heightMm: Millimetres
  readonly at: Point
  readonly shape: Shape
}

/** The least height over shapes, at one of their corners, and never below 0; null where there is no shape. */
export function leastOver<Shape extends UnderPlane>(shapes: readonly Shape[]): Least<Shape> | null {
  return leastOf(shapes, isCrumb) ?? leastOf(shapes, () => false)
}

function leastOf<Shape extends UnderPlane>(
  shapes: readonly Shape[],
  isLeftOut: (polygon: Polygon) => boolean,
): Least<Shape> | null {
  let least: Least<Shape> | null = null
  for (const shape of shapes) {
    for (const polygon of shape.plan) {
      if (isLeftOut(polygon)) continue
      for (const at of ringsOf(polygon).flat()) {
        const heightMm = Math.max(0, planeAt(shape.plane, at))
        if (least === null || heightMm < least.heightMm) least = { heightMm, at, shape }
      }
    }
  }
  return least
}

function isCrumb({ outline, areaMm2 }: Polygon): boolean {
  return 2 * areaMm2 < CRUMB_MM * perimeter(outline)
}
