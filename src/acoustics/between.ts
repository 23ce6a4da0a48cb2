/** A table read straight between its points; held at the first and the last beyond them. `xs` rise. */
export function between(x: number, xs: readonly number[], ys: readonly number[]): number {
  const above = xs.findIndex((at) => at > x)
  if (above === 0) return ys[0]!
  if (above < 0) return ys.at(-1)!
  const share = (x - xs[above - 1]!) / (xs[above]! - xs[above - 1]!)
  return ys[above - 1]! + share * (ys[above]! - ys[above - 1]!)
}
