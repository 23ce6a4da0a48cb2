import table from '#acoustics/data/listening.json' with { type: 'json' }
import { octaveLevelsOf } from '#acoustics/listen/octaveBands.ts'
import { A_WEIGHTS, weightedLevel } from '#acoustics/weighting.ts'
import type { Decibels, Hertz } from '#units/quantity.ts'

export const SAMPLE_RATE_HZ: Hertz = table.sampleRateHz
/** Of a loop: a power of two. */
export const LOOP_SAMPLES = table.samples
/** Level that samples of root mean square 1 stand for, dB. @source our own choice, data/listening.json */
export const FULL_SCALE_DB: Decibels = table.fullScaleDb
/** Loudest mean level that is played, dBA at the volume set by ear. @source our own choice, data/listening.json */
export const LOUDEST_DBA: Decibels = table.loudestDbA
/** Talk at one metre, for setting the volume: dB over OCTAVES_HZ. @source ANSI S3.5-1997 at second hand, seen */
export const TALK_DB: readonly (Decibels | null)[] = table.talk.levelDb
/** Its A-weighted level, dB. */
export const TALK_DBA: Decibels = weightedLevel(TALK_DB, A_WEIGHTS) ?? 0

/** A loop ready to be played: mono, as samples -1..1. */
export interface Playable {
  readonly samples: Float32Array
  /** By how many whole dB it is turned down against the calibration; 0: as loud as it is. */
  readonly reducedDb: Decibels
  /** What it stands for, before it is turned down, dB over OCTAVES_HZ; null: silent. */
  readonly levelsDb: readonly (Decibels | null)[]
  /** A-weighted, of the same. */
  readonly levelA: Decibels | null
}

/** Levels as they stand as levels of samples, 0 dB being a root mean square of 1. */
export function onScale(levels: readonly (Decibels | null)[]): readonly (Decibels | null)[] {
  return levels.map((level) => (level === null ? null : level - FULL_SCALE_DB))
}

/** Levels of a loop by octave, as sound; null where it is silent. */
function soundLevels(loop: Float64Array): readonly (Decibels | null)[] {
  return octaveLevelsOf(loop, SAMPLE_RATE_HZ).map((level) => (level < -200 ? null : level + FULL_SCALE_DB))
}

/** A loop turned down by whole dB where it would clip, or play louder than LOUDEST_DBA. */
export function playable(loop: Float64Array): Playable {
  const levelsDb = soundLevels(loop)
  const levelA = weightedLevel(levelsDb, A_WEIGHTS)
  const peak = loop.reduce((most, value) => Math.max(most, Math.abs(value)), 0)
  const tooLoud = levelA === null ? 0 : levelA - LOUDEST_DBA
  const clips = peak > 0 ? 20 * Math.log10(peak / table.greatestPeak) : 0
  const reducedDb = Math.max(0, Math.ceil(Math.max(tooLoud, clips)))
  const factor = 10 ** (-reducedDb / 20)
  return { samples: Float32Array.from(loop, (value) => value * factor), reducedDb, levelsDb, levelA }
}
