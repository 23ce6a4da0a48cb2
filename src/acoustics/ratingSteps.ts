import { BANDS_HZ } from '#acoustics/bands.ts'
import type { Decibels } from '#units/quantity.ts'

/** Guards the last bit when tenths are compared as binary fractions. */
export const ROUNDING_GUARD = 1e-9

/** Rounds to a multiple of `step`, halves upward. */
export function roundHalfUp(value: number, step: number): number {
  const perUnit = Math.round(1 / step)
  return Math.floor(value * perUnit + 0.5 + ROUNDING_GUARD) / perUnit
}

export function sumOf(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0)
}

/** Values over a rule's own bands, set into all 21 with `outside` elsewhere. */
export function overAllBands<Value>(
  values: readonly Decibels[],
  firstBand: number,
  outside: Value,
): (Decibels | Value)[] {
  return BANDS_HZ.map((_, band) => values[band - firstBand] ?? outside)
}
