import { contains, type OutlineEdge, outlineEdges } from '#geometry/outline.ts'
import type { Point, Polygon } from '#geometry/polygon.ts'
import type { Millimetres } from '#units/quantity.ts'

/** The narrowest place of a shape: how wide it is, and the line across it. */
export interface Narrowest {
  readonly widthMm: Millimetres
  readonly from: Point
  readonly to: Point
}

/** Faces turned further from each other than this do not face each other: the cosine of 120 degrees. */
const FACING = -0.5

/** Overlaps shorter than this are a corner's touch and no width, mm. */
const LEAST_OVERLAP_MM = 1

/**
 * The narrowest clear width of a shape: the shortest line across it between two sides that face each other, or between
 * corners and sides that stand out into it. A neck between two parts always counts, a niche where it is so deep that half a
 * disc of its width goes in. Of a shape without facing sides (a triangle) it is the least of its heights; null where it
 * has no width at all.
 */
export function narrowestWidth(shape: Pick<Polygon, 'outline' | 'holes'>): Narrowest | null {
  const rings = [shape.outline, ...shape.holes].map((ring) => outlineEdges(ring))
  const edges = rings.flat()
  const isClear = (line: Narrowest) => isWithin(shape, middleOf(line)) && edges.every((edge) => !crosses(edge, line))
  const isOpen = (point: Point) => isWithin(shape, point)
  let best: Narrowest | null = null
  for (const line of candidates(rings, isOpen)) {
    if (line.widthMm > 0 && (best === null || line.widthMm < best.widthMm - 1e-6) && isClear(line)) best = line
  }
  return best ?? leastHeight(edges)
}

type IsOpen = (point: Point) => boolean

function candidates(rings: readonly (readonly OutlineEdge[])[], isOpen: IsOpen): readonly Narrowest[] {
  const edges = rings.flat()
  const found: Narrowest[] = []
  edges.forEach((first, i) => {
    for (const second of edges.slice(i + 1)) found.push(...across(first, second, isOpen))
  })
  const corners = rings.flatMap(standingOut)
  corners.forEach((corner, i) => {
    for (const edge of edges) found.push(...toSide(corner, edge))
    for (const other of corners.slice(i + 1)) found.push(...between(corner, other))
  })
  return found
}

/** The lines across where two sides face each other: in the middle of what they share, and at its ends. */
function across(first: OutlineEdge, second: OutlineEdge, isOpen: IsOpen): readonly Narrowest[] {
  const u = direction(first)
  const v = direction(second)
  if (u[0] * v[0] + u[1] * v[1] > FACING) return []
  const along = (p: Point) => (p[0] - first.from[0]) * u[0] + (p[1] - first.from[1]) * u[1]
  const low = Math.max(0, along(second.to))
  const high = Math.min(first.lengthMm, along(second.from))
  if (high - low < LEAST_OVERLAP_MM) return []
  const at = (t: number): Narrowest => {
    const share = (along(second.from) - t) / (along(second.from) - along(second.to))
    const [x, y] = second.from
    return line(
      [first.from[0] + t * u[0], first.from[1] + t * u[1]],
      [x + share * (second.to[0] - x), y + share * (second.to[1] - y)],
    )
  }
  const lines = [at((low + high) / 2), at(low), at(high)]
  const isAhead = lines.every(({ from, to }) => (to[1] - from[1]) * u[0] - (to[0] - from[0]) * u[1] > 0)
  if (!isAhead) return []
  const goesOn = ({ from, to }: Narrowest, step: number) => {
    const [x, y] = middleOf({ from, to })
    return isOpen([x + step * u[0], y + step * u[1]])
  }
  const isPassage = goesOn(at(low), -LEAST_OVERLAP_MM) && goesOn(at(high), LEAST_OVERLAP_MM)
  const narrow = Math.min(...lines.map(({ widthMm }) => widthMm))
  return isPassage || 2 * (high - low) >= narrow ? lines : []
}

interface StandingOut {
  readonly at: Point
  /** Directions away from it along its two sides. */
  readonly sides: readonly [Point, Point]
}

/** Corners that turn the other way than the shape's own: they stand out into it. */
function standingOut(edges: readonly OutlineEdge[]): readonly StandingOut[] {
  return edges.flatMap((edge, k) => {
    const before = edges.at(k - 1)
    if (!before) return []
    const u = direction(before)
    const v = direction(edge)
    return u[0] * v[1] - u[1] * v[0] < -1e-9 ? [{ at: edge.from, sides: [[-u[0], -u[1]], v] }] : []
  })
}

/** Straight to a side, where going along either of the corner's own sides leads no nearer. */
function toSide(corner: StandingOut, edge: OutlineEdge): readonly Narrowest[] {
  const u = direction(edge)
  const along = (corner.at[0] - edge.from[0]) * u[0] + (corner.at[1] - edge.from[1]) * u[1]
  if (along < 0 || along > edge.lengthMm) return []
  const foot: Point = [edge.from[0] + along * u[0], edge.from[1] + along * u[1]]
  const found = line(corner.at, foot)
  return found.widthMm > LEAST_OVERLAP_MM && pointsAway(corner, foot) ? [found] : []
}

function between(one: StandingOut, other: StandingOut): readonly Narrowest[] {
  return pointsAway(one, other.at) && pointsAway(other, one.at) ? [line(one.at, other.at)] : []
}

function pointsAway(corner: StandingOut, target: Point): boolean {
  const to: Point = [target[0] - corner.at[0], target[1] - corner.at[1]]
  const reach = Math.hypot(to[0], to[1])
  return corner.sides.every((side) => side[0] * to[0] + side[1] * to[1] < -1e-9 * reach)
}

function middleOf({ from, to }: Pick<Narrowest, 'from' | 'to'>): Point {
  return [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2]
}

function isWithin(shape: Pick<Polygon, 'outline' | 'holes'>, point: Point): boolean {
  return contains(shape.outline, point) && shape.holes.every((hole) => !contains(hole, point))
}

/** Whether a side runs right through a line; touching it at an end is not crossing. */
function crosses(edge: OutlineEdge, { from, to, widthMm }: Narrowest): boolean {
  const slack = 1e-6 * edge.lengthMm * widthMm
  const a = turn(from, to, edge.from)
  const b = turn(from, to, edge.to)
  const c = turn(edge.from, edge.to, from)
  const d = turn(edge.from, edge.to, to)
  const isSplit = (p: number, q: number) => (p > slack && q < -slack) || (p < -slack && q > slack)
  return isSplit(a, b) && isSplit(c, d)
}

function turn(a: Point, b: Point, c: Point): number {
  return (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0])
}

function direction({ from, to, lengthMm }: OutlineEdge): Point {
  return lengthMm === 0 ? [0, 0] : [(to[0] - from[0]) / lengthMm, (to[1] - from[1]) / lengthMm]
}

function line(from: Point, to: Point): Narrowest {
  return { widthMm: Math.hypot(to[0] - from[0], to[1] - from[1]), from, to }
}

/** The least distance between a side and the corner furthest from it. */
function leastHeight(edges: readonly OutlineEdge[]): Narrowest | null {
  let least: Narrowest | null = null
  for (const edge of edges) {
    if (edge.lengthMm === 0) continue
    const u = direction(edge)
    const lines = edges.map(({ from }) => {
      const along = (from[0] - edge.from[0]) * u[0] + (from[1] - edge.from[1]) * u[1]
      return line([edge.from[0] + along * u[0], edge.from[1] + along * u[1]], from)
    })
    const height = lines.reduce((one, other) => (other.widthMm > one.widthMm ? other : one))
    if (height.widthMm > 0 && (least === null || height.widthMm < least.widthMm)) least = height
  }
  return least
}
