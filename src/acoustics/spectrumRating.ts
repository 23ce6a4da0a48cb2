import { BANDS_HZ, type BandCurve, bandIndex } from '#acoustics/bands.ts'
import table from '#acoustics/data/ratings.json' with { type: 'json' }
import { overAllBands, roundHalfUp, sumOf } from '#acoustics/ratingSteps.ts'
import type { Decibels, Hertz } from '#units/quantity.ts'
import { invariant } from '#units/result.ts'

export type SpectrumName = keyof typeof table.spectra

/** A single number made by sending an A-weighted source through a curve, with what every band lets through. */
export interface SpectrumRating {
  readonly name: SpectrumName | 'OITC'
  readonly value: Decibels
  /** A-weighted level of the source less what comes through, dB, before it is rounded (and before Rw is taken off). */
  readonly droppedDb: Decibels
  /** A-weighted level behind the construction, dB over BANDS_HZ; null where the rule does not look. */
  readonly throughDb: readonly (Decibels | null)[]
  /** Share of the A-weighted energy that comes through, 0..1 over BANDS_HZ; the shares sum to 1. */
  readonly shares: readonly number[]
  /** The band that lets most through: where a better curve would help first, Hz. */
  readonly limitingBandHz: Hertz
}

/** An A-weighted source, dB band by band from `firstBandHz` on. */
interface Source {
  readonly firstBandHz: Hertz
  readonly levelDb: readonly Decibels[]
}

function energyOf(level: Decibels): number {
  return 10 ** (level / 10)
}

/** What a source sends through the curve, band by band. */
function sendThrough(
  loss: BandCurve,
  { firstBandHz, levelDb }: Source,
): Pick<SpectrumRating, 'throughDb' | 'shares' | 'limitingBandHz'> & { readonly totalDb: Decibels } {
  invariant(loss.length === BANDS_HZ.length && loss.every(Number.isFinite), 'a rated curve has 21 finite bands')
  const firstBand = bandIndex(firstBandHz)
  const through = levelDb.map((level, i) => level - loss[firstBand + i]!)
  const energies = through.map(energyOf)
  const total = sumOf(energies)
  return {
    throughDb: overAllBands(through, firstBand, null),
    shares: overAllBands(
      energies.map((energy) => energy / total),
      firstBand,
      0,
    ),
    limitingBandHz: BANDS_HZ[firstBand + through.indexOf(Math.max(...through))]!,
    totalDb: 10 * Math.log10(total),
  }
}

/**
 * Spectrum adaptation term: what to add to Rw for a source with that spectrum, whole dB. Losses are taken to 0.1 dB in
 * every range, 50-5000 Hz too, and the A-weighted drop is rounded to a whole dB before Rw is taken off.
 * @param loss  dB over BANDS_HZ
 * @param rw  the curve's own Rw, dB
 * @source ISO 717-1:2020 clause 5 and Annex B, memory; reproduces Annex C, seen
 */
export function adaptationTerm(loss: BandCurve, rw: Decibels, name: SpectrumName): SpectrumRating {
  const heard = loss.map((value) => roundHalfUp(value, table.contours.Rw.roundLossToDb))
  // The standard's spectra are A-weighted and sum to 0 dB, so the drop is what comes through with its sign changed.
  const { totalDb, ...evidence } = sendThrough(heard, table.spectra[name])
  return { name, value: roundHalfUp(-totalDb, 1) - rw, droppedDb: -totalDb, ...evidence }
}

/**
 * Outdoor-indoor transmission class, whole dB: the A-weighted drop of a transport noise.
 * @param loss  dB over BANDS_HZ
 * @source ASTM E1332, memory
 */
export function rateOitc(loss: BandCurve): SpectrumRating {
  const { sourceLevelDb, aWeightingDb, firstBandHz } = table.outdoorIndoor
  const levelDb = sourceLevelDb.map((level, i) => level + aWeightingDb[i]!)
  const { totalDb, ...evidence } = sendThrough(loss, { firstBandHz, levelDb })
  const droppedDb = 10 * Math.log10(sumOf(levelDb.map(energyOf))) - totalDb
  return { name: 'OITC', value: roundHalfUp(droppedDb, 1), droppedDb, ...evidence }
}
