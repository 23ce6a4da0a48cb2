import type { OctaveCurve } from '#acoustics/bands.ts'
import { isPrintedNc, NC_HIGHEST, NC_LOWEST, ncCurve, nrCurve } from '#acoustics/criteria.ts'
import { A_WEIGHTS, C_WEIGHTS } from '#acoustics/weighting.ts'
import type { Note } from '#analysis/results.ts'
import type { Receiver } from '#analysis/target.ts'
import type { Decibels } from '#units/quantity.ts'

/** What must not be passed: a level in every octave, or one weighted sum of them. */
export type Judged =
  | { readonly kind: 'curve'; readonly limitDb: OctaveCurve }
  | { readonly kind: 'overall'; readonly limitDb: Decibels; readonly weightDb: OctaveCurve }

/** Beat and tone are held so much lower. @source METHOD section 10 and ordinances that take 5 dB off for a pure tone, seen */
export const BEAT_DB: Decibels = 5

/** A receiver's limit as it is judged, with what beat or tone takes off it. */
export function judgedLimit({ limit, hasBeat }: Receiver): Judged {
  const less = hasBeat ? BEAT_DB : 0
  if ('levelDb' in limit) {
    const weightDb = limit.kind === 'dBA' ? A_WEIGHTS : C_WEIGHTS
    return { kind: 'overall', limitDb: limit.levelDb - less, weightDb }
  }
  const curve = limit.kind === 'NC' ? ncCurve(limit.index) : nrCurve(limit.index)
  return { kind: 'curve', limitDb: curve.map((level) => level - less) }
}

/** Said where an NC curve is not in print. */
export function limitNotes({ limit }: Receiver): readonly Note[] {
  if (limit.kind !== 'NC' || isPrintedNc(limit.index)) return []
  const text = `NC-${limit.index} is not in print, which goes from NC-${NC_LOWEST} to NC-${NC_HIGHEST}: the nearest two curves are continued.`
  return [{ code: 'limit-not-printed', text }]
}
