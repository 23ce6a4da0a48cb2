import { BANDS_HZ, type BandCurve, bandIndex } from '#acoustics/bands.ts'
import table from '#acoustics/data/ratings.json' with { type: 'json' }
import { overAllBands, ROUNDING_GUARD, roundHalfUp, sumOf } from '#acoustics/ratingSteps.ts'
import { adaptationTerm, rateOitc, type SpectrumRating } from '#acoustics/spectrumRating.ts'
import type { Decibels, Hertz } from '#units/quantity.ts'
import { invariant } from '#units/result.ts'

export type ContourName = keyof typeof table.contours

/** How a reference contour is pushed up under a curve until it no longer fits. Numbers stand in data/ratings.json. */
export interface ContourRule {
  readonly name: ContourName
  readonly firstBandHz: Hertz
  /** dB against the contour's value at 500 Hz, from firstBandHz on */
  readonly contourRelativeTo500HzDb: readonly Decibels[]
  /** Losses are rounded to this many dB, half up, before anything else; null: not at all. */
  readonly roundLossToDb: Decibels | null
  readonly valueStepDb: Decibels
  readonly maxTotalShortfallDb: Decibels
  readonly maxBandShortfallDb: Decibels | null
}

/** A single-number rating with the evidence for it. */
export interface Rating {
  readonly name: ContourName
  readonly value: Decibels
  /** dB the curve falls short of the contour, over BANDS_HZ; 0 where it does not or where the rule does not look. */
  readonly shortfalls: BandCurve
  readonly totalShortfallDb: Decibels
  /** The contour at `value`, dB over BANDS_HZ; null where the rule does not look. */
  readonly contour: readonly (Decibels | null)[]
  /** What one step more would have broken: the sum of shortfalls, or the limit on a single one. */
  readonly limitedBy: 'total' | 'band'
  /** The band that falls shortest one step higher: where a better curve would help first, Hz. */
  readonly limitingBandHz: Hertz
}

/** A rule of data/ratings.json by its name. */
export function contourRule(name: ContourName): ContourRule {
  return { name, ...table.contours[name] }
}

/** ASTM E413 with the 8 dB rule (editions before 2022); whole dB. Contour from memory, see data/ratings.json. */
export const STC = contourRule('STC')
/** ASTM E413-22 as recalled: the same without the 8 dB rule. */
export const STC_NO_8DB_RULE = contourRule('STC without the 8 dB rule')
/** STC on unrounded losses in 0.1 dB steps: for statistics only. */
export const STC_IN_TENTHS = contourRule('STC in tenths')
/** ISO 717-1 Rw; losses to 0.1 dB, whole dB out. */
export const RW = contourRule('Rw')

function shortfallsAt(rounded: readonly Decibels[], value: Decibels, rule: ContourRule): readonly Decibels[] {
  return rule.contourRelativeTo500HzDb.map((relative, i) => Math.max(0, value + relative - rounded[i]!))
}

function brokenLimit(shortfalls: readonly Decibels[], rule: ContourRule): 'total' | 'band' | null {
  if (sumOf(shortfalls) > rule.maxTotalShortfallDb + ROUNDING_GUARD) return 'total'
  const limit = rule.maxBandShortfallDb
  return limit !== null && shortfalls.some((value) => value > limit + ROUNDING_GUARD) ? 'band' : null
}

/**
 * The rating of a transmission-loss curve by a contour rule, with the contour and every shortfall.
 * @param loss  dB over BANDS_HZ, finite
 * @returns the highest value whose contour still fits; may be negative for a curve that stops nothing
 * @source ASTM E413; ISO 717-1:2020 clause 4; memory, checked on published examples (tests/reference/acoustics)
 */
export function rate(loss: BandCurve, rule: ContourRule): Rating {
  invariant(loss.length === BANDS_HZ.length && loss.every(Number.isFinite), 'a rated curve has 21 finite bands')
  const firstBand = bandIndex(rule.firstBandHz)
  const step = rule.valueStepDb
  const heard = loss
    .slice(firstBand, firstBand + rule.contourRelativeTo500HzDb.length)
    .map((value) => (rule.roundLossToDb === null ? value : roundHalfUp(value, rule.roundLossToDb)))
  // Start where nothing falls short: below the lowest band by the contour's highest point.
  let steps = Math.floor((Math.min(...heard) - Math.max(...rule.contourRelativeTo500HzDb)) / step)
  const perUnit = Math.round(1 / step)
  while (brokenLimit(shortfallsAt(heard, (steps + 1) / perUnit, rule), rule) === null) steps += 1
  const value = steps / perUnit
  const shortfalls = shortfallsAt(heard, value, rule)
  const next = shortfallsAt(heard, (steps + 1) / perUnit, rule)
  return {
    name: rule.name,
    value,
    shortfalls: overAllBands(shortfalls, firstBand, 0),
    totalShortfallDb: sumOf(shortfalls),
    contour: overAllBands(
      rule.contourRelativeTo500HzDb.map((relative) => value + relative),
      firstBand,
      null,
    ),
    limitedBy: brokenLimit(next, rule) ?? 'total',
    limitingBandHz: BANDS_HZ[firstBand + next.indexOf(Math.max(...next))]!,
  }
}

/** Every single number this program gives for one curve, each with the evidence for it. */
export interface RatingEvidence {
  readonly stc: Rating
  readonly stcNo8dbRule: Rating
  readonly rw: Rating
  readonly c: SpectrumRating
  readonly ctr: SpectrumRating
  readonly c50: SpectrumRating
  readonly ctr50: SpectrumRating
  readonly oitc: SpectrumRating
}

/** All ratings of one curve with contours, shortfalls and what every band lets through; `loss` in dB over BANDS_HZ. */
export function rateWithEvidence(loss: BandCurve): RatingEvidence {
  const rw = rate(loss, RW)
  return {
    stc: rate(loss, STC),
    stcNo8dbRule: rate(loss, STC_NO_8DB_RULE),
    rw,
    c: adaptationTerm(loss, rw.value, 'C'),
    ctr: adaptationTerm(loss, rw.value, 'Ctr'),
    c50: adaptationTerm(loss, rw.value, 'C50-5000'),
    ctr50: adaptationTerm(loss, rw.value, 'Ctr50-5000'),
    oitc: rateOitc(loss),
  }
}

/** The single numbers alone, whole dB. */
export type RatingSet = Readonly<Record<keyof RatingEvidence, Decibels>>

/** All ratings of one curve as numbers; `loss` in dB over BANDS_HZ. */
export function rateAll(loss: BandCurve): RatingSet {
  const { stc, stcNo8dbRule, rw, c, ctr, c50, ctr50, oitc } = rateWithEvidence(loss)
  return {
    stc: stc.value,
    stcNo8dbRule: stcNo8dbRule.value,
    rw: rw.value,
    c: c.value,
    ctr: ctr.value,
    c50: c50.value,
    ctr50: ctr50.value,
    oitc: oitc.value,
  }
}
