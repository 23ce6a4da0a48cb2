import type { AnalysisInput } from '#analysis/analyse.ts'
import { shutNotes } from '#analysis/openings/shut.ts'
import { isWayOut } from '#analysis/openings/wayOut.ts'
import type { Caution, Note, OpeningCheck, SchemeResult } from '#analysis/results.ts'
import type { Opening } from '#analysis/room.ts'
import type { Millimetres } from '#units/quantity.ts'

/** Said of how an opening was drawn, or of an order of doing things: nobody's way out depends on it. */
const CHECKS: readonly string[] = [
  'wider-than-wall',
  'beyond-wall',
  'above-ceiling',
  'openings-overlap',
  'opening-covered',
  'lobby-order',
  'lobby-same-place',
]

/** The problems of doors, windows and vents; life safety where somebody may have to leave that way. */
export function openingCautions(input: AnalysisInput, { openings }: Pick<SchemeResult, 'openings'>): Caution[] {
  const { room } = input
  const byId = new Map(room.openings.map((opening) => [opening.id, opening]))
  const seen = new Set<string>()
  return openings.flatMap((check) => {
    const opening = byId.get(check.id)
    if (!opening) return []
    const shut = shutNotes(opening, sillOverNewFloor(opening, check), input.scheme, input.catalogue)
    const problems = check.problems.flatMap((problem) => {
      const pair = pairKey(problem, opening, room.openings)
      if (seen.has(pair)) return []
      seen.add(pair)
      return [caution(problem, opening, check)]
    })
    return [
      ...shut.map(({ code, text }): Caution => ({ code, kind: 'life-safety', text, surfaces: [opening.wall] })),
      ...problems,
    ]
  })
}

function sillOverNewFloor({ revealLiningMm, heightMm }: Opening, { clearHeightMm }: OpeningCheck): Millimetres {
  return clearHeightMm + revealLiningMm - heightMm
}

function caution({ code, text }: Note, opening: Opening, check: OpeningCheck): Caution {
  const isSafety = isWayOut(opening, sillOverNewFloor(opening, check)) && !CHECKS.includes(code)
  return { code, kind: isSafety ? 'life-safety' : 'check', text, surfaces: [opening.wall] }
}

/** What two openings say of each other is one caution. */
function pairKey({ code, text }: Note, opening: Opening, all: readonly Opening[]): string {
  if (code !== 'swings-cross' && code !== 'openings-overlap') return `${code}\n${opening.id}\n${text}`
  const named = all.filter(({ name }) => text.includes(name)).map(({ id }) => id)
  return [code, ...named].join('\n')
}
