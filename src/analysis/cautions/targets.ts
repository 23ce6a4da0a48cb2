import { octaveList } from '#acoustics/bands.ts'
import { levelFromOneMetre } from '#acoustics/levels.ts'
import { A_WEIGHTS, weightedLevel } from '#acoustics/weighting.ts'
import { closedUpCautions } from '#analysis/cautions/air.ts'
import table from '#analysis/data/air.json' with { type: 'json' }
import { ownAbsorption } from '#analysis/paths/absorption.ts'
import type { Caution, SchemeResult } from '#analysis/results.ts'
import type { Room } from '#analysis/room.ts'
import type { Scheme } from '#analysis/scheme.ts'
import type { Receiver, Source } from '#analysis/target.ts'
import type { Decibels } from '#units/quantity.ts'

export interface TargetCautionInput {
  readonly room: Room
  readonly scheme: Scheme
  /** Of the whole project. */
  readonly sources: readonly Source[]
  readonly receivers: readonly Receiver[]
  /** Of that room under that scheme. */
  readonly result: SchemeResult
}

/**
 * What has to be read once somebody plays in a room: hearing, alarms over the music, air before it is sealed. Always in
 * full, and only what the result's own cautions do not say already.
 */
export function targetCautions(input: TargetCautionInput): readonly Caution[] {
  const { room, receivers, result } = input
  const own = receivers.filter((receiver) => receiver.room === room.id)
  if (own.length === 0) return []
  const said = new Set(result.cautions.map(({ code }) => code))
  const loud = loudSources(input, own)
  return [
    ...loud.map(hearing),
    ...(loud[0] ? [alarms(loud[0])] : []),
    ...closedUpCautions(room, result).filter(({ code }) => !said.has(code)),
  ]
}

interface Loud {
  readonly source: Source
  readonly levelA: Decibels
  /** Not every octave has a level, so it is at least that loud. */
  readonly isLeast: boolean
}

/** What is played in the room above the level at which hearing needs protection, the loudest first. */
function loudSources({ room, sources, result }: TargetCautionInput, own: readonly Receiver[]): readonly Loud[] {
  const played = new Set(own.filter(({ place }) => place.kind !== 'this-room').map(({ source }) => source))
  return sources
    .filter(({ id }) => played.has(id))
    .flatMap((source) => {
      const levels = levelsInside(source, room, result)
      const levelA = levels && weightedLevel(levels, A_WEIGHTS)
      if (levels === null || levelA === null || levelA <= table.hearing.limitDbA) return []
      return [{ source, levelA, isLeast: levels.includes(null) }]
    })
    .sort((a, b) => b.levelA - a.levelA)
}

/** Levels in the room itself; null: they are not known, or they are outdoors. */
function levelsInside(source: Source, room: Room, result: SchemeResult): readonly (Decibels | null)[] | null {
  const levels = octaveList(source.levelsDb)
  if (source.place === 'room-average') return levels
  if (source.place === 'facade') return null
  const absorption = ownAbsorption(room, result)
  if (!absorption.ok) return null
  return levels.map((level) => (level === null ? null : levelFromOneMetre(level, absorption.value)))
}

function hearing(loud: Loud): Caution {
  const { limitDbA, hours } = table.hearing
  const text = `${loud.source.name}: ${levelWords(loud)} in this room, above the ${limitDbA} dBA at which hearing needs protection after ${hours} hours a day; at that level ${timeWords(loud.levelA)} a day is as much as a recommended limit allows. Whoever is in the room wears hearing protection, or plays quieter or shorter.`
  return { code: `hearing:${loud.source.id}`, kind: 'life-safety', text, surfaces: [] }
}

function levelWords({ levelA, isLeast, source }: Loud): string {
  const basis = source.basis === 'measured' ? '' : ', as assumed'
  return `${isLeast ? 'at least ' : ''}${Math.round(levelA)} dBA${basis}`
}

/** Time after which the day's dose is reached: half for every exchange rate above the limit. */
function timeWords(levelA: Decibels): string {
  const { limitDbA, hours, exchangeDb } = table.hearing
  const minutes = hours * 60 * 2 ** ((limitDbA - levelA) / exchangeDb)
  if (minutes >= 90) return `${(minutes / 60).toFixed(1)} hours`
  if (minutes >= 1.5) return `${Math.round(minutes)} minutes`
  return minutes >= 0.75 ? '1 minute' : 'less than a minute'
}

function alarms(loud: Loud): Caution {
  const text = `${loud.source.name} plays at ${levelWords(loud)}, and the better this room is isolated the less comes in from outside: nobody in it hears a smoke or carbon monoxide alarm, a doorbell or a call from the house. Put alarms inside it, interlinked with the others and with a flashing light, and keep the way out free and openable from inside without a key.`
  return { code: 'alarms', kind: 'life-safety', text, surfaces: [] }
}
