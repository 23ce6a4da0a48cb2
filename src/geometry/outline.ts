import type { Point, Polygon, Ring } from '#geometry/polygon.ts'

/** A side of an outline: `index` is the place of its first corner. */
export interface OutlineEdge {
  readonly index: number
  readonly from: Point
  readonly to: Point
  readonly lengthMm: number
}

/** A box along the axes, mm. */
export interface Box {
  readonly minX: number
  readonly minY: number
  readonly maxX: number
  readonly maxY: number
}

/** Area inside an outline, mm2: positive when its corners run counter-clockwise, negative when clockwise. */
export function outlineArea(outline: Ring): number {
  const first = outline[0]
  if (!first) return 0
  let sum = 0
  for (let k = 1; k + 1 < outline.length; k++) {
    const [ax, ay] = outline[k]!
    const [bx, by] = outline[k + 1]!
    sum += (ax - first[0]) * (by - first[1]) - (ay - first[1]) * (bx - first[0])
  }
  return sum / 2
}

/** Whether the corners run counter-clockwise: the inside is on the left of every side. */
export function isCounterClockwise(outline: Ring): boolean {
  return outlineArea(outline) > 0
}

/** The sides in order; side k leaves corner k. */
export function outlineEdges(outline: Ring): OutlineEdge[] {
  return outline.map((from, index) => {
    const to = outline[(index + 1) % outline.length]!
    return { index, from, to, lengthMm: Math.hypot(to[0] - from[0], to[1] - from[1]) }
  })
}

/** Summed length of the sides, mm. */
export function perimeter(outline: Ring): number {
  return outlineEdges(outline).reduce((sum, edge) => sum + edge.lengthMm, 0)
}

/** The box round an outline; null when it has no corners. */
export function boundingBox(outline: Ring): Box | null {
  if (outline.length === 0) return null
  let [minX, minY, maxX, maxY] = [Infinity, Infinity, -Infinity, -Infinity]
  for (const [x, y] of outline) {
    minX = Math.min(minX, x)
    minY = Math.min(minY, y)
    maxX = Math.max(maxX, x)
    maxY = Math.max(maxY, y)
  }
  return { minX, minY, maxX, maxY }
}

/** Whether a point lies inside a simple outline; on the line itself either answer may come. */
export function contains(outline: Ring, [x, y]: Point): boolean {
  let inside = false
  for (const { from, to } of outlineEdges(outline)) {
    if (from[1] > y === to[1] > y) continue
    if (x < from[0] + ((y - from[1]) / (to[1] - from[1])) * (to[0] - from[0])) inside = !inside
  }
  return inside
}

/** Centre of the area inside an outline; of its corners when it has no area, null when it has no corners. */
export function centroid(outline: Ring): Point | null {
  const anchor = outline[0]
  if (!anchor) return null
  const [x0, y0] = anchor
  let [sumX, sumY, sum] = [0, 0, 0]
  for (const { from, to } of outlineEdges(outline)) {
    const part = (from[0] - x0) * (to[1] - y0) - (from[1] - y0) * (to[0] - x0)
    sum += part
    sumX += part * (from[0] + to[0] - 2 * x0)
    sumY += part * (from[1] + to[1] - 2 * y0)
  }
  if (sum !== 0) return [x0 + sumX / (3 * sum), y0 + sumY / (3 * sum)]
  const n = outline.length
  return [outline.reduce((total, [x]) => total + x, 0) / n, outline.reduce((total, [, y]) => total + y, 0) / n]
}

/** The longest side, the first of equals (within a thousandth of a millimetre); null without corners. */
export function longestEdge(outline: Ring): OutlineEdge | null {
  let longest: OutlineEdge | null = null
  for (const edge of outlineEdges(outline)) {
    if (!longest || edge.lengthMm > longest.lengthMm + 1e-3) longest = edge
  }
  return longest
}

/**
 * Size of the outline's box with sides along and across its longest side, mm: what people call a room's length and
 * width. Both 0 when there is no side.
 */
export function boxAlongLongestWall(outline: Ring): { readonly alongMm: number; readonly acrossMm: number } {
  const longest = longestEdge(outline)
  if (!longest || longest.lengthMm === 0) return { alongMm: 0, acrossMm: 0 }
  const ux = (longest.to[0] - longest.from[0]) / longest.lengthMm
  const uy = (longest.to[1] - longest.from[1]) / longest.lengthMm
  const turned = outline.map(([x, y]): Point => [x * ux + y * uy, y * ux - x * uy])
  const box = boundingBox(turned)!
  return { alongMm: box.maxX - box.minX, acrossMm: box.maxY - box.minY }
}

/** A circle on the plan, mm. */
export interface Circle {
  readonly centre: Point
  readonly radiusMm: number
}

/** A square of the search: no circle centred in it can be larger than `atMost`. */
interface Square {
  readonly x: number
  readonly y: number
  readonly half: number
  readonly radius: number
  readonly atMost: number
}

/** The search stops when no place can be better by more than this, mm; the best place is then refined. */
const CLOSE_ENOUGH_MM = 4

/** How finely the best place is refined, mm. */
const REFINED_MM = 0.01

/** Squares looked at at most; the answer is then the best so far. Reached only by outlines without width. */
const MOST_SQUARES = 20_000

/**
 * The largest circle that fits into a shape, as free floor to turn in: squares over the shape are split where they may
 * still hold a better centre. Its radius is at most 4 mm too small, exact to 0.1 mm where the best place has no rival;
 * 0 for a shape without corners.
 */
export function largestCircle(shape: Pick<Polygon, 'outline' | 'holes'>): Circle {
  const box = boundingBox(shape.outline)
  const middle = centroid(shape.outline)
  if (!box || !middle) return { centre: [0, 0], radiusMm: 0 }
  const rings = [shape.outline, ...shape.holes].map((ring) => ring.flat())
  const look = (x: number, y: number, half: number): Square => {
    const radius = signedDistance(rings, x, y)
    return { x, y, half, radius, atMost: radius + half * Math.SQRT2 }
  }
  const half = Math.max(1, Math.min(box.maxX - box.minX, box.maxY - box.minY)) / 2
  let best = look(middle[0], middle[1], 0)
  let open: Square[] = []
  for (let x = box.minX + half; x - half < box.maxX; x += 2 * half) {
    for (let y = box.minY + half; y - half < box.maxY; y += 2 * half) open.push(look(x, y, half))
  }
  for (let looked = 0; open.length > 0 && looked < MOST_SQUARES; looked += open.length) {
    for (const square of open) if (square.radius > best.radius) best = square
    const promising = open.filter((square) => square.atMost > best.radius + CLOSE_ENOUGH_MM)
    open = promising.flatMap(({ x, y, half: size }) => quarters(x, y, size / 2, look))
  }
  const refined = refine(best, look)
  return { centre: [refined.x, refined.y], radiusMm: Math.max(0, refined.radius) }
}

/** Climbs from a place to the best one near it. */
function refine(start: Square, look: Look): Square {
  let best = start
  for (let step = CLOSE_ENOUGH_MM; step > REFINED_MM; ) {
    const around = quarters(best.x, best.y, step, look).concat(crossing(best.x, best.y, step, look))
    const better = around.reduce((one, other) => (other.radius > one.radius ? other : one))
    if (better.radius > best.radius) best = better
    else step /= 2
  }
  return best
}

type Look = (x: number, y: number, half: number) => Square

function quarters(x: number, y: number, h: number, look: Look): Square[] {
  return [look(x - h, y - h, h), look(x + h, y - h, h), look(x - h, y + h, h), look(x + h, y + h, h)]
}

function crossing(x: number, y: number, h: number, look: Look): Square[] {
  return [look(x - h, y, h), look(x + h, y, h), look(x, y - h, h), look(x, y + h, h)]
}

/** Distance to the nearest side of any ring (x and y alternating), mm: negative outside the shape they bound. */
function signedDistance(rings: readonly (readonly number[])[], x: number, y: number): number {
  let nearest = Infinity
  let inside = false
  for (const ring of rings) {
    let ax = ring[ring.length - 2]! - x
    let ay = ring[ring.length - 1]! - y
    for (let k = 0; k < ring.length; k += 2) {
      const bx = ring[k]! - x
      const by = ring[k + 1]! - y
      const dx = bx - ax
      const dy = by - ay
      if (ay > 0 !== by > 0 && (ax * by - bx * ay) * dy > 0) inside = !inside
      const square = dx * dx + dy * dy
      const along = square === 0 ? 0 : Math.max(0, Math.min(1, -(ax * dx + ay * dy) / square))
      const px = ax + along * dx
      const py = ay + along * dy
      nearest = Math.min(nearest, px * px + py * py)
      ax = bx
      ay = by
    }
  }
  return inside ? Math.sqrt(nearest) : -Math.sqrt(nearest)
}
