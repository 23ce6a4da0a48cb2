import type { WallStrip } from '#geometry/inset/strips.ts'
import { roundedAlong, turn } from '#geometry/overlay/exact.ts'
import { addSegment, type Segments } from '#geometry/overlay/segments.ts'

/** An end nearer than this to a corner of the drawing is put on it; others are drawn longer by as much. In steps. */
const NEAR = 2

/** A stretch shorter than this (steps) borders nothing worth cutting. */
const SHORTEST = 0.5

/** A straight line through (x, y) along (dx, dy), length 1. */
interface Line {
  readonly x: number
  readonly y: number
  readonly dx: number
  readonly dy: number
}

/**
 * Adds, for each two strips that overlap, the line on which both are equally deep in relation to their linings: on its
 * sides the overlap belongs to different walls.
 */
export function addCutLines(segments: Segments, strips: readonly WallStrip[]): void {
  const order = [...strips].sort((one, other) => one.minX - other.minX)
  for (let j = 0; j < order.length; j++) {
    const one = order[j]!
    for (let k = j + 1; k < order.length && order[k]!.minX < one.maxX; k++) {
      const other = order[k]!
      if (other.minY < one.maxY && one.minY < other.maxY) addCutLine(segments, one, other)
    }
  }
}

function addCutLine(segments: Segments, one: WallStrip, other: WallStrip): void {
  const line = equalDepthLine(one, other)
  if (!line) return
  const inOne = stretchInside(line, one)
  if (!inOne) return
  const inOther = stretchInside(line, other)
  if (!inOther) return
  const from = Math.max(inOne[0], inOther[0])
  const to = Math.min(inOne[1], inOther[1])
  if (to - from < SHORTEST) return
  const [ax, ay] = endPlace(line, from, -1, one, other)
  const [bx, by] = endPlace(line, to, 1, one, other)
  addSegment(segments, ax, ay, bx, by)
}

function equalDepthLine(one: WallStrip, other: WallStrip): Line | null {
  const a = one.depthX - other.depthX
  const b = one.depthY - other.depthY
  const c = one.depthAt0 - other.depthAt0
  const size = Math.hypot(a, b)
  if (size < 1e-9 * Math.hypot(one.depthX, one.depthY)) return null
  return { x: (-a * c) / (size * size), y: (-b * c) / (size * size), dx: -b / size, dy: a / size }
}

/** The stretch of a line inside a convex strip, from and to along it, or null. */
function stretchInside(line: Line, { xs, ys }: WallStrip): [number, number] | null {
  const n = xs.length
  let from = -Infinity
  let to = Infinity
  for (let k = 0; k < n; k++) {
    const after = k + 1 === n ? 0 : k + 1
    const ex = xs[after]! - xs[k]!
    const ey = ys[after]! - ys[k]!
    // Left of the side where start + t * rate >= 0.
    const start = ex * (line.y - ys[k]!) - ey * (line.x - xs[k]!)
    const rate = ex * line.dy - ey * line.dx
    if (rate > 0) from = Math.max(from, -start / rate)
    else if (rate < 0) to = Math.min(to, -start / rate)
    else if (start < 0) return null
    if (from >= to) return null
  }
  return [from, to]
}

/** An end of a cut line on the grid: a corner of either strip or the crossing of their faces if it is one, else beyond. */
function endPlace(line: Line, at: number, sign: number, one: WallStrip, other: WallStrip): readonly [number, number] {
  const x = line.x + line.dx * at
  const y = line.y + line.dy * at
  const corner = nearCorner(x, y, one) ?? nearCorner(x, y, other) ?? nearFaceCrossing(x, y, one, other)
  return corner ?? [Math.round(x + sign * NEAR * line.dx), Math.round(y + sign * NEAR * line.dy)]
}

function nearCorner(x: number, y: number, { xs, ys }: WallStrip): readonly [number, number] | null {
  for (let k = 0; k < xs.length; k++) {
    if (Math.abs(xs[k]! - x) <= NEAR && Math.abs(ys[k]! - y) <= NEAR) return [xs[k]!, ys[k]!]
  }
  return null
}

function nearFaceCrossing(x: number, y: number, one: WallStrip, other: WallStrip): readonly [number, number] | null {
  const [ax, ay, bx, by] = faceOf(one)
  const [cx, cy, dx, dy] = faceOf(other)
  const start = turn(ax, ay, bx, by, cx, cy)
  const end = turn(ax, ay, bx, by, dx, dy)
  if (start === end) return null
  const atX = roundedAlong(cx, dx - cx, start, start - end)
  const atY = roundedAlong(cy, dy - cy, start, start - end)
  return Math.abs(atX - x) <= NEAR && Math.abs(atY - y) <= NEAR ? [atX, atY] : null
}

function faceOf({ xs, ys, face }: WallStrip): readonly [number, number, number, number] {
  const after = (face + 1) % xs.length
  return [xs[face]!, ys[face]!, xs[after]!, ys[after]!]
}
