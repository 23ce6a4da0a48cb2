import { BANDS_HZ, type BandCurve, OCTAVES_HZ, type OctaveCurve } from '#acoustics/bands.ts'
import type { Decibels } from '#units/quantity.ts'
import { invariant } from '#units/result.ts'

/** Highest loss shown in any band: beyond it other paths always carry more. @source our own choice */
export const SHOWN_LOSS_CAP_DB: Decibels = 80

/** A curve with the same value in every band, dB. */
export function flatCurve(value: Decibels): BandCurve {
  return BANDS_HZ.map(() => value)
}

/** A curve moved up or down by the same number of dB in every band. */
export function shiftCurve(curve: BandCurve, by: Decibels): BandCurve {
  return curve.map((value) => value + by)
}

/** A curve as it is shown: no band above SHOWN_LOSS_CAP_DB. */
export function capForDisplay(curve: BandCurve): BandCurve {
  return curve.map((value) => Math.min(value, SHOWN_LOSS_CAP_DB))
}

/** Fraction of the sound energy a loss lets through, 0..1; `loss` in dB. */
export function transmittedFraction(loss: Decibels): number {
  return 10 ** (-loss / 10)
}

/** Loss in dB of a transmitted fraction > 0. */
export function lossOfFraction(fraction: number): Decibels {
  return -10 * Math.log10(fraction)
}

/**
 * Transmission loss in octaves: each the energy mean of its three thirds, as if the sound were equally strong in them.
 * @param loss  dB over BANDS_HZ
 * @returns dB over OCTAVES_HZ
 * @source plain energy mean, own derivation
 */
export function octaveLoss(loss: BandCurve): OctaveCurve {
  invariant(loss.length === BANDS_HZ.length, 'a curve has 21 bands')
  return OCTAVES_HZ.map((_, octave) => {
    const thirds = loss.slice(3 * octave, 3 * octave + 3)
    const mean = thirds.reduce((sum, value) => sum + transmittedFraction(value), 0) / thirds.length
    return lossOfFraction(mean)
  })
}
