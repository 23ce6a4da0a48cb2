import type { SchemeDifference } from '#analysis/compare.ts'
import type { Caution, SchemeResult } from '#analysis/results.ts'
import { formatArea, formatLength } from '#units/format.ts'
import type { LengthUnit } from '#units/quantity.ts'

/** Where a difference is too small to speak of. */
const SAME_M2 = 0.005
const SAME_MM = 0.5

/** B clips keeps 14.7 ft² more than C independent room, and 1 3/4" more height. */
export function differenceSentence(base: SchemeResult, other: SchemeResult, diff: SchemeDifference, unit: LengthUnit) {
  const area = amount(diff.floorAreaKeptM2, SAME_M2, (size) => formatArea(size, unit))
  const height = amount(diff.clearHeightMm, SAME_MM, (size) => formatLength(size, unit))
  if (area === null && height === null) return `${other.name} keeps as much floor and height as ${base.name}.`
  if (area === null) return `${other.name} keeps ${height} height than ${base.name}, and as much floor.`
  if (height === null) return `${other.name} keeps ${area} than ${base.name}, and as much height.`
  return `${other.name} keeps ${area} than ${base.name}, and ${height} height.`
}

function amount(change: number, same: number, text: (size: number) => string): string | null {
  if (Math.abs(change) < same) return null
  return `${text(Math.abs(change))} ${change > 0 ? 'more' : 'less'}`
}

export interface SharedCautions {
  /** True of every scheme. */
  readonly all: readonly Caution[]
  /** By scheme, what is not. */
  readonly own: readonly { readonly name: string; readonly cautions: readonly Caution[] }[]
}

/** Cautions said once where they hold for every scheme, and beside the scheme where they do not. Nothing is dropped. */
export function shareCautions(results: readonly SchemeResult[]): SharedCautions {
  const [first, ...others] = results
  const all = (first?.cautions ?? []).filter(({ text }) =>
    others.every((other) => other.cautions.some((caution) => caution.text === text)),
  )
  const said = new Set(all.map(({ text }) => text))
  const own = results
    .map(({ name, cautions }) => ({ name, cautions: cautions.filter(({ text }) => !said.has(text)) }))
    .filter(({ cautions }) => cautions.length > 0)
  return { all, own }
}
