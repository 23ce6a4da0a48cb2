import { ceilingCautions } from '#analysis/cautions/ceiling.ts'
import type { AnswerInput } from '#analysis/paths/answerReceivers.ts'
import type { Caution, SchemeResult } from '#analysis/results.ts'
import type { Scheme } from '#analysis/scheme.ts'
import type { Millimetres, SquareMetres } from '#units/quantity.ts'

/** What a change takes from the room and hangs on the building. */
export interface Costs {
  readonly areaLostM2: SquareMetres
  readonly heightLostMm: Millimetres
  /** Of the linings; what stands in openings is not weighed. */
  readonly addedMassKg: number
}

/** As the ledgers of both schemes have it. */
export function costsOf(before: SchemeResult, after: SchemeResult): Costs {
  return {
    areaLostM2: before.ledger.floorAreaM2.clear - after.ledger.floorAreaM2.clear,
    heightLostMm: before.ledger.clearHeightMm.lowest - after.ledger.clearHeightMm.lowest,
    addedMassKg: after.ledger.addedMassKg - before.ledger.addedMassKg,
  }
}

/** The same before the plan is cut anew, good enough to say which of two steps takes less: depth times length or area. */
export function roughCosts(before: SchemeResult, after: SchemeResult): Costs {
  const rough = { areaLostM2: 0, heightLostMm: 0, addedMassKg: 0 }
  after.surfaces.forEach((surface, at) => {
    const former = before.surfaces[at]
    if (!former || former === surface) return
    const deeperMm = surface.netDepthMm - former.netDepthMm
    if (surface.kind === 'wall') rough.areaLostM2 += (deeperMm * surface.clearLengthMm) / 1e6
    else rough.heightLostMm += deeperMm
    rough.addedMassKg += (surface.addedMassKgM2 - former.addedMassKgM2) * surface.soundAreaM2
  })
  return rough
}

/** Cautions that say a scheme cannot be built, or leaves no room to speak of. */
const FORBIDS: ReadonlySet<string> = new Set([
  'nested-under-trusses',
  'ceiling-without-walls',
  'nothing-left',
  'no-height',
  'height-runs-out',
  'split',
])

/** What the scheme warns of once the change is made and did not before; the same with another figure in it is not new. */
export function newCautions(before: SchemeResult, after: SchemeResult): readonly Caution[] {
  const keyOf = ({ code, surfaces }: Caution) => [code, ...surfaces].join('\n')
  const known = new Set(before.cautions.map(keyOf))
  return after.cautions.filter((caution) => !known.has(keyOf(caution)))
}

/** True where the change brings up a reason why it cannot be built. */
export function isForbidden(cautions: readonly Caution[]): boolean {
  return cautions.some(({ code }) => FORBIDS.has(code))
}

/** What can be told of that before the plan is cut anew: ceilings that nothing carries, or that have no place. */
export function isUnbuildable(input: AnswerInput, scheme: Scheme, after: SchemeResult): boolean {
  const { room, catalogue, result } = input
  const known = new Set(result.cautions.map(({ code }) => code))
  const raised = ceilingCautions({ room, scheme, catalogue, quality: 'plot' }, after)
  return isForbidden(raised.filter(({ code }) => !known.has(code)))
}
