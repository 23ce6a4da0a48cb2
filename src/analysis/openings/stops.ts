import type { HungLeaf } from '#analysis/openings/leaves.ts'
import type { Point } from '#geometry/polygon.ts'

/** A leaf may brush past what reaches this little into its way, mm. */
const BRUSH_MM = 0.5

/**
 * Degrees from shut, up to 180, at which the leading face of a leaf first meets a straight piece; null: it never does.
 * What of the piece lies within the leaf's reach is passed end by end, so the first end counts.
 */
export function firstTouch(leaf: HungLeaf, from: Point, to: Point): number | null {
  const reach = leaf.widthMm - BRUSH_MM
  if (isFarOff(leaf.hinge, from, to, reach)) return null
  const ends = withinReach(aheadOf(local(leaf, from), local(leaf, to)), reach)
  const angles = ends
    .filter(([x, y]) => Math.hypot(x, y) > BRUSH_MM)
    .map(([x, y]) => (Math.atan2(y, Math.abs(x) <= BRUSH_MM ? 0 : x) * 180) / Math.PI)
  return angles.length > 0 ? Math.min(...angles) : null
}

/** A hall has hundreds of walls and a leaf reaches few of them. */
function isFarOff(pin: Point, from: Point, to: Point, reach: number): boolean {
  return (
    Math.min(from[0], to[0]) > pin[0] + reach ||
    Math.max(from[0], to[0]) < pin[0] - reach ||
    Math.min(from[1], to[1]) > pin[1] + reach ||
    Math.max(from[1], to[1]) < pin[1] - reach
  )
}

/** Along the shut leaf from its pin, and towards where it swings. */
function local({ hinge, shut, towards }: HungLeaf, [x, y]: Point): Point {
  const [dx, dy] = [x - hinge[0], y - hinge[1]]
  return [dx * shut[0] + dy * shut[1], dx * towards[0] + dy * towards[1]]
}

/** The part of a piece on the side the leaf swings to; none: it lies behind the shut leaf, or along it. */
function aheadOf(from: Point, to: Point): readonly Point[] {
  const clipped = (inside: Point, outside: Point): Point => {
    const share = (BRUSH_MM - outside[1]) / (inside[1] - outside[1])
    return [outside[0] + (inside[0] - outside[0]) * share, BRUSH_MM]
  }
  const [first, second] = [from[1] > BRUSH_MM, to[1] > BRUSH_MM]
  if (first && second) return [from, to]
  if (first) return [from, clipped(from, to)]
  return second ? [clipped(to, from), to] : []
}

/** The part of a piece inside the circle of a reach about the pin. */
function withinReach([from, to]: readonly Point[], reach: number): readonly Point[] {
  if (!from || !to) return []
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]]
  const square = dx * dx + dy * dy
  const middle = square > 0 ? -(from[0] * dx + from[1] * dy) / square : 0
  const nearest = Math.hypot(from[0] + dx * middle, from[1] + dy * middle)
  if (nearest >= reach || square === 0) return []
  const half = Math.sqrt((reach * reach - nearest * nearest) / square)
  const [low, high] = [Math.max(0, middle - half), Math.min(1, middle + half)]
  if (low >= high) return []
  return [low, high].map((share): Point => [from[0] + dx * share, from[1] + dy * share])
}
