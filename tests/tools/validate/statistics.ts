/** How predictions of a set of published values came out: predicted minus published, STC. */
export interface Statistics {
  readonly n: number
  readonly mean: number
  /** Sample standard deviation; 0 of a single value. */
  readonly sd: number
  /** Farthest from 0, with its sign. */
  readonly worst: number
  readonly percentWithin3: number
}

export function statisticsOf(errors: readonly number[]): Statistics {
  const n = errors.length
  const mean = errors.reduce((sum, error) => sum + error, 0) / n
  const squares = errors.reduce((sum, error) => sum + (error - mean) ** 2, 0)
  return {
    n,
    mean,
    sd: n > 1 ? Math.sqrt(squares / (n - 1)) : 0,
    worst: errors.reduce((worst, error) => (Math.abs(error) > Math.abs(worst) ? error : worst), 0),
    percentWithin3: (100 * errors.filter((error) => Math.abs(error) <= 3).length) / n,
  }
}

export function median(values: readonly number[]): number {
  const sorted = values.toSorted((a, b) => a - b)
  const middle = Math.floor(sorted.length / 2)
  return sorted.length % 2 === 1 ? sorted[middle]! : (sorted[middle - 1]! + sorted[middle]!) / 2
}
