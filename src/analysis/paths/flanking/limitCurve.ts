import { BANDS_HZ, type BandCurve, bandIndex } from '#acoustics/bands.ts'
import { STC } from '#acoustics/rating.ts'
import table from '#analysis/data/junctions.json' with { type: 'json' }
import type { Decibels } from '#units/quantity.ts'

/** A contour may be missed by 2 dB in all its 16 bands, so the curve that has a number lies two below its contour. */
const BELOW_CONTOUR: Decibels = 2

/**
 * A single number laid along the STC contour so that the curve has that number again; level above it, falling below it.
 * @source data/junctions.json, own choice
 */
export function limitCurve(stc: Decibels): BandCurve {
  const relative = STC.contourRelativeTo500HzDb
  const first = bandIndex(STC.firstBandHz)
  return BANDS_HZ.map((_, band) => {
    const below = Math.max(0, first - band) * table.extension.belowPerThirdDb
    const at = Math.min(Math.max(0, band - first), relative.length - 1)
    return stc - BELOW_CONTOUR + relative[at]! - below
  })
}
