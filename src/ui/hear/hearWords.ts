import { OCTAVES_HZ } from '#acoustics/bands.ts'
import { isPrintedNc, ncCurve } from '#acoustics/criteria.ts'
import type { Playable } from '#acoustics/listen/calibration.ts'
import type { Voice } from '#acoustics/listen/voices.ts'
import { A_WEIGHTS, weightedLevel } from '#acoustics/weighting.ts'
import type { ReceiverAnswer } from '#analysis/paths/answer.ts'
import type { Source } from '#analysis/target.ts'
import { fixed } from '#units/format.ts'

/** What a press plays. */
export type Heard = 'talk' | 'source' | 'receiver' | 'background'

export const VOICE_WORDS: Readonly<Record<Voice, string>> = {
  kit: 'Kit pattern',
  bass: 'Bass line',
  speech: 'Noise that swells as talk does',
  steady: 'Steady noise',
}

/** Which voice suits a preset; the first that fits. */
const SUITS: readonly (readonly [RegExp, Voice])[] = [
  [/bass/, 'bass'],
  [/drum|kit|band|cinema|mix/, 'kit'],
]

/** What is first offered for a source; anybody may choose another. */
export function usualVoice(source: Source | null): Voice {
  if (source?.place === 'facade') return 'steady'
  const preset = source?.preset ?? ''
  const suited = SUITS.find(([words]) => words.test(preset))
  if (suited) return suited[1]
  return source?.shakes ? 'kit' : 'speech'
}

/** A full sentence where there is nothing to play; null where there is. */
export function whyNotHeard(answer: ReceiverAnswer, source: Source | null): string | null {
  if (source === null) return `No source is chosen for ${answer.name}: choose one under Targets, then it can be heard.`
  if (!answer.sourceDb.some((level) => level !== null)) {
    return `${source.name} has no level in any octave: type its levels under Targets, then it can be heard.`
  }
  if (answer.levelsDb.some((level) => level !== null)) return null
  const why = answer.unknown[0]?.why ?? ''
  return `What ${answer.name} hears is not known, so there is nothing to play. ${why}`.trim()
}

/** Where the source is heard itself. */
export function sourcePlace(source: Source | null): string {
  return source?.place === 'facade' ? 'outside at the wall' : 'in the room'
}

/** "46 dBA"; null: not known. */
function dBA(levels: readonly (number | null)[]): string {
  const level = weightedLevel(levels, A_WEIGHTS)
  return level === null ? 'not known' : `${fixed(level, 0)} dBA`
}

/** "NC-25, 35 dBA". */
export function backgroundWords(nc: number): string {
  const curve = isPrintedNc(nc) ? '' : ' (no such curve is printed: continued from the nearest)'
  return `NC-${fixed(nc, 0)}${curve}, ${dBA(ncCurve(nc))}`
}

/** The levels of the two places, and how sure the second is. */
export function levelsWords(answer: ReceiverAnswer, source: Source | null, backgroundNc: number): string {
  const place = sourcePlace(source)
  const sure = couldBe(answer)
  const at = place.charAt(0).toUpperCase() + place.slice(1)
  return `${at} ${dBA(answer.sourceDb)}; at ${answer.name} ${dBA(answer.levelsDb)} against a background of ${backgroundWords(backgroundNc)}.${sure}`
}

function couldBe({ marginDb, marginLow95Db }: ReceiverAnswer): string {
  if (marginDb === null || marginLow95Db === null) return ''
  const worse = Math.ceil(marginDb - marginLow95Db)
  return worse < 1 ? '' : ` What plays is the middle of the likely range: it could be ${worse} dB louder.`
}

/** Octaves in which nothing plays since no level is known there; null: none. */
export function silentWords(answer: ReceiverAnswer): string | null {
  const silent = OCTAVES_HZ.filter((_, octave) => (answer.levelsDb[octave] ?? null) === null)
  if (silent.length === 0) return null
  const list = silent.length === 1 ? `${silent[0]}` : `${silent.slice(0, -1).join(', ')} and ${silent.at(-1)}`
  return `At ${list} Hz no level is known, so nothing plays there.`
}

/** What is said while something plays. */
export function playingWords(what: string, { reducedDb }: Playable): string {
  const how =
    reducedDb === 0
      ? 'as loud as it is calculated to be, once the volume is set'
      : `turned down by ${reducedDb} dB, since its true loudness could not be played safely: compare its sound, not its loudness`
  return `Playing: ${what}, ${how}.`
}
