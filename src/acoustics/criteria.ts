import { OCTAVES_HZ, type OctaveCurve } from '#acoustics/bands.ts'
import table from '#acoustics/data/criteria.json' with { type: 'json' }
import type { Decibels, Hertz } from '#units/quantity.ts'
import { invariant } from '#units/result.ts'

const NC = table.NC.curves
/** Lowest and highest NC curve in print. */
export const NC_LOWEST = NC[0]!.index
export const NC_HIGHEST = NC.at(-1)!.index

/** Place of the pair of printed curves an index lies between; outside them the first or the last pair. */
function lowerCurve(index: number): number {
  const above = NC.findIndex((curve) => curve.index > index)
  return above < 0 ? NC.length - 2 : Math.max(0, above - 1)
}

/**
 * Levels of a noise criterion curve, dB over OCTAVES_HZ. Between two printed curves in proportion; below NC-15 and
 * above NC-70, where none is printed, it goes on as the nearest two do (our own choice, said by `isPrintedNc`).
 * @param index  any finite number
 * @source data/criteria.json, seen
 */
export function ncCurve(index: number): OctaveCurve {
  invariant(Number.isFinite(index), 'the index of a curve is a number')
  const at = lowerCurve(index)
  const [low, high] = [NC[at]!, NC[at + 1]!]
  const share = (index - low.index) / (high.index - low.index)
  return low.levelDb.map((level, octave) => level + share * (high.levelDb[octave]! - level))
}

/** False where an NC curve is not printed and only continued from the nearest. */
export function isPrintedNc(index: number): boolean {
  return index >= NC_LOWEST && index <= NC_HIGHEST
}

/**
 * Levels of a noise rating curve, dB over OCTAVES_HZ: a + b x index, for any index.
 * @source data/criteria.json, seen
 */
export function nrCurve(index: number): OctaveCurve {
  invariant(Number.isFinite(index), 'the index of a curve is a number')
  return table.NR.a.map((a, octave) => a + table.NR.b[octave]! * index)
}

/** NC of a spectrum by tangency, and the octave that touches. */
export interface NcRating {
  /** Between printed curves in proportion, unrounded; null: below the lowest or above the highest printed curve. */
  readonly index: number | null
  readonly governingHz: Hertz
  /** "NC-46, set by 500 Hz", "below NC-15", "above NC-70, set by 63 Hz". */
  readonly words: string
}

/** Index at which a level touches its octave, continued beyond the printed curves. */
function touching(level: Decibels, octave: number): number {
  const above = NC.findIndex((curve) => curve.levelDb[octave]! > level)
  const at = above < 0 ? NC.length - 2 : Math.max(0, above - 1)
  const [low, high] = [NC[at]!, NC[at + 1]!]
  const from = low.levelDb[octave]!
  return low.index + ((level - from) / (high.levelDb[octave]! - from)) * (high.index - low.index)
}

/** A whole number is not lifted by what arithmetic leaves over. */
const ROUNDING = 1e-9

/**
 * NC of a spectrum: the lowest curve that no octave passes. Words round it up to a whole number.
 * @param levels  dB over OCTAVES_HZ; null: not known, and not judged
 * @returns null where no octave is known
 * @source tangency with interpolation as Crocker, Engineering Acoustics, Example 6.3, seen
 */
export function ncRating(levels: readonly (Decibels | null)[]): NcRating | null {
  invariant(levels.length === OCTAVES_HZ.length, 'a level for each octave')
  const indices = levels.map((level, octave) => (level === null ? Number.NEGATIVE_INFINITY : touching(level, octave)))
  const index = Math.max(...indices)
  if (index === Number.NEGATIVE_INFINITY) return null
  const governingHz = OCTAVES_HZ[indices.indexOf(index)]!
  if (index < NC_LOWEST) return { index: null, governingHz, words: `below NC-${NC_LOWEST}` }
  if (index > NC_HIGHEST) return { index: null, governingHz, words: `above NC-${NC_HIGHEST}, set by ${governingHz} Hz` }
  return { index, governingHz, words: `NC-${Math.ceil(index - ROUNDING)}, set by ${governingHz} Hz` }
}
