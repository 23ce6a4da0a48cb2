import { OCTAVES_HZ } from '#acoustics/bands.ts'
import type { Verdict } from '#analysis/paths/answer.ts'
import type { PathEnergy } from '#analysis/paths/energies.ts'
import {
  arriving,
  octaveLevels,
  overallLevel,
  playedEnergies,
  type Ranged,
  weighedSum,
} from '#analysis/paths/levels.ts'
import type { Judged } from '#analysis/paths/limits.ts'
import type { Decibels } from '#units/quantity.ts'

/** Limit less level, with both ends of its 95 % range, and the octave that decides. */
export interface Margin {
  readonly middle: Decibels
  readonly low: Decibels
  readonly high: Decibels
  /** Of a curve the tightest octave, of one weighted level the one that brings most; place in OCTAVES_HZ. */
  readonly decides: number
}

/** What is played, as the margin asks for it. */
export interface Playing {
  readonly levelsDb: readonly (Decibels | null)[]
  readonly sdDb: Decibels
}

/** Margin at a receiver that something reaches. */
export function marginOf(energies: readonly PathEnergy[], { levelsDb, sdDb }: Playing, judged: Judged): Margin {
  const arrives = arriving(energies)
  if (judged.kind === 'overall') {
    const level = overallLevel(arrives, levelsDb, judged.weightDb, sdDb)
    const brings = playedEnergies(levelsDb, judged.weightDb).map((energy, octave) => energy * arrives.middle[octave]!)
    return { ...below(judged.limitDb, level), decides: brings.indexOf(Math.max(...brings)) }
  }
  const byOctave = octaveLevels(arrives, levelsDb, sdDb).map((level, octave) =>
    level === null ? null : below(judged.limitDb[octave]!, level),
  )
  const least = (end: 'middle' | 'low' | 'high') => Math.min(...byOctave.map((at) => at?.[end] ?? Infinity))
  const middle = least('middle')
  return {
    middle,
    low: least('low'),
    high: least('high'),
    decides: byOctave.findIndex((at) => at?.middle === middle),
  }
}

function below(limitDb: Decibels, level: Ranged): Omit<Margin, 'decides'> {
  return { middle: limitDb - level.middle, low: limitDb - level.high, high: limitDb - level.low }
}

/** Beyond this nothing that matters is left to hear. @source own choice */
const GREATEST_GAIN_DB: Decibels = 60

/** What the margin would gain in the middle of its range without one of the paths, dB; at most GREATEST_GAIN_DB. */
export function gainWithout(
  energies: readonly PathEnergy[],
  closed: PathEnergy,
  playing: Playing,
  judged: Judged,
  margin: Margin,
): Decibels {
  const others = energies.filter((energy) => energy !== closed)
  if (others.length === 0) return GREATEST_GAIN_DB
  return Math.min(GREATEST_GAIN_DB, marginOf(others, playing, judged).middle - margin.middle)
}

/** Share of every path in what arrives of a spectrum; together 1. */
export function sharesOf(energies: readonly PathEnergy[], played: readonly number[]): readonly number[] {
  const parts = energies.map(({ middle }) => weighedSum(played, middle))
  const whole = parts.reduce((sum, part) => sum + part, 0)
  return parts.map((part) => part / whole)
}

/** A spectrum that has nothing but one octave. */
export function onlyOctave(octave: number): readonly number[] {
  return OCTAVES_HZ.map((_, at) => (at === octave ? 1 : 0))
}

/** What a margin means, from the lower end of its range. */
export function verdictOf({ middle, low, high }: Margin): Verdict {
  if (low >= 0) return 'meets-on-paper'
  if (middle >= 0) return 'likely'
  return high >= 0 ? 'open' : 'does-not-meet'
}

/** A verdict as a designer reads it; `margin` null: it is not known. */
export function verdictWords(margin: Margin | null): string {
  if (margin === null) return 'not known'
  switch (verdictOf(margin)) {
    case 'meets-on-paper':
      return 'meets on paper'
    case 'likely':
      return `likely, could be ${Math.max(1, Math.ceil(margin.middle - margin.low))} dB worse`
    case 'open':
      return 'open'
    default:
      return 'does not meet'
  }
}
