import { type Frame, toTarget } from '#drawing/frame.ts'
import type { Box, Place } from '#drawing/model.ts'
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

/** Something of the box round places may be seen in a view; without a view everything is. */
export function isSeen(view: Box | undefined, places: readonly Place[], beyond = 0): boolean {
  if (!view) return true
  let [left, top] = [Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY]
  let [right, bottom] = [Number.NEGATIVE_INFINITY, Number.NEGATIVE_INFINITY]
  for (const [x, y] of places) {
    left = Math.min(left, x)
    right = Math.max(right, x)
    top = Math.min(top, y)
    bottom = Math.max(bottom, y)
  }
  return (
    left - beyond < view.x + view.width &&
    right + beyond > view.x &&
    top - beyond < view.y + view.height &&
    bottom + beyond > view.y
  )
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

/** Rows a ring's sides are sorted into: of a ring of hundreds only a few are then looked at. */
const ROWS = 64

/** The same question for one ring again and again. */
export function insideTest(ring: readonly Place[]): (place: Place) => boolean {
  const ys = ring.map(([, y]) => y)
  const [top, bottom] = [Math.min(...ys), Math.max(...ys)]
  const rowOf = (y: number): number => Math.min(ROWS - 1, Math.floor(((y - top) / (bottom - top)) * ROWS))
  if (!(bottom > top)) return () => false
  const rows = Array.from({ length: ROWS }, (): number[] => [])
  ring.forEach(([, y1], index) => {
    const y2 = ring[(index + 1) % ring.length]![1]
    for (let row = rowOf(Math.min(y1, y2)); row <= rowOf(Math.max(y1, y2)); row++) rows[row]!.push(index)
  })
  return ([x, y]) => {
    if (y < top || y > bottom) return false
    let inside = false
    for (const index of rows[rowOf(y)]!) {
      const [x1, y1] = ring[index]!
      const [x2, y2] = ring[(index + 1) % ring.length]!
      if (y1 > y !== y2 > y && x < x1 + ((y - y1) / (y2 - y1)) * (x2 - x1)) inside = !inside
    }
    return inside
  }
}
