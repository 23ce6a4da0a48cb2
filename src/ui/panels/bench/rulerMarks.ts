import type { RulerMark } from '#ui/charts/rulerLayout.ts'
import { type Candidate, depthFrom, type Face, type Measure, quietOf } from '#ui/panels/bench/candidates.ts'
import { capital, likelyWords } from '#ui/panels/words.ts'
import { formatLength } from '#units/format.ts'
import type { LengthUnit } from '#units/quantity.ts'

/** Notes that say a build-up stands on the wrong ground. */
const DOUBTFUL = new Set([
  'resilient-over-board',
  'low-profile-needs-bare-bays',
  'nested-under-trusses',
  'masonry-on-frame',
  'frame-on-masonry',
  'compound-alone',
])

/** The candidates that have a rating, as marks on the ruler. */
export function rulerMarks(
  candidates: readonly Candidate[],
  face: Face,
  measure: Measure,
  unit: LengthUnit,
): readonly RulerMark[] {
  return candidates.flatMap((candidate): RulerMark[] => {
    const quiet = quietOf(candidate, measure)
    if (quiet === null) return []
    return [
      {
        id: candidate.id,
        label: candidate.isOwn ? `${candidate.shortName} (own)` : candidate.shortName,
        sentence: sentenceOf(candidate, face, unit),
        depthMm: depthFrom(candidate, face),
        ...quiet,
        doubt: candidate.described.notes.find(({ code }) => DOUBTFUL.has(code))?.text ?? null,
      },
    ]
  })
}

/** Clips + 2 boards, 2 7/8", STC 57, likely 52-62 */
export function sentenceOf(candidate: Candidate, face: Face, unit: LengthUnit): string {
  const { rating } = candidate.described
  const depth = formatLength(depthFrom(candidate, face), unit)
  const figures = rating === null ? 'not rated' : `STC ${rating.stc}, ${likelyWords(rating)}`
  return `${capital(candidate.shortName)}${candidate.isOwn ? ' (own)' : ''}, ${depth}, ${figures}`
}
