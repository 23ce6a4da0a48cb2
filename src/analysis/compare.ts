import type { SchemeResult } from '#analysis/results.ts'
import type { CubicMetres, Decibels, Millimetres, SquareMetres } from '#units/quantity.ts'

/** What one scheme does differently from another; positive area, height and volume: more is left. */
export interface SchemeDifference {
  readonly schemeId: string
  readonly floorAreaKeptM2: SquareMetres
  readonly clearHeightMm: Millimetres
  readonly volumeM3: CubicMetres
  readonly addedMassKg: number
  /** Gain of the lowest rated surface; null where either has no rating. */
  readonly lowestStcDb: Decibels | null
}

/** Every other scheme against the first, order kept. */
export function compareSchemes(base: SchemeResult, others: readonly SchemeResult[]): readonly SchemeDifference[] {
  return others.map((other) => ({
    schemeId: other.schemeId,
    floorAreaKeptM2: other.ledger.floorAreaM2.clear - base.ledger.floorAreaM2.clear,
    clearHeightMm: other.ledger.clearHeightMm.lowest - base.ledger.clearHeightMm.lowest,
    volumeM3: other.ledger.volumeM3.clear - base.ledger.volumeM3.clear,
    addedMassKg: other.ledger.addedMassKg - base.ledger.addedMassKg,
    lowestStcDb: other.lowestRated && base.lowestRated ? other.lowestRated.stc - base.lowestRated.stc : null,
  }))
}
