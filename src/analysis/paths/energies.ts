import { BANDS_HZ, type BandCurve, OCTAVES_HZ, type OctaveCurve } from '#acoustics/bands.ts'
import { lossOfFraction, octaveLoss, transmittedFraction } from '#acoustics/curve.ts'
import type { Path } from '#analysis/paths/answer.ts'
import { type Hearing, heardTerm } from '#analysis/paths/hearing.ts'
import type { Decibels } from '#units/quantity.ts'

/** Two-sided 95 % of a normal distribution. */
export const SDS_95 = 1.96

/** What one path brings to a receiver over what the source has, as energy: 1 is as loud as the source. */
export interface PathEnergy {
  readonly path: Path
  /** Over OCTAVES_HZ: in the middle of its range and at both ends of the 95 %. */
  readonly middle: readonly number[]
  readonly high: readonly number[]
  readonly low: readonly number[]
  /** Over BANDS_HZ, in the middle. */
  readonly thirds: readonly number[]
}

/** What of a path's curves depends on neither area nor receiver. */
interface Fractions {
  readonly middle: readonly number[]
  readonly high: readonly number[]
  readonly low: readonly number[]
  readonly thirds: readonly number[]
}

/** By loss, then by spread: a hand that drags a wall changes neither curve. */
const known = new WeakMap<BandCurve, WeakMap<BandCurve, Fractions>>()

/** Root mean square over the three thirds of every octave: a third's error is taken to be its neighbours'. */
export function octaveSd(sdDb: BandCurve): OctaveCurve {
  return OCTAVES_HZ.map((_, octave) => {
    const thirds = sdDb.slice(3 * octave, 3 * octave + 3)
    return Math.sqrt(thirds.reduce((sum, sd) => sum + sd ** 2, 0) / thirds.length)
  })
}

function fractionsOf(lossDb: BandCurve, sdDb: BandCurve): Fractions {
  const bySpread = known.get(lossDb) ?? new WeakMap<BandCurve, Fractions>()
  known.set(lossDb, bySpread)
  const found = bySpread.get(sdDb)
  if (found) return found
  const loss = octaveLoss(lossDb)
  const sd = octaveSd(sdDb)
  const fractions = {
    middle: loss.map(transmittedFraction),
    high: loss.map((value, octave) => transmittedFraction(value - SDS_95 * sd[octave]!)),
    low: loss.map((value, octave) => transmittedFraction(value + SDS_95 * sd[octave]!)),
    thirds: lossDb.map(transmittedFraction),
  }
  bySpread.set(sdDb, fractions)
  return fractions
}

/**
 * What a path brings to a receiver: S x 10^(-loss/10) times what its place hears of it.
 * @source METHOD section 10; octaves are the energy mean of their thirds
 */
export function pathEnergy(path: Path, hearing: Hearing): PathEnergy {
  const heard = 10 ** (heardTerm(path, hearing) / 10)
  const { middle, high, low, thirds } = fractionsOf(path.lossDb, path.sdDb)
  const times = (fractions: readonly number[]) => fractions.map((fraction) => heard * fraction)
  return { path, middle: times(middle), high: times(atMost(path, high)), low: times(low), thirds: times(thirds) }
}

/** Nothing lets more through than an open hole of its own size; of a leak that very size is what is uncertain. */
function atMost({ kind }: Path, fractions: readonly number[]): readonly number[] {
  return kind === 'leak' ? fractions : fractions.map((fraction) => Math.min(1, fraction))
}

/** Energies of several paths together, place by place; of none: nothing anywhere. */
export function together(energies: readonly (readonly number[])[], length: number): readonly number[] {
  const sum = new Array<number>(length).fill(0)
  for (const energy of energies) {
    for (let at = 0; at < length; at++) sum[at]! += energy[at]!
  }
  return sum
}

/** Level at the source less level at the receiver, dB over BANDS_HZ; of no path at all there is none. */
export function noiseReduction(energies: readonly PathEnergy[]): BandCurve {
  return together(
    energies.map(({ thirds }) => thirds),
    BANDS_HZ.length,
  ).map((energy): Decibels => lossOfFraction(energy))
}
