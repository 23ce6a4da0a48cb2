import { marginInTable } from '#analysis/paths/answerWords.ts'
import { WRONG_GROUND } from '#analysis/paths/next/wrongGround.ts'
import type { RulerMark } from '#ui/charts/rulerLayout.ts'
import { type Candidate, depthFrom, type Face, type Measure, type Quiet, quietOf } from '#ui/panels/bench/candidates.ts'
import { capital, stcWords } from '#ui/panels/words.ts'
import { formatLength } from '#units/format.ts'
import type { LengthUnit } from '#units/quantity.ts'

/** How the ruler reads: from which face, in which unit, and the margins where those are what it measures. */
export interface Reading {
  readonly face: Face
  readonly measure: Measure
  readonly unit: LengthUnit
  /** Of the shown receiver, by candidate; null: the measure is another. */
  readonly margins: Margins | null
}

export interface Margins {
  readonly receiver: string
  readonly byCandidate: ReadonlyMap<string, Quiet>
}

/** The candidates that have a figure in this measure, as marks on the ruler. */
export function rulerMarks(candidates: readonly Candidate[], reading: Reading): readonly RulerMark[] {
  return candidates.flatMap((candidate): RulerMark[] => {
    const quiet = quietOf(candidate, reading.measure, reading.margins?.byCandidate)
    if (quiet === null) return []
    return [
      {
        id: candidate.id,
        label: candidate.isOwn ? `${candidate.shortName} (own)` : candidate.shortName,
        sentence: sentenceOf(candidate, reading),
        depthMm: depthFrom(candidate, reading.face),
        ...quiet,
        doubt: candidate.described.notes.find(({ code }) => WRONG_GROUND.has(code))?.text ?? null,
      },
    ]
  })
}

/** Clips + 2 boards, 2 7/8", margin +3 dB, likely −5 to +11 dB at Bedroom, STC 57, likely 52-62 */
export function sentenceOf(candidate: Candidate, { face, unit, margins }: Reading): string {
  const depth = formatLength(depthFrom(candidate, face), unit)
  const name = `${capital(candidate.shortName)}${candidate.isOwn ? ' (own)' : ''}`
  const margin = margins ? `margin ${marginOf(candidate, margins)} at ${margins.receiver}, ` : ''
  return `${name}, ${depth}, ${margin}${stcWords(candidate.described.rating)}`
}

function marginOf({ id }: Candidate, { byCandidate }: Margins): string {
  const quiet = byCandidate.get(id)
  if (!quiet) return 'not known'
  return marginInTable({ marginDb: quiet.value, marginLow95Db: quiet.low, marginHigh95Db: quiet.high })
}
