import { octaveList } from '#acoustics/bands.ts'
import { A_WEIGHTS, weightedLevel } from '#acoustics/weighting.ts'
import { limitWords } from '#analysis/paths/answerWords.ts'
import { type LimitPreset, levelSd, type SourcePreset, sourcePreset } from '#analysis/presets.ts'
import type { LevelBasis, LevelPlace, ReceiverPlace, Source } from '#analysis/target.ts'
import { capital } from '#ui/panels/words.ts'
import { fixed } from '#units/format.ts'

/** How a level came to be known; never left out beside it. */
export const BASIS_WORDS: Readonly<Record<LevelBasis, string>> = {
  seen: 'seen in print',
  memory: 'assumed, from memory',
  measured: 'typed by you',
}

/** What levels are of. */
export const LEVEL_PLACE_WORDS: Readonly<Record<LevelPlace, string>> = {
  'room-average': 'The whole room, on average',
  'one-metre': 'One metre from a talker, in the open',
  facade: 'Outdoors, at the wall',
}

/** Where a receiver is, as a verb adds it. */
export const RECEIVER_KINDS: readonly { readonly kind: ReceiverPlace['kind']; readonly text: string }[] = [
  { kind: 'room', text: 'a room behind' },
  { kind: 'outdoors', text: 'a point outdoors' },
  { kind: 'this-room', text: 'this room, noise coming in' },
]

/** Drum kit, hard sticks · 104 dBA · assumed, from memory */
export function presetOption({ name, overallDba, basis }: SourcePreset): string {
  return `${name} · ${Math.round(overallDba)} dBA · ${BASIS_WORDS[basis]}`
}

/** What a preset rests on, and how far it may be off. */
export function presetWords({ basis, source }: SourcePreset): string {
  return `${capital(BASIS_WORDS[basis])}: ${source}. One standard deviation ${levelSd(basis)} dB.`
}

/** 104 dBA of the octaves that are known; null: none is. */
export function overallWords({ levelsDb }: Pick<Source, 'levelsDb'>): string | null {
  const levels = octaveList(levelsDb)
  const level = weightedLevel(levels, A_WEIGHTS)
  if (level === null) return null
  return `${levels.includes(null) ? 'at least ' : ''}${fixed(level, 0)} dBA`
}

/** What a source's levels rest on: where they were read or assumed, or that somebody typed them over a preset. */
export function originWords({ basis, preset: key }: Pick<Source, 'basis' | 'preset'>): string {
  const preset = sourcePreset(key)
  if (basis === 'measured') {
    const began = preset === null ? '' : ` They began as "${preset.name}".`
    return `Typed by you: they count as measured.${began}`
  }
  return preset === null ? `${capital(BASIS_WORDS[basis])}.` : `${capital(BASIS_WORDS[basis])}: ${preset.source}.`
}

/** 50 dBA · Property line at night */
export function limitOption({ name, limit }: LimitPreset): string {
  return `${limitWords(limit)} · ${name}`
}

/** Where a limit comes from, with its status. */
export function limitOrigin({ source, status }: LimitPreset): string {
  return `${capital(source)}. Status: ${status}.`
}
