import type { Decibels } from '#units/quantity.ts'

/** Two-sided 95 % of a normal distribution. */
const SDS_95 = 1.96

/** Half the likely range that belongs to one standard deviation. */
export function likelyHalf(standardDeviation: Decibels): Decibels {
  return SDS_95 * standardDeviation
}
