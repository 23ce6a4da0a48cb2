import type { InnerEdge, Inset } from '#geometry/inset/insetRoom.ts'
import type { Point, Polygon } from '#geometry/polygon.ts'

/** Summed area of the clear parts, mm2. */
export function clearArea(inset: Inset): number {
  return inset.clear.reduce((sum, part) => sum + part.areaMm2, 0)
}

export function lengthOf({ from, to }: Pick<InnerEdge, 'from' | 'to'>): number {
  return Math.hypot(to[0] - from[0], to[1] - from[1])
}

export function perimeterOf(ring: readonly Point[]): number {
  return ring.reduce((sum, from, k) => sum + lengthOf({ from, to: ring[(k + 1) % ring.length]! }), 0)
}

/** Area by the shoelace formula, net of holes, mm2: positive if the directions are as promised. */
export function shoelace({ outline, holes }: Pick<Polygon, 'outline' | 'holes'>): number {
  return [outline, ...holes].reduce((sum, ring) => {
    const doubled = ring.reduce((part, [x, y], k) => {
      const [nextX, nextY] = ring[(k + 1) % ring.length]!
      return part + x * nextY - y * nextX
    }, 0)
    return sum + doubled / 2
  }, 0)
}

/** The same data, deep-frozen: nothing may write into what it is given. */
export function frozen<Data>(data: Data): Data {
  if (typeof data === 'object' && data !== null && !Object.isFrozen(data)) {
    Object.freeze(data)
    for (const value of Object.values(data)) frozen(value)
  }
  return data
}

export function rectangleRing(x: number, y: number, width: number, height: number): Point[] {
  return [
    [x, y],
    [x + width, y],
    [x + width, y + height],
    [x, y + height],
  ]
}
