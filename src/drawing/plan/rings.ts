import { type Frame, toTarget } from '#drawing/frame.ts'
import type { Place } from '#drawing/model.ts'
import type { Point, Polygon } from '#geometry/polygon.ts'

/** A floor shape's rings on the target: outer ring, then holes. */
export function polygonRings(frame: Frame, polygon: Polygon): Place[][] {
  return [polygon.outline, ...polygon.holes].map((ring) => ring.map((point) => toTarget(frame, point)))
}

/** Corners given by xMm and yMm, as plan points. */
export function planPoints(corners: readonly { readonly xMm: number; readonly yMm: number }[]): Point[] {
  return corners.map(({ xMm, yMm }): Point => [xMm, yMm])
}

/** x, y, x, y ... of places in turn. */
export function flatRun(places: readonly Place[]): number[] {
  return places.flat()
}

/** Middle of the box round places. */
export function middleOf(places: readonly Place[]): Place {
  const xs = places.map(([x]) => x)
  const ys = places.map(([, y]) => y)
  return [(Math.min(...xs) + Math.max(...xs)) / 2, (Math.min(...ys) + Math.max(...ys)) / 2]
}

/** A place lies inside a ring, by counting the sides it looks past. */
export function isInside(ring: readonly Place[], [x, y]: Place): boolean {
  let inside = false
  ring.forEach(([x1, y1], index) => {
    const [x2, y2] = ring[(index + 1) % ring.length]!
    if (y1 > y !== y2 > y && x < x1 + ((y - y1) / (y2 - y1)) * (x2 - x1)) inside = !inside
  })
  return inside
}
