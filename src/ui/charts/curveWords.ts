import { BANDS_HZ, bandIndex } from '#acoustics/bands.ts'
import { SHOWN_LOSS_CAP_DB } from '#acoustics/curve.ts'
import type { Resonance } from '#acoustics/layered/namedResonances.ts'
import { type ContourRule, type Rating, STC } from '#acoustics/rating.ts'
import { publishedWords } from '#analysis/published.ts'
import type { SurfaceRating } from '#analysis/results.ts'
import { fixed } from '#units/format.ts'
import type { Decibels, Hertz } from '#units/quantity.ts'

const TOLD_HZ = [63, 125, 250, 500, 1000, 2000, 4000]

/** On the drawing there is room for two words. */
const SHORT_CAUSE = {
  'mass-air-mass': 'air gap resonates',
  'mass-spring': 'floor bounces',
  coincidence: 'coincidence',
} as const

/** The curve in words: what a chart says to somebody who cannot see it. */
export function curveWords(rating: SurfaceRating, name: string): string {
  const { lossDb, resonances } = rating.prediction
  const values = TOLD_HZ.map(
    (hz) => `${Math.min(SHOWN_LOSS_CAP_DB, Math.round(lossDb[BANDS_HZ.indexOf(hz)]!))} dB at ${hz} Hz`,
  )
  const dips = resonances.map(({ hz, cause }) => `${cause}, ${frequencyWords(hz)}`)
  const printed = publishedWords(rating.published)
  const said = [
    `${name}: ${values.join(', ')}.`,
    dips.length > 0 ? `Dips: ${dips.join('; ')}.` : '',
    `STC ${rating.stc}, ${limitWords(rating.evidence.stc, STC)}.`,
    `${printed.charAt(0).toUpperCase()}${printed.slice(1)}.`,
  ]
  return said.filter((part) => part !== '').join(' ')
}

/** 94 Hz; 2.3 kHz */
export function frequencyWords(hz: Hertz): string {
  return hz < 1000 ? `${Math.round(hz)} Hz` : `${Math.round(hz / 100) / 10} kHz`
}

/** A dip's name on the drawing: air gap resonates, 94 Hz. */
export function dipWords({ hz, kind }: Resonance): string {
  return `${SHORT_CAUSE[kind]}, ${frequencyWords(hz)}`
}

/** What keeps a contour rating from being one step higher, to follow "STC 33": "limited by 125 Hz: ...". */
export function limitWords(rating: Rating, rule: ContourRule): string {
  const { limitedBy, limitingBandHz, totalShortfallDb, shortfalls } = rating
  if (limitedBy === 'band') {
    const short = shortfalls[bandIndex(limitingBandHz)]!
    return `limited by ${limitingBandHz} Hz: ${decibels(short)} short of the contour, the most one band may fall short`
  }
  const most = rule.maxTotalShortfallDb
  return `limited by the sum: all bands together fall ${decibels(totalShortfallDb)} short of the contour and ${most} dB is the most; ${limitingBandHz} Hz falls shortest`
}

/** 8 dB; 31.8 dB */
export function decibels(value: Decibels): string {
  return `${fixed(value, 1).replace(/\.0$/, '')} dB`
}
