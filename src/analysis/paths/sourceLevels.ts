import { octaveList } from '#acoustics/bands.ts'
import { levelFromOneMetre } from '#acoustics/levels.ts'
import { ownAbsorption } from '#analysis/paths/absorption.ts'
import type { AnswerInput } from '#analysis/paths/answerReceivers.ts'
import type { Receiver, Source } from '#analysis/target.ts'
import type { Decibels } from '#units/quantity.ts'
import { fail, ok, type Result } from '#units/result.ts'

/** What meets the surfaces on the side the sound comes from. */
export interface Played {
  readonly source: Source
  /** dB over OCTAVES_HZ; null: not stated. */
  readonly levelsDb: readonly (Decibels | null)[]
}

/** Levels on the side the sound comes from; or a full sentence on what is missing and where to say it. */
export function playedAt(input: AnswerInput, receiver: Receiver): Result<Played, string> {
  const { name } = receiver
  const source = input.sources.find(({ id }) => id === receiver.source)
  if (source === undefined) {
    return fail(
      receiver.source === null
        ? `${name}: nobody has said what is played. Choose a source under Targets.`
        : `${name}: its source is no longer in the project. Choose one under Targets.`,
    )
  }
  const levels = octaveList(source.levelsDb)
  if (levels.every((level) => level === null)) {
    return fail(`${source.name}: it has no level in any octave. Type its levels under Targets.`)
  }
  const misplaced = misplacedWords(source, receiver)
  if (misplaced) return fail(misplaced)
  if (source.place !== 'one-metre') return ok({ source, levelsDb: levels })
  const absorption = ownAbsorption(input.room, input.result)
  if (!absorption.ok) return fail(`${input.room.name}: ${absorption.error}, so a talker's level in it is not known.`)
  return ok({
    source,
    levelsDb: levels.map((level) => (level === null ? null : levelFromOneMetre(level, absorption.value))),
  })
}

/** A level outdoors is of no use for a sound that leaves the room, nor a talker's for one that comes in. */
function misplacedWords({ name, place }: Source, receiver: Receiver): string | null {
  const comesIn = receiver.place.kind === 'this-room'
  if (comesIn && place === 'one-metre') {
    return `${name}: its levels are one metre from a talker, so nothing says how loud it is at the walls of this room. Choose a source whose levels are at the wall outside.`
  }
  if (!comesIn && place === 'facade') {
    return `${name}: its levels are at the wall outside, so it is not what is played in this room. Choose another source for ${receiver.name}, or make the room itself the receiver.`
  }
  return null
}
