import { type CornerWall, endsAtCorner, type Vector } from '#geometry/inset/cornerRule.ts'
import type { FloorEdge } from '#geometry/inset/floorEdges.ts'
import { addSegment, type Segments } from '#geometry/overlay/segments.ts'

/** The place in the list of floor edges, the convex area its lining may fill, and the segments that bound it. */
export interface WallStrip {
  readonly edge: number
  readonly wall: number
  /** Corners in whole steps, x and y; corners 0 and 1 are the wall's own. */
  readonly xs: readonly number[]
  readonly ys: readonly number[]
  /** The side from corner `face` to the next one is the lining's face. */
  readonly face: number
  /** Relative depth of a place (x, y), 0 on the wall and 1 on the face: depthX * x + depthY * y + depthAt0. */
  readonly depthX: number
  readonly depthY: number
  readonly depthAt0: number
  readonly minX: number
  readonly minY: number
  readonly maxX: number
  readonly maxY: number
  /** Numbers of its segments in the drawing; side k is segment firstSide + k - 1 for k > 0, the wall itself for 0. */
  firstSide: number
}

/** A turn beyond this angle (radians, negative away from the room) is clearly reflex, whatever the grid rounds. */
const CLEARLY_REFLEX = -0.05

/** The strips of all floor edges with a lining. */
export function stripsOf(floor: readonly FloorEdge[]): WallStrip[] {
  const walls = floor.map((edge) => ({ edge, length: Math.hypot(edge.bx - edge.ax, edge.by - edge.ay) }))
  /** Ends at each edge's second corner, where its strip and the next one's meet. */
  const ends = floor.map((edge, k) => {
    const after = floor[edge.next]
    if (!after || (edge.depth === 0 && after.depth === 0)) return null
    const first: CornerWall = {
      direction: edge.direction,
      depth: edge.depth,
      length: walls[k]!.length,
      farCorner: [edge.ax - edge.bx, edge.ay - edge.by],
      farCornerReflex: turnAfter(floor[edge.previous]!, edge) < CLEARLY_REFLEX,
    }
    const second: CornerWall = {
      direction: after.direction,
      depth: after.depth,
      length: walls[edge.next]!.length,
      farCorner: [after.bx - after.ax, after.by - after.ay],
      farCornerReflex: turnAfter(after, floor[after.next]!) < CLEARLY_REFLEX,
    }
    return endsAtCorner(first, second)
  })
  const strips: WallStrip[] = []
  floor.forEach((edge, k) => {
    if (edge.depth > 0) strips.push(stripOf(edge, k, ends[edge.previous]!.second, ends[k]!.first))
  })
  return strips
}

function turnAfter(first: FloorEdge, second: FloorEdge): number {
  const [ux, uy] = first.direction
  const [wx, wy] = second.direction
  return Math.atan2(ux * wy - uy * wx, ux * wx + uy * wy)
}

function stripOf(edge: FloorEdge, place: number, start: readonly Vector[], end: readonly Vector[]): WallStrip {
  const xs = [edge.ax, edge.bx]
  const ys = [edge.ay, edge.by]
  for (const [x, y] of end) {
    xs.push(Math.round(edge.bx + x))
    ys.push(Math.round(edge.by + y))
  }
  const face = xs.length - 1
  for (const [x, y] of start.toReversed()) {
    xs.push(Math.round(edge.ax + x))
    ys.push(Math.round(edge.ay + y))
  }
  const depthX = -edge.direction[1] / edge.depth
  const depthY = edge.direction[0] / edge.depth
  return {
    edge: place,
    wall: edge.wall,
    xs,
    ys,
    face,
    depthX,
    depthY,
    depthAt0: -(depthX * edge.ax + depthY * edge.ay),
    minX: Math.min(...xs),
    minY: Math.min(...ys),
    maxX: Math.max(...xs),
    maxY: Math.max(...ys),
    firstSide: -1,
  }
}

/** Adds a strip's sides to the drawing; its wall side is the floor edge, already there. */
export function addStripSides(segments: Segments, strip: WallStrip): void {
  const n = strip.xs.length
  strip.firstSide = segments.count
  for (let k = 1; k < n; k++) {
    const after = (k + 1) % n
    addSegment(segments, strip.xs[k]!, strip.ys[k]!, strip.xs[after]!, strip.ys[after]!)
  }
}
