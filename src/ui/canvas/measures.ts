import type { Point, Polygon, Ring } from '#geometry/polygon.ts'
import { footOnSegment } from '#ui/canvas/nearest.ts'
import { distance } from '#ui/canvas/snap.ts'
import type { Edge } from '#ui/canvas/snapShape.ts'
import { placeOnWall, type WallRun } from '#ui/canvas/thingShapes.ts'
import type { Millimetres } from '#units/quantity.ts'

/** A distance shown while something is in the hand. */
export interface Measure {
  readonly from: Point
  readonly to: Point
  readonly lengthMm: Millimetres
}

/** From an opening's ends to the ends of its wall. */
export function openingMeasures(run: WallRun, fromMm: Millimetres, widthMm: Millimetres): readonly Measure[] {
  const toMm = fromMm + widthMm
  return [
    { from: run.from, to: placeOnWall(run, fromMm), lengthMm: fromMm },
    { from: placeOnWall(run, toMm), to: run.to, lengthMm: Math.max(0, run.length - toMm) },
  ]
}

/** From a thing to the two nearest edges that are not parallel. */
export function ringMeasures(ring: Ring, edges: readonly Edge[]): readonly Measure[] {
  const places = ring.length < 2 ? ring : ring.flatMap((at, i) => [middle(at, ring[(i + 1) % ring.length] ?? at), at])
  const ways = edges.map((edge) => nearestWay(places, edge)).sort((a, b) => a.lengthMm - b.lengthMm)
  const [one] = ways
  if (!one) return []
  const two = ways.find((way) => Math.abs(crossing(way.edge, one.edge)) > 0.2)
  return [one, ...(two ? [two] : [])].map(({ from, to, lengthMm }) => ({ from, to, lengthMm }))
}

interface Way extends Measure {
  readonly edge: Edge
}

function nearestWay(places: readonly Point[], edge: Edge): Way {
  let best: Way | null = null
  for (const from of places) {
    const to = footOnSegment(from, ...edge)
    const lengthMm = distance(from, to)
    if (best === null || lengthMm < best.lengthMm - 0.5) best = { from, to, lengthMm, edge }
  }
  return best ?? { from: edge[0], to: edge[0], lengthMm: Number.POSITIVE_INFINITY, edge }
}

export function ringEdges(ring: Ring): readonly Edge[] {
  return ring.map((from, i): Edge => [from, ring[(i + 1) % ring.length] ?? from])
}

/** Every face of the clear room. */
export function polygonEdges(parts: readonly Polygon[]): readonly Edge[] {
  return parts.flatMap(({ outline, holes }) => [outline, ...holes].flatMap(ringEdges))
}

function middle(a: Point, b: Point): Point {
  return [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2]
}

/** Sine of the angle between two edges. */
function crossing(a: Edge, b: Edge): number {
  const [u, v] = [a, b].map(([from, to]): Point => [to[0] - from[0], to[1] - from[1]])
  if (!u || !v) return 0
  return (u[0] * v[1] - u[1] * v[0]) / Math.max(1e-9, Math.hypot(...u) * Math.hypot(...v))
}
