import { OCTAVES_HZ, type OctaveCurve } from '#acoustics/bands.ts'
import { type PathEnergy, SDS_95, together } from '#analysis/paths/energies.ts'
import type { Decibels } from '#units/quantity.ts'

/** A level with both ends of its 95 % range, dB. */
export interface Ranged {
  readonly middle: Decibels
  readonly high: Decibels
  readonly low: Decibels
}

/** What all paths bring together, by octave, as energy over the source's. */
export interface Arriving {
  readonly middle: readonly number[]
  readonly high: readonly number[]
  readonly low: readonly number[]
}

export function arriving(energies: readonly PathEnergy[]): Arriving {
  const of = (end: 'middle' | 'high' | 'low') =>
    together(
      energies.map((energy) => energy[end]),
      OCTAVES_HZ.length,
    )
  return { middle: of('middle'), high: of('high'), low: of('low') }
}

const inDb = (energy: number): Decibels => 10 * Math.log10(energy)

/**
 * A level and its ends. Errors of paths go together (one method, one builder), so all of them at their end at once are
 * the end; the source's error is another's, so the two add as a root of squares.
 * @source own choice; it keeps a better path from ever lowering the lower end of a margin, and halves of a path one path
 */
function ranged(middle: number, high: number, low: number, sourceSdDb: Decibels): Ranged {
  const level = inDb(middle)
  const played = SDS_95 * sourceSdDb
  return {
    middle: level,
    high: level + Math.hypot(played, inDb(high) - level),
    low: level - Math.hypot(played, level - inDb(low)),
  }
}

/** Levels at the receiver by octave; null where the source has none. */
export function octaveLevels(
  { middle, high, low }: Arriving,
  playedDb: readonly (Decibels | null)[],
  sourceSdDb: Decibels,
): readonly (Ranged | null)[] {
  return playedDb.map((level, octave) => {
    if (level === null) return null
    const at = ranged(middle[octave]!, high[octave]!, low[octave]!, sourceSdDb)
    return { middle: level + at.middle, high: level + at.high, low: level + at.low }
  })
}

/** Weighted energy of every octave at the source; 0 where it has no level. */
export function playedEnergies(
  playedDb: readonly (Decibels | null)[],
  weightDb: OctaveCurve | null,
): readonly number[] {
  return playedDb.map((level, octave) => (level === null ? 0 : 10 ** ((level + (weightDb?.[octave] ?? 0)) / 10)))
}

/** Sum over octaves of what is played times what arrives of it. */
export function weighedSum(played: readonly number[], arrives: readonly number[]): number {
  return played.reduce((sum, energy, octave) => sum + energy * arrives[octave]!, 0)
}

/** The weighted level of all octaves that have one. */
export function overallLevel(
  { middle, high, low }: Arriving,
  playedDb: readonly (Decibels | null)[],
  weightDb: OctaveCurve,
  sourceSdDb: Decibels,
): Ranged {
  const played = playedEnergies(playedDb, weightDb)
  return ranged(weighedSum(played, middle), weighedSum(played, high), weighedSum(played, low), sourceSdDb)
}
