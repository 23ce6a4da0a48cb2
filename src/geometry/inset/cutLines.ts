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

/**
 * The stretch of a line inside a strip, from and to along it, or null. It runs between the sides the line crosses:
 * rounding may turn a side of a few steps any way, so what lies beyond such a side says nothing.
 */
function stretchInside(line: Line, { xs, ys }: WallStrip): [number, number] | null {
  const n = xs.length
  let from = Infinity
  let to = -Infinity
  let asideBefore = aside(line, xs[n - 1]!, ys[n - 1]!)
  let alongBefore = along(line, xs[n - 1]!, ys[n - 1]!)
  for (let k = 0; k < n; k++) {
    const asideHere = aside(line, xs[k]!, ys[k]!)
    const alongHere = along(line, xs[k]!, ys[k]!)
    if (asideBefore >= 0 !== asideHere >= 0) {
      const at = alongBefore + ((alongHere - alongBefore) * asideBefore) / (asideBefore - asideHere)
      from = Math.min(from, at)
      to = Math.max(to, at)
    }
    asideBefore = asideHere
    alongBefore = alongHere
  }
  return from < to ? [from, to] : null
}

/** How far a place lies left of a line. */
function aside(line: Line, x: number, y: number): number {
  return line.dx * (y - line.y) - line.dy * (x - line.x)
}

/** How far along a line a place lies. */
function along(line: Line, x: number, y: number): number {
  return line.dx * (x - line.x) + line.dy * (y - line.y)
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
