import type { Millimetres } from '#units/quantity.ts'

/** What a measured diagonal says of the corner between the two walls it spans. */
export interface SpannedCorner {
  /** Between the two walls, in degrees, 0 to 180. */
  readonly angleDeg: number
  /** Over a right angle; negative: closed in. */
  readonly outOfSquareDeg: number
  /** How far the end of the second wall stands off the square line from the first; negative: closed in. */
  readonly outOfSquareMm: Millimetres
}

/** Why three lengths make no triangle. */
export type NoTriangle = 'too-long' | 'too-short'

/**
 * The corner between two walls of known length from the distance between their far ends, by the law of cosines:
 * cos(angle) = (a2 + b2 - d2) / 2ab.
 * @param first  length of the one wall, mm, > 0
 * @param second  length of the other wall, mm, > 0
 * @param diagonal  between their far ends, mm
 * @returns the corner, or why no corner fits: the diagonal is longer than both walls in one line, or shorter than their difference
 * @source Euclid, Elements, II.12 and II.13, memory
 * @example cornerFromDiagonal(3000, 4000, 5000) // 90 degrees, square
 */
export function cornerFromDiagonal(
  first: Millimetres,
  second: Millimetres,
  diagonal: Millimetres,
): SpannedCorner | NoTriangle {
  if (diagonal > first + second) return 'too-long'
  if (diagonal < Math.abs(first - second)) return 'too-short'
  const cosine = (first ** 2 + second ** 2 - diagonal ** 2) / (2 * first * second)
  const angleDeg = (Math.acos(Math.max(-1, Math.min(1, cosine))) * 180) / Math.PI
  return { angleDeg, outOfSquareDeg: angleDeg - 90, outOfSquareMm: 0 - second * cosine }
}
