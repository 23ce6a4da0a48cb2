import { type Grid, toPoint } from '#geometry/grid.ts'
import type { SourceWall } from '#geometry/inset/gridRing.ts'
import { CLEAR, type Overlay } from '#geometry/inset/overlay.ts'
import { NOBODY } from '#geometry/inset/ownership.ts'
import type { InnerEdge, WallSection } from '#geometry/inset/types.ts'
import { startOf } from '#geometry/overlay/faces.ts'
import type { BoundaryRing } from '#geometry/overlay/readBack.ts'
import type { Point } from '#geometry/polygon.ts'

/** What a half-edge round the clear room belongs to. Returns of different segments stay apart: they may turn. */
interface Belonging {
  readonly wall: number
  readonly kind: InnerEdge['kind']
  readonly segment: number
}

/** Shorter edges (mm) come from rounding where several lines meet; their neighbours meet there instead. */
const LEAST_EDGE_MM = 0.05

/** The edges of the clear room, ring by ring: pieces that belong together joined to one straight edge. */
export function innerEdges(overlay: Overlay, rings: readonly BoundaryRing[], grid: Grid): InnerEdge[] {
  const belongings = findBelongings(overlay)
  const found: InnerEdge[] = []
  for (const ring of rings) if (ring.label === CLEAR) addRing(found, overlay, ring, belongings, grid)
  return found
}

/** By half-edge. */
type Belongings = (Belonging | undefined)[]

function findBelongings(overlay: Overlay): Belongings {
  const found: Belongings = new Array(overlay.arrangement.faces.of.length).fill(undefined)
  overlay.floor.forEach((edge, segment) => {
    if (edge.bounds.floor === 0) return
    addBare(found, overlay, { wall: edge.wall, kind: edge.isJoin ? 'return' : 'bare', segment })
  })
  overlay.strips.forEach((strip, s) => {
    for (let side = 1; side < strip.xs.length; side++) {
      const kind = side === strip.face ? 'face' : 'return'
      addStripSide(found, overlay, { wall: strip.wall, kind, segment: strip.firstSide + side - 1 }, s)
    }
  })
  return found
}

/** Where a wall itself bounds the clear room. */
function addBare(found: Belongings, { arrangement, labels }: Overlay, belonging: Belonging): void {
  const { faces, chainStart, chain } = arrangement
  for (let c = chainStart[belonging.segment]!; c < chainStart[belonging.segment + 1]!; c++) {
    const half = chain[c]!
    if (labels[faces.of[half]!] === CLEAR) found[half] = belonging
  }
}

/** Where a side of a strip has its own strip on one hand and the clear room on the other. */
function addStripSide(found: Belongings, overlay: Overlay, belonging: Belonging, strip: number): void {
  const { faces, chainStart, chain } = overlay.arrangement
  for (let c = chainStart[belonging.segment]!; c < chainStart[belonging.segment + 1]!; c++) {
    const half = chain[c]!
    const isOwn = overlay.owner[faces.of[half]!] === strip && overlay.labels[faces.of[half ^ 1]!] === CLEAR
    if (isOwn && (belonging.kind === 'face' || !found[half ^ 1])) found[half ^ 1] = belonging
  }
}

/** A stretch of a ring from the place of its first half-edge on. */
interface Run {
  readonly start: number
  readonly belonging: Belonging
}

function addRing(
  found: InnerEdge[],
  overlay: Overlay,
  { halves }: BoundaryRing,
  belongings: Belongings,
  grid: Grid,
): void {
  const { places, edges } = overlay.arrangement
  const pointAt = (place: number): Point => {
    const vertex = startOf(edges, halves[place]!)
    return toPoint(grid, places.first[vertex]!, places.second[vertex]!)
  }
  const all = halves.map((half, start) => ({
    start,
    belonging: belongings[half] ?? belongingOfOwner(overlay, half),
  }))
  const lengthOf = (runs: readonly Run[], k: number): number => {
    const [x, y] = pointAt(runs[k]!.start)
    const [toX, toY] = pointAt(runs[(k + 1) % runs.length]!.start)
    return Math.hypot(toX - x, toY - y)
  }
  const runs = joined(all)
  const long = joined(runs.length > 1 ? runs.filter((_, k) => lengthOf(runs, k) >= LEAST_EDGE_MM) : runs)
  long.forEach(({ start, belonging: { wall, kind } }, k) => {
    found.push({ from: pointAt(start), to: pointAt(long[(k + 1) % long.length]!.start), wall, kind })
  })
}

/** Runs that begin where the one before them does not belong to the same wall. */
function joined(runs: readonly Run[]): Run[] {
  const starts = runs.filter((run, k) => !joins(runs[(k + runs.length - 1) % runs.length]!.belonging, run.belonging))
  return starts.length > 0 ? starts : runs.slice(0, 1)
}

/** Rounding may leave an edge on no side of its strip: it counts as the strip's end. */
function belongingOfOwner({ arrangement, owner, strips }: Overlay, half: number): Belonging {
  const strip = owner[arrangement.faces.of[half ^ 1]!]!
  return { wall: strip === NOBODY ? -1 : strips[strip]!.wall, kind: 'return', segment: -1 }
}

function joins(one: Belonging, other: Belonging): boolean {
  return one.wall === other.wall && one.kind === other.kind && (one.kind !== 'return' || one.segment === other.segment)
}

/** The stretch of a wall an inner edge lies along. */
export function sectionOf(edge: InnerEdge, source: SourceWall, grid: Grid): WallSection {
  const along = ([x, y]: InnerEdge['from']): number => {
    const dx = (x - grid.originXMm) * grid.stepsPerMm - source.fromX
    const dy = (y - grid.originYMm) * grid.stepsPerMm - source.fromY
    return (dx * source.directionX + dy * source.directionY) / grid.stepsPerMm
  }
  const [one, other] = [along(edge.from), along(edge.to)]
  return { from: edge.from, to: edge.to, s0Mm: Math.min(one, other), s1Mm: Math.max(one, other) }
}
