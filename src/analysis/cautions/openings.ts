import type { AnalysisInput } from '#analysis/analyse.ts'
import { isWayOut } from '#analysis/openings/wayOut.ts'
import type { Caution, Note, OpeningCheck, SchemeResult } from '#analysis/results.ts'
import type { Opening } from '#analysis/room.ts'

/** Said of how an opening was drawn, or of an order of doing things: nobody's way out depends on it. */
const CHECKS: readonly string[] = [
  'wider-than-wall',
  'beyond-wall',
  'openings-overlap',
  'opening-covered',
  'lobby-order',
  'lobby-same-place',
]

/** The problems of doors, windows and vents; life safety where somebody may have to leave that way. */
export function openingCautions({ room }: AnalysisInput, { openings }: Pick<SchemeResult, 'openings'>): Caution[] {
  const byId = new Map(room.openings.map((opening) => [opening.id, opening]))
  const seen = new Set<string>()
  return openings.flatMap((check) => {
    const opening = byId.get(check.id)
    if (!opening) return []
    return check.problems.flatMap((problem) => {
      const pair = pairKey(problem, opening, room.openings)
      if (seen.has(pair)) return []
      seen.add(pair)
      return [caution(problem, opening, check)]
    })
  })
}

function caution({ code, text }: Note, opening: Opening, check: OpeningCheck): Caution {
  const sillMm = check.clearHeightMm + opening.revealLiningMm - opening.heightMm
  const isSafety = isWayOut(opening, sillMm) && !CHECKS.includes(code)
  return { code, kind: isSafety ? 'life-safety' : 'check', text, surfaces: [opening.wall] }
}

/** What two openings say of each other is one caution. */
function pairKey({ code, text }: Note, opening: Opening, all: readonly Opening[]): string {
  if (code !== 'swings-cross' && code !== 'openings-overlap') return `${code}\n${opening.id}\n${text}`
  const named = all.filter(({ name }) => text.includes(name)).map(({ id }) => id)
  return [code, ...named].join('\n')
}
