import { isCounterClockwise, outlineEdges } from '#geometry/outline.ts'
import type { Point, Ring } from '#geometry/polygon.ts'
import { fail, ok, type Result } from '#units/result.ts'

/** A line across an outline, and how much room is left free on either side of it, mm. */
export interface CutLine {
  readonly from: Point
  readonly to: Point
  /** To the left and to the right as one looks from `from` to `to`. */
  readonly leftMm: number
  readonly rightMm: number
}

/** Part of an outline on one side of the free strip: old sides `firstEdge` to `lastEdge`, both cut off, and a new one that closes it. */
export interface OutlinePart {
  readonly firstEdge: number
  /** Where the new side ends and what is left of `firstEdge` begins. */
  readonly start: Point
  readonly lastEdge: number
  /** Where what is left of `lastEdge` ends and the new side begins. */
  readonly end: Point
}

export interface OutlineCut {
  readonly left: OutlinePart
  readonly right: OutlinePart
}

/** Why a line does not cut an outline in two; `edge` and `corner` say where. */
export type CutRefusal =
  | { readonly kind: 'too-short' | 'misses' | 'too-many' }
  | { readonly kind: 'along-wall'; readonly edge: number }
  | { readonly kind: 'near-corner'; readonly corner: number }

/** A point this near to a line lies on it, mm. */
const ON_LINE_MM = 0.5

/** A place where the line crosses a side, mm along it from the middle of the drawn piece. */
interface Crossing {
  readonly edge: number
  readonly along: number
}

/**
 * Cuts an outline (no side of which crosses another) in two along a line, which is drawn out to the sides it meets. A
 * corner nearer to it than the whole free strip is wide is refused.
 */
export function cutOutline(outline: Ring, line: CutLine): Result<OutlineCut, CutRefusal> {
  const length = Math.hypot(line.to[0] - line.from[0], line.to[1] - line.from[1])
  if (!(length > 0)) return fail({ kind: 'too-short' })
  const frame = frameOf(line, length)
  const crossed = piece(crossings(outline, frame), length)
  if (!crossed.ok) return crossed
  const [enters, leaves] = crossed.value
  const near = nearCorner(outline, frame, line, crossed.value)
  if (near) return fail(near)
  const at = (edge: number, across: number) => onEdge(outline, frame, edge, across)
  const after = (across: number): OutlinePart => ({
    firstEdge: leaves.edge,
    start: at(leaves.edge, across),
    lastEdge: enters.edge,
    end: at(enters.edge, across),
  })
  const between = (across: number): OutlinePart => ({
    firstEdge: enters.edge,
    start: at(enters.edge, across),
    lastEdge: leaves.edge,
    end: at(leaves.edge, across),
  })
  return isCounterClockwise(outline)
    ? ok({ left: after(line.leftMm), right: between(-line.rightMm) })
    : ok({ left: between(line.leftMm), right: after(-line.rightMm) })
}

/** Distances along the line from the middle of its drawn piece, and across it to the left. */
interface Frame {
  readonly along: (point: Point) => number
  readonly across: (point: Point) => number
}

function frameOf({ from, to }: CutLine, length: number): Frame {
  const [ux, uy] = [(to[0] - from[0]) / length, (to[1] - from[1]) / length]
  const [mx, my] = [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2]
  return {
    along: ([x, y]) => (x - mx) * ux + (y - my) * uy,
    across: ([x, y]) => (y - my) * ux - (x - mx) * uy,
  }
}

function crossings(outline: Ring, { along, across }: Frame): readonly Crossing[] {
  const found: Crossing[] = []
  for (const { index, from, to } of outlineEdges(outline)) {
    const [a, b] = [across(from), across(to)]
    if (a >= 0 === b >= 0) continue
    found.push({ edge: index, along: along(from) + (a / (a - b)) * (along(to) - along(from)) })
  }
  return found.sort((one, other) => one.along - other.along)
}

/** The one piece of the line inside the outline that the drawn piece lies in; the only one there is, if it lies in none. */
function piece(all: readonly Crossing[], length: number): Result<readonly [Crossing, Crossing], CutRefusal> {
  const pieces: (readonly [Crossing, Crossing])[] = []
  for (let k = 0; k + 1 < all.length; k += 2) pieces.push([all[k]!, all[k + 1]!])
  const meant = pieces.filter(
    ([enters, leaves]) =>
      Math.min(leaves.along, length / 2) - Math.max(enters.along, -length / 2) > Math.min(ON_LINE_MM, length / 2),
  )
  const [only, second] = meant.length > 0 ? meant : pieces
  if (!only) return fail({ kind: 'misses' })
  return second ? fail({ kind: 'too-many' }) : ok(only)
}

function nearCorner(
  outline: Ring,
  { along, across }: Frame,
  { leftMm, rightMm }: CutLine,
  [enters, leaves]: readonly [Crossing, Crossing],
): CutRefusal | null {
  const count = outline.length
  const strip = Math.max(leftMm + rightMm, ON_LINE_MM)
  const isNear = (corner: number) => Math.abs(across(outline[corner]!)) < strip
  const near = [enters, leaves].flatMap(({ edge }) => [edge, (edge + 1) % count].filter(isNear))
  const first = near.find((corner) => near.includes((corner + 1) % count))
  if (first !== undefined) return { kind: 'along-wall', edge: first }
  if (near[0] !== undefined) return { kind: 'near-corner', corner: near[0] }
  const between = outline.findIndex((point, corner) => {
    const place = along(point)
    return isNear(corner) && place > enters.along - strip && place < leaves.along + strip
  })
  return between < 0 ? null : { kind: 'near-corner', corner: between }
}

/** The place on a side that lies so far to the left of the line. */
function onEdge(outline: Ring, { across }: Frame, edge: number, leftMm: number): Point {
  const [from, to] = [outline[edge]!, outline[(edge + 1) % outline.length]!]
  const [a, b] = [across(from), across(to)]
  const share = (leftMm - a) / (b - a)
  return [from[0] + share * (to[0] - from[0]), from[1] + share * (to[1] - from[1])]
}
