/**
 * Twice the area of the triangle a, b, c: positive when c lies left of a-b. Exact for whole steps up to 2^25 apart
 * (104 m at 320 steps/mm).
 */
export function turn(ax: number, ay: number, bx: number, by: number, cx: number, cy: number): number {
  return (bx - ax) * (cy - ay) - (by - ay) * (cx - ax)
}

/** Nearer than this to a half step the floating result may fall on the wrong side, so it is done again exactly. */
const DOUBTFUL = 1e-6

/**
 * One coordinate of a crossing, rounded to the grid: the whole number nearest to start + span * part / whole, an exact
 * half going up. Exact: in doubt it is worked out in long integers.
 */
export function roundedAlong(start: number, span: number, part: number, whole: number): number {
  const value = start + span * (part / whole)
  const rounded = Math.floor(value + 0.5)
  if (Math.abs(Math.abs(value - rounded) - 0.5) > DOUBTFUL) return rounded
  const sign = whole < 0 ? -1n : 1n
  const top = 2n * BigInt(span) * BigInt(part) * sign + BigInt(whole) * sign
  const bottom = 2n * BigInt(whole) * sign
  const floor = top / bottom - (top % bottom < 0n ? 1n : 0n)
  return start + Number(floor)
}

/**
 * Whether a segment meets the square of one step round the grid place (x, y), left and lower side included, right and
 * upper side not. Exact. With both sides included, a slanted segment through a shared corner would belong to two
 * squares and the noding could contradict itself.
 * @source Hobby 1999, "Practical segment intersection with finite precision output", memory
 */
export function meetsPixel(ax: number, ay: number, bx: number, by: number, x: number, y: number): boolean {
  if (x < ax ? x < bx : x > ax && x > bx) return false
  if (y < ay ? y < by : y > ay && y > by) return false
  const dx = bx - ax
  const dy = by - ay
  const offset = 2 * (dx * (y - ay) - dy * (x - ax))
  const reach = Math.abs(dx) + Math.abs(dy)
  const distance = Math.abs(offset)
  if (distance !== reach) return distance < reach
  // The line touches the square in one corner only: the corner belongs to this square or to its neighbour.
  return offset < 0 === dy > 0
}
