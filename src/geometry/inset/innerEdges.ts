import { type Grid, toPoint } from '#geometry/grid.ts'
import type { SourceWall } from '#geometry/inset/gridRing.ts'
import { CLEAR, type Overlay } from '#geometry/inset/overlay.ts'
import { NOBODY } from '#geometry/inset/ownership.ts'
import type { InnerEdge, WallSection } from '#geometry/inset/types.ts'
import { startOf } from '#geometry/overlay/faces.ts'
import type { BoundaryRing } from '#geometry/overlay/readBack.ts'

/** What a half-edge round the clear room belongs to. Returns of different segments stay apart: they may turn. */
interface Belonging {
  readonly wall: number
  readonly kind: InnerEdge['kind']
  readonly segment: number
}

/** The edges of the clear room, ring by ring: pieces that belong together joined to one straight edge. */
export function innerEdges(overlay: Overlay, rings: readonly BoundaryRing[], grid: Grid): InnerEdge[] {
  const belongings = findBelongings(overlay)
  const found: InnerEdge[] = []
  for (const ring of rings) if (ring.label === CLEAR) addRing(found, overlay, ring, belongings, grid)
  return found
}

function findBelongings(overlay: Overlay): ReadonlyMap<number, Belonging> {
  const found = new Map<number, Belonging>()
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
function addBare(found: Map<number, Belonging>, { arrangement, labels }: Overlay, belonging: Belonging): void {
  const { faces, chainStart, chain } = arrangement
  for (let c = chainStart[belonging.segment]!; c < chainStart[belonging.segment + 1]!; c++) {
    const half = chain[c]!
    if (labels[faces.of[half]!] === CLEAR) found.set(half, belonging)
  }
}

/** Where a side of a strip has its own strip on one hand and the clear room on the other. */
function addStripSide(found: Map<number, Belonging>, overlay: Overlay, belonging: Belonging, strip: number): void {
  const { faces, chainStart, chain } = overlay.arrangement
  for (let c = chainStart[belonging.segment]!; c < chainStart[belonging.segment + 1]!; c++) {
    const half = chain[c]!
    const isOwn = overlay.owner[faces.of[half]!] === strip && overlay.labels[faces.of[half ^ 1]!] === CLEAR
    if (isOwn && (belonging.kind === 'face' || !found.has(half ^ 1))) found.set(half ^ 1, belonging)
  }
}

function addRing(
  found: InnerEdge[],
  overlay: Overlay,
  { halves }: BoundaryRing,
  belongings: ReadonlyMap<number, Belonging>,
  grid: Grid,
): void {
  const { places, edges } = overlay.arrangement
  const of = halves.map((half) => belongings.get(half) ?? belongingOfOwner(overlay, half))
  const n = halves.length
  let first = 0
  while (first < n && joins(of[(first + n - 1) % n]!, of[first]!)) first++
  for (let k = 0; k < n; ) {
    const start = (first + k) % n
    const { wall, kind } = of[start]!
    let length = 1
    while (k + length < n && joins(of[(start + length - 1) % n]!, of[(start + length) % n]!)) length++
    const from = startOf(edges, halves[start]!)
    const to = startOf(edges, halves[(start + length - 1) % n]! ^ 1)
    found.push({
      from: toPoint(grid, places.first[from]!, places.second[from]!),
      to: toPoint(grid, places.first[to]!, places.second[to]!),
      wall,
      kind,
    })
    k += length
  }
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
