import { BANDS_HZ, type BandCurve } from '#acoustics/bands.ts'
import { lossOfFraction, transmittedFraction } from '#acoustics/curve.ts'
import type { SquareMetres } from '#units/quantity.ts'
import { invariant } from '#units/result.ts'

/** One of several parts side by side in the same surface. */
export interface Part {
  /** > 0 */
  readonly areaM2: SquareMetres
  /** dB over BANDS_HZ */
  readonly lossDb: BandCurve
}

/**
 * Transmission loss of parts side by side (wall + door + window), each letting sound through its own area.
 * @param parts  at least one; areas in m2, > 0; curves in dB over BANDS_HZ
 * @returns dB over BANDS_HZ; never above the best part, never below the worst
 * @source Crocker, Engineering Acoustics (2021), eqs. 12.60-12.61, seen
 */
export function compositeLoss(parts: readonly Part[]): BandCurve {
  const whole = parts.reduce((sum, part) => sum + part.areaM2, 0)
  invariant(whole > 0 && parts.every((part) => part.areaM2 > 0), 'every part of a surface has an area')
  return BANDS_HZ.map((_, band) => {
    const through = parts.reduce((sum, part) => sum + part.areaM2 * transmittedFraction(part.lossDb[band]!), 0)
    return lossOfFraction(through / whole)
  })
}
