import type { Point } from '#geometry/polygon.ts'

/** Whether a point lies inside a ring, by counting sides east of it. */
export function contains(ring: readonly Point[], [x, y]: Point): boolean {
  let inside = false
  ring.forEach(([ax, ay], k) => {
    const [bx, by] = ring[(k + 1) % ring.length]!
    if (ay > y !== by > y && x < ax + ((y - ay) / (by - ay)) * (bx - ax)) inside = !inside
  })
  return inside
}

/** Distance from a point to the nearest side of a ring. */
export function distanceToRing(ring: readonly Point[], [x, y]: Point): number {
  const distances = ring.map(([ax, ay], k) => {
    const [bx, by] = ring[(k + 1) % ring.length]!
    const square = (bx - ax) ** 2 + (by - ay) ** 2
    const along = square === 0 ? 0 : Math.max(0, Math.min(1, ((x - ax) * (bx - ax) + (y - ay) * (by - ay)) / square))
    return Math.hypot(x - ax - along * (bx - ax), y - ay - along * (by - ay))
  })
  return Math.min(...distances)
}
