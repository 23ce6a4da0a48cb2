import type { AnalysisInput } from '#analysis/analyse.ts'
import { ceilingCautions } from '#analysis/cautions/ceiling.ts'
import { liningCautions } from '#analysis/cautions/lining.ts'
import { roomCautions } from '#analysis/cautions/room.ts'
import { spaceCautions } from '#analysis/cautions/space.ts'
import type { Caution, SchemeResult } from '#analysis/results.ts'

/** Everything a designer must read beside a scheme, life safety first. */
export function cautionsFor(input: AnalysisInput, result: Omit<SchemeResult, 'cautions'>): readonly Caution[] {
  const all = [
    ...liningCautions(input),
    ...ceilingCautions(input, result),
    ...roomCautions(input, result),
    ...spaceCautions(input, result),
  ]
  return [
    ...all.filter((caution) => caution.kind === 'life-safety'),
    ...all.filter((caution) => caution.kind === 'check'),
  ]
}
