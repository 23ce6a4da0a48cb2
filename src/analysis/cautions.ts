import type { AnalysisInput } from '#analysis/analyse.ts'
import { boxCautions } from '#analysis/cautions/boxes.ts'
import { ceilingCautions } from '#analysis/cautions/ceiling.ts'
import { cornerCautions } from '#analysis/cautions/corners.ts'
import { furnitureCautions } from '#analysis/cautions/furniture.ts'
import { liningCautions } from '#analysis/cautions/lining.ts'
import { openingCautions } from '#analysis/cautions/openings.ts'
import { roomCautions } from '#analysis/cautions/room.ts'
import { spaceCautions } from '#analysis/cautions/space.ts'
import type { Caution, SchemeResult } from '#analysis/results.ts'

/** Said before anything else: there is no room to speak of. */
const NO_ROOM: readonly string[] = ['nothing-left', 'no-height']

/** Everything a designer must read beside a scheme, what leaves no room first, then life safety. */
export function cautionsFor(input: AnalysisInput, result: Omit<SchemeResult, 'cautions'>): readonly Caution[] {
  const all = [
    ...liningCautions(input),
    ...ceilingCautions(input, result),
    ...roomCautions(input, result),
    ...openingCautions(input, result),
    ...cornerCautions(result),
    ...furnitureCautions(result),
    ...boxCautions(result),
    ...spaceCautions(input, result),
  ]
  const noRoom = all.filter(({ code }) => NO_ROOM.includes(code))
  const others = all.filter(({ code }) => !NO_ROOM.includes(code))
  return [
    ...noRoom,
    ...others.filter((caution) => caution.kind === 'life-safety'),
    ...others.filter((caution) => caution.kind === 'check'),
  ]
}
