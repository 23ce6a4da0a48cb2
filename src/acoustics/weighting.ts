import type { OctaveCurve } from '#acoustics/bands.ts'
import table from '#acoustics/data/weighting.json' with { type: 'json' }
import { energySum } from '#acoustics/levels.ts'
import type { Decibels } from '#units/quantity.ts'
import { invariant } from '#units/result.ts'

/** A-weighting, dB over OCTAVES_HZ. */
export const A_WEIGHTS: OctaveCurve = table.A.weightDb
/** C-weighting, dB over OCTAVES_HZ. */
export const C_WEIGHTS: OctaveCurve = table.C.weightDb

/**
 * Weighted level of the octaves that are known, dB; the others are left out, so it is a least value where some are missing.
 * @param levels  dB over OCTAVES_HZ; null: not known
 * @returns null where no octave is known
 */
export function weightedLevel(levels: readonly (Decibels | null)[], weights: OctaveCurve): Decibels | null {
  invariant(levels.length === weights.length, 'as many levels as weights')
  const heard = levels.flatMap((level, octave) => (level === null ? [] : [level + weights[octave]!]))
  return heard.length === 0 ? null : energySum(heard)
}
