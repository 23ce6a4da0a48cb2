import type { TrainedGroup } from '#acoustics/anchor/correction.ts'
import { covariance } from '#acoustics/anchor/kernel.ts'
import type { AnchorGroup } from '#acoustics/anchor/point.ts'
import type { TrainingRow } from './rows.ts'

/** The two numbers fitted for a group. */
export interface Fitted {
  /** Factor on every amplitude of data/scales.json. */
  readonly factor: number
  /** Standard deviation of what a published value says beyond any build-up, dB. */
  readonly noiseDb: number
}

/** Lower triangle L of a positive matrix, L Lt = matrix. */
function cholesky(matrix: readonly (readonly number[])[]): number[][] {
  const lower: number[][] = matrix.map((row) => row.map(() => 0))
  for (let i = 0; i < matrix.length; i++) {
    for (let j = 0; j <= i; j++) {
      let sum = matrix[i]![j]!
      for (let k = 0; k < j; k++) sum -= lower[i]![k]! * lower[j]![k]!
      lower[i]![j] = i === j ? Math.sqrt(sum) : sum / lower[j]![j]!
    }
  }
  return lower
}

/** Solves L y = b. */
function forward(lower: readonly (readonly number[])[], b: readonly number[]): number[] {
  const y: number[] = []
  for (let i = 0; i < b.length; i++) {
    let sum = b[i]!
    for (let k = 0; k < i; k++) sum -= lower[i]![k]! * y[k]!
    y.push(sum / lower[i]![i]!)
  }
  return y
}

/** Covariance of the rows among each other, noise included. */
function gram(rows: readonly TrainingRow[], group: AnchorGroup, fitted: Fitted): number[][] {
  return rows.map((a, i) =>
    rows.map((b, j) => fitted.factor ** 2 * covariance(a.place, b.place, group) + (i === j ? fitted.noiseDb ** 2 : 0)),
  )
}

/** The inverse of the rows' covariance. */
function inverseGram(rows: readonly TrainingRow[], group: AnchorGroup, fitted: Fitted): number[][] {
  const lower = cholesky(gram(rows, group, fitted))
  const columns = rows.map((_, j) =>
    forward(
      lower,
      rows.map((__, i) => (i === j ? 1 : 0)),
    ),
  )
  return columns.map((a) => columns.map((b) => a.reduce((sum, value, k) => sum + value * b[k]!, 0)))
}

/** Both numbers are expected near 1 (factor: within a factor of 1.5, noise: 1.3). @source own choice */
const EXPECTED = { factorSpread: 0.4, noiseSpread: 0.25 }

/** Log of how likely these residuals are, and the two numbers beforehand. */
function logPosterior(rows: readonly TrainingRow[], group: AnchorGroup, fitted: Fitted): number {
  const lower = cholesky(gram(rows, group, fitted))
  const white = forward(
    lower,
    rows.map(({ residual }) => residual),
  )
  const fit = white.reduce((sum, value, i) => sum + value ** 2 / 2 + Math.log(lower[i]![i]!), 0)
  const factor = Math.log(fitted.factor) / EXPECTED.factorSpread
  const noise = Math.log(fitted.noiseDb) / EXPECTED.noiseSpread
  return -fit - (factor ** 2 + noise ** 2) / 2
}

const FACTORS = Array.from({ length: 31 }, (_, i) => Number((0.6 * 1.06 ** i).toFixed(3)))
const NOISES = Array.from({ length: 21 }, (_, i) => Number((0.6 * 1.06 ** i).toFixed(3)))

/** The most likely factor and noise on a grid: the only numbers fitted, on these rows only. */
export function fittedOn(all: readonly TrainingRow[], group: AnchorGroup): Fitted {
  const rows = all.filter(({ isLeanedOn }) => isLeanedOn)
  let best: Fitted = { factor: 1, noiseDb: 1 }
  let most = Number.NEGATIVE_INFINITY
  for (const factor of FACTORS) {
    for (const noiseDb of NOISES) {
      const likely = logPosterior(rows, group, { factor, noiseDb })
      if (likely > most) {
        most = likely
        best = { factor, noiseDb }
      }
    }
  }
  return best
}

/** A group conditioned on those of these rows that may be leaned on, with these numbers. */
export function conditioned(all: readonly TrainingRow[], group: AnchorGroup, fitted: Fitted): TrainedGroup {
  const rows = all.filter(({ isLeanedOn }) => isLeanedOn)
  const inverse = inverseGram(rows, group, fitted)
  return {
    factor: fitted.factor,
    rows: rows.map(({ id, stc, place }, i) => ({
      id,
      stc,
      ...place,
      weight: inverse[i]!.reduce((sum, value, j) => sum + value * rows[j]!.residual, 0),
    })),
    inverse: inverse.map((line, i) => line.slice(0, i + 1)),
  }
}
