import { type ScaleLinear, scaleLinear } from 'd3-scale'
import { OCTAVES_HZ } from '#acoustics/bands.ts'
import type { ReceiverAnswer } from '#analysis/paths/answer.ts'
import type { Decibels } from '#units/quantity.ts'

/** What of an answer the chart draws. */
export type DrawnLevels = Pick<
  ReceiverAnswer,
  'sourceDb' | 'levelsDb' | 'levelsLow95Db' | 'levelsHigh95Db' | 'limitDb' | 'worstBandHz' | 'dominantBandHz'
>

export interface LevelScales {
  /** By place in OCTAVES_HZ. */
  readonly x: ScaleLinear<number, number>
  readonly y: ScaleLinear<number, number>
  /** Half of what one octave takes of the width. */
  readonly half: number
}

interface Size {
  readonly width: number
  readonly height: number
  readonly left: number
  readonly right: number
  readonly top: number
  readonly bottom: number
}

/** Steps of the level axis, dB. */
const STEP_DB: Decibels = 10

/** Everything that is known has its place; without any level the axis is that of an ordinary room. */
export function levelScales(drawn: DrawnLevels, { width, height, left, right, top, bottom }: Size): LevelScales {
  const known = [drawn.sourceDb, drawn.levelsLow95Db, drawn.levelsHigh95Db, drawn.levelsDb, drawn.limitDb ?? []]
    .flat()
    .flatMap((level) => level ?? [])
  const least = Math.floor(Math.min(...known, 30) / STEP_DB) * STEP_DB
  const most = Math.ceil(Math.max(...known, 60) / STEP_DB) * STEP_DB
  const half = (width - left - right) / OCTAVES_HZ.length / 2
  return {
    x: scaleLinear([0, OCTAVES_HZ.length - 1], [left + half, width - right - half]),
    y: scaleLinear([least, most], [height - bottom, top]).clamp(true),
    half,
  }
}
