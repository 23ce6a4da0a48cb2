import { planeAt, planeOver } from '#analysis/heights/plane.ts'
import type { Roof } from '#analysis/heights/regions.ts'
import type { Plane } from '#analysis/results.ts'
import { contains, outlineEdges } from '#geometry/outline.ts'
import type { Point } from '#geometry/polygon.ts'
import type { Millimetres } from '#units/quantity.ts'

/** Floor and ceilings of a room as they are asked along a line. */
export interface Between {
  readonly floor: Plane
  readonly ceiling: Plane
  readonly parts: readonly Roof[]
}

/** A wall's ceiling is looked up this far in front of it, mm: parts are often drawn along the wall itself. */
const BESIDE_MM = 1

/**
 * Mean height along a line with the room on its left, mm: the integral over the pieces under one ceiling each, over its
 * length; where a ceiling would lie below the floor it counts as 0. Drops are not counted: walls run up behind them.
 */
export function meanHeightAlong(from: Point, to: Point, between: Between): Millimetres {
  const length = Math.hypot(to[0] - from[0], to[1] - from[1])
  const { floor, ceiling, parts } = between
  const meanUnder = (roof: Plane, start: number, end: number) => {
    const over = planeOver(roof, floor)
    return meanAboveZero(planeAt(over, onLine(from, to, start)), planeAt(over, onLine(from, to, end)))
  }
  if (parts.length === 0 || length === 0) return meanUnder(ceiling, 0, 1)
  const aside: Point = [(-(to[1] - from[1]) / length) * BESIDE_MM, ((to[0] - from[0]) / length) * BESIDE_MM]
  const start: Point = [from[0] + aside[0], from[1] + aside[1]]
  const end: Point = [to[0] + aside[0], to[1] + aside[1]]
  const shares = [0, ...crossings(start, end, parts), 1].sort((a, b) => a - b)
  return shares.slice(1).reduce((total, share, k) => {
    const before = shares[k]!
    const roof = roofAt(onLine(start, end, (before + share) / 2), between)
    return total + (share - before) * meanUnder(roof, before, share)
  }, 0)
}

/** Mean of what rises or falls evenly from one value to another, what is below 0 counted as 0. */
function meanAboveZero(from: Millimetres, to: Millimetres): Millimetres {
  const [low, high] = [Math.min(from, to), Math.max(from, to)]
  if (low >= 0) return (low + high) / 2
  return high > 0 ? high ** 2 / (2 * (high - low)) : 0
}

function onLine(from: Point, to: Point, share: number): Point {
  return [from[0] + share * (to[0] - from[0]), from[1] + share * (to[1] - from[1])]
}

function roofAt(point: Point, { ceiling, parts }: Between): Plane {
  const part = parts.findLast(({ plan }) => plan.some((shape) => isIn(point, shape)))
  return part ? part.ceiling : ceiling
}

/** Whether a place lies in a shape and in none of its holes. */
export function isIn(point: Point, shape: Roof['plan'][number]): boolean {
  return contains(shape.outline, point) && !shape.holes.some((hole) => contains(hole, point))
}

/** Shares of a line at which it crosses an edge of a part. */
function crossings(from: Point, to: Point, parts: readonly Roof[]): readonly number[] {
  const side = ([x, y]: Point) => (to[0] - from[0]) * (y - from[1]) - (to[1] - from[1]) * (x - from[0])
  return parts
    .flatMap(({ plan }) => plan.flatMap(({ outline, holes }) => [outline, ...holes].flatMap(outlineEdges)))
    .flatMap((edge) => {
      const [a, b] = [side(edge.from), side(edge.to)]
      if (a > 0 === b > 0) return []
      const [x, y] = onLine(edge.from, edge.to, a / (a - b))
      const square = (to[0] - from[0]) ** 2 + (to[1] - from[1]) ** 2
      const share = ((x - from[0]) * (to[0] - from[0]) + (y - from[1]) * (to[1] - from[1])) / square
      return share > 0 && share < 1 ? [share] : []
    })
}
