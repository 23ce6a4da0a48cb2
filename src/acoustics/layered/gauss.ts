/** Nodes in (-1, 1) and weights of Gauss-Legendre quadrature. */
export interface GaussRule {
  readonly nodes: readonly number[]
  readonly weights: readonly number[]
}

function legendre(count: number, x: number): { value: number; slope: number } {
  let [before, value] = [1, x]
  for (let n = 2; n <= count; n++) {
    const next = ((2 * n - 1) * x * value - (n - 1) * before) / n
    before = value
    value = next
  }
  return { value, slope: (count * (x * value - before)) / (x * x - 1) }
}

/** Gauss-Legendre rule with `count` >= 2 nodes, by Newton's method from Chebyshev guesses; exact to the last digits. */
export function gaussRule(count: number): GaussRule {
  const nodes: number[] = []
  const weights: number[] = []
  for (let i = 0; i < count; i++) {
    let x = -Math.cos((Math.PI * (i + 0.75)) / (count + 0.5))
    for (let step = 0; step < 8; step++) {
      const { value, slope } = legendre(count, x)
      x -= value / slope
    }
    const { slope } = legendre(count, x)
    nodes.push(x)
    weights.push(2 / ((1 - x * x) * slope * slope))
  }
  return { nodes, weights }
}
