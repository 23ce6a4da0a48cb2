import { BANDS_HZ, bandIndex } from '#acoustics/bands.ts'
import table from '#acoustics/data/ratings.json' with { type: 'json' }
import { type ContourRule, contourRule, type Rating, rate } from '#acoustics/rating.ts'
import type { Decibels, Hertz } from '#units/quantity.ts'
import { fail, ok, type Result } from '#units/result.ts'

/** Noise isolation class with the 8 dB rule; whole dB. See data/ratings.json. */
export const NIC = contourRule('NIC')
/** The same without the 8 dB rule, as E413-22 is recalled. */
export const NIC_NO_8DB_RULE = contourRule('NIC without the 8 dB rule')

/** Why a noise-reduction curve has no NIC. */
export interface NoiseReductionProblem {
  readonly kind: 'wrong-length' | 'missing-bands'
  /** Bands that would have to be measured, Hz; empty for a list of the wrong length. */
  readonly bandsHz: readonly Hertz[]
  /** A full sentence. */
  readonly message: string
}

const FIRST_BAND = bandIndex(table.contours.NIC.firstBandHz)
const NEEDED_HZ = BANDS_HZ.slice(FIRST_BAND, FIRST_BAND + table.contours.NIC.contourRelativeTo500HzDb.length)

/**
 * Noise isolation class of what was measured between two rooms: everything counts, flanking and leaks too.
 * @param noiseReduction  level difference between the rooms, dB over BANDS_HZ; null where a band was not measured
 * @returns contour, shortfalls and limiting band, or which bands are missing; bands the rule does not look at may be
 * @source ASTM E336 by ASTM E413, 125-4000 Hz: scope seen, contour from memory
 */
export function rateNic(
  noiseReduction: readonly (Decibels | null)[],
  rule: ContourRule = NIC,
): Result<Rating, NoiseReductionProblem> {
  if (noiseReduction.length !== BANDS_HZ.length) {
    const message = `A noise-reduction curve has 21 values, one for each one-third octave from 50 to 5000 Hz (null where it was not measured); this one has ${noiseReduction.length}.`
    return fail({ kind: 'wrong-length', bandsHz: [], message })
  }
  const isMissing = (hz: Hertz) => !Number.isFinite(noiseReduction[bandIndex(hz)] ?? Number.NaN)
  const missing = NEEDED_HZ.filter(isMissing)
  if (missing.length > 0) return fail({ kind: 'missing-bands', bandsHz: missing, message: missingSentence(missing) })
  // Bands the rule does not look at have no say, so any number does there.
  return ok(
    rate(
      noiseReduction.map((value) => (value !== null && Number.isFinite(value) ? value : 0)),
      rule,
    ),
  )
}

function missingSentence(bands: readonly Hertz[]): string {
  const list = bands.length === 1 ? `${bands[0]}` : `${bands.slice(0, -1).join(', ')} and ${bands.at(-1)}`
  return `NIC needs the noise reduction in every one-third octave from 125 to 4000 Hz; ${list} Hz ${bands.length === 1 ? 'is' : 'are'} missing.`
}
