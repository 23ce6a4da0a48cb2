import type { OctaveValues } from '#acoustics/bands.ts'
import limits from '#analysis/data/limitPresets.json' with { type: 'json' }
import sources from '#analysis/data/sourcePresets.json' with { type: 'json' }
import type { LevelBasis, LevelPlace, Limit, ReceiverPlace } from '#analysis/target.ts'
import type { Source as Origin } from '#assemblies/assembly.ts'
import type { Decibels } from '#units/quantity.ts'
import { invariant } from '#units/result.ts'

/** What a list of presets is grouped by. */
export type SourceGroup = 'music' | 'speech' | 'outdoors'

/** A source to begin with: its levels, what they are of, and where they come from. */
export interface SourcePreset {
  readonly key: string
  readonly name: string
  readonly group: SourceGroup
  readonly place: LevelPlace
  readonly levelsDb: OctaveValues
  /** A-weighted as tabulated, for the list only; 8000 Hz is in it where the table has it. */
  readonly overallDba: Decibels
  /** Drums, bass, bands, cinemas: they also shake the building. */
  readonly shakes: boolean
  readonly basis: 'seen' | 'memory'
  readonly source: string
}

/** A limit to begin with: for whom, when, and who says so. */
export interface LimitPreset {
  readonly key: string
  readonly name: string
  readonly limit: Limit
  /** Kinds of place it is for. */
  readonly places: readonly ReceiverPlace['kind'][]
  /** null: at any hour. */
  readonly when: 'day' | 'night' | null
  readonly source: string
  readonly status: Origin['status']
}

/** @source data/sourcePresets.json, each entry with its own */
export const SOURCE_PRESETS: readonly SourcePreset[] = sources.presets.map((preset) => ({
  ...preset,
  group: oneOf(['music', 'speech', 'outdoors'], preset.group),
  place: oneOf(['room-average', 'one-metre', 'facade'], preset.place),
  basis: oneOf(['seen', 'memory'], preset.basis),
}))

/** @source data/limitPresets.json, each entry with its own */
export const LIMIT_PRESETS: readonly LimitPreset[] = limits.presets.map((preset) => ({
  ...preset,
  limit: limitOf(preset.limit),
  places: preset.places.map((place) => oneOf(['room', 'outdoors', 'this-room'], place)),
  when: preset.when === null ? null : oneOf<'day' | 'night'>(['day', 'night'], preset.when),
  status: oneOf(['seen', 'memory', 'common practice, no source'], preset.status),
}))

/** One standard deviation of levels known in this way, dB. @source data/sourcePresets.json, own choice */
export function levelSd(basis: LevelBasis): Decibels {
  return sources.sdDb[basis].value
}

export function sourcePreset(key: string | null): SourcePreset | null {
  return SOURCE_PRESETS.find((preset) => preset.key === key) ?? null
}

export function limitPreset(key: string | null): LimitPreset | null {
  return LIMIT_PRESETS.find((preset) => preset.key === key) ?? null
}

type WrittenLimit = (typeof limits.presets)[number]['limit']

function limitOf(limit: WrittenLimit): Limit {
  if ('index' in limit && limit.index !== undefined) {
    return { kind: oneOf(['NC', 'NR'], limit.kind), index: limit.index }
  }
  return { kind: oneOf(['dBA', 'dBC'], limit.kind), levelDb: limit.levelDb ?? 0 }
}

/** The word as one of those it may be; a data file that says another is our own mistake. */
function oneOf<Word extends string>(words: readonly Word[], word: string): Word {
  const found = words.find((candidate) => candidate === word)
  invariant(found, `a preset says one of ${words.join(', ')}`)
  return found
}
