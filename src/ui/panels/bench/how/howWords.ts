import { bandIndex } from '#acoustics/bands.ts'
import { type Rating, STC } from '#acoustics/rating.ts'
import type { SpectrumRating } from '#acoustics/spectrumRating.ts'
import type { SurfaceRating } from '#analysis/results.ts'
import { decibels } from '#ui/charts/curveWords.ts'
import { likelyWords } from '#ui/panels/words.ts'
import { fixed } from '#units/format.ts'

/** "physics 57, anchored 55": what the calculation gives and what print makes of it. */
export function anchorWords({ physicsStc, stc, prediction, published }: SurfaceRating): string {
  const { shiftDb, isNear } = prediction.anchor
  const numbers = `Physics ${physicsStc}, anchored ${stc}`
  if (!isNear && published.length > 0) {
    return `${numbers}: measurements of this kind are compared with the calculation, never leaned on, so it stands as calculated.`
  }
  if (!isNear)
    return `${numbers}: no published measurement near this build-up, so it stands as calculated${moved(shiftDb, ' but for ')}.`
  const shift = moved(shiftDb, '')
  if (shift === '') return `${numbers}: published measurements of similar build-ups agree with the calculation.`
  return `${numbers}: published measurements of similar build-ups move the whole curve by ${shift}.`
}

/** +1.3 dB; nothing where it would read 0.0. */
function moved(shiftDb: number, lead: string): string {
  const size = fixed(Math.abs(shiftDb), 1)
  return size === '0.0' ? '' : `${lead}${shiftDb < 0 ? '−' : '+'}${size} dB`
}

/** How the 95 % likely range is made. */
export function rangeWords(rating: SurfaceRating): string {
  const { prediction, plusMinus95, stc } = rating
  const sd = fixed(prediction.spreadStcDb, 1)
  const near = prediction.anchor.isNear
    ? 'what is left of the spread beside the published rows'
    : 'wide, as nothing published is near'
  return `STC ${stc}, ${likelyWords(rating)}: 19 laboratory measurements in 20 of this build-up are expected there. It is 1.96 times a standard deviation of ${sd} (${near}), so ±${fixed(plusMinus95, 1)}, in whole STC outward. That deviation is never taken below 2.0, because laboratories differ by as much for the same wall. A single band is less sure than the rating: its own deviation stands in the table. No range is given for Rw and OITC: what was compared with print is STC.`
}

/** For a table: "125 Hz, 8 dB short, the most for one band"; "the sum, 31.8 of at most 32 dB; 3150 Hz falls shortest". */
export function contourLimitWords({ limitedBy, limitingBandHz, shortfalls, totalShortfallDb }: Rating): string {
  if (limitedBy === 'band') {
    return `${limitingBandHz} Hz, ${decibels(shortfalls[bandIndex(limitingBandHz)]!)} short: the most for one band`
  }
  return `the sum, ${decibels(totalShortfallDb)} of at most ${STC.maxTotalShortfallDb}; ${limitingBandHz} Hz falls shortest`
}

/** Where most of a source comes through: "3150 Hz lets most through, 24 %". */
export function spectrumLimitWords({ limitingBandHz, shares }: SpectrumRating): string {
  return `${limitingBandHz} Hz lets most through, ${percent(shares[bandIndex(limitingBandHz)]!)} %`
}

/** A share in whole percent; what rounds to nothing is said to be less than 1; empty: none. */
export function percent(share: number): string {
  if (share === 0) return ''
  const whole = Math.round(share * 100)
  return whole === 0 ? '<1' : String(whole)
}
