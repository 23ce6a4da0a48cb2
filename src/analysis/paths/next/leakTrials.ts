import type { AnswerInput } from '#analysis/paths/answerReceivers.ts'
import { USUAL_AIRTIGHTNESS } from '#analysis/paths/leakPaths.ts'
import { named } from '#analysis/paths/names.ts'
import type { Trial } from '#analysis/paths/next/trial.ts'
import { AIRTIGHTNESS, type Leaks } from '#analysis/scheme.ts'

const NO_LEAKS: Leaks = { holes: [] }

/** Closing the gap round a surface: all gaps at once by better workmanship, or only a gap that was typed for it. */
export function gapTrials(input: AnswerInput, surfaceId: string): readonly Trial[] {
  const { scheme } = input
  const leaks = leaksOf(input, surfaceId)
  const typed: Trial = {
    label: `Close the gap round ${labelOf(input, surfaceId)}`,
    change: { leaks: { [surfaceId]: { ...leaks, gapMm: 0 } } },
    cautions: [],
  }
  const better = AIRTIGHTNESS.slice(0, AIRTIGHTNESS.indexOf(scheme.airtightness ?? USUAL_AIRTIGHTNESS))
  const workmanship = better.map(
    (closed): Trial => ({
      label: `Close the gaps: airtightness ${closed}`,
      change: { airtightness: closed },
      cautions: [],
    }),
  )
  return leaks.gapMm === undefined ? workmanship : [typed]
}

/** Closing the holes of one name. */
export function holeTrials(input: AnswerInput, surfaceId: string, pathId: string): readonly Trial[] {
  const leaks = leaksOf(input, surfaceId)
  const hole = leaks.holes.find(({ id }) => pathId === `hole:${surfaceId}:${id}`)
  if (!hole) return []
  const holes = leaks.holes.filter(({ id }) => id !== hole.id)
  const label = `Close ${hole.name === '' ? 'the hole' : `"${hole.name}"`} in ${labelOf(input, surfaceId)}`
  return [{ label, change: { leaks: { [surfaceId]: { ...leaks, holes } } }, cautions: [] }]
}

function leaksOf({ scheme }: AnswerInput, surfaceId: string): Leaks {
  return scheme.leaks?.[surfaceId] ?? NO_LEAKS
}

function labelOf({ result }: AnswerInput, surfaceId: string): string {
  return named(result.surfaces.find(({ id }) => id === surfaceId)?.label ?? surfaceId)
}
