import type { Caution, SchemeResult } from '#analysis/results.ts'
import type { Millimetres, SquareMetres } from '#units/quantity.ts'

/** What a change takes from the room and hangs on the building. */
export interface Costs {
  readonly areaLostM2: SquareMetres
  readonly heightLostMm: Millimetres
  /** Of the linings; what stands in openings is not weighed. */
  readonly addedMassKg: number
}

export function costsOf(before: SchemeResult, after: SchemeResult): Costs {
  return {
    areaLostM2: before.ledger.floorAreaM2.clear - after.ledger.floorAreaM2.clear,
    heightLostMm: before.ledger.clearHeightMm.lowest - after.ledger.clearHeightMm.lowest,
    addedMassKg: after.ledger.addedMassKg - before.ledger.addedMassKg,
  }
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

/** What the scheme warns of once the change is made and did not before. */
export function newCautions(before: SchemeResult, after: SchemeResult): readonly Caution[] {
  const known = new Set(before.cautions.map(({ text }) => text))
  return after.cautions.filter(({ text }) => !known.has(text))
}

/** True where the change brings up a reason why it cannot be built. */
export function isForbidden(cautions: readonly Caution[]): boolean {
  return cautions.some(({ code }) => FORBIDS.has(code))
}
