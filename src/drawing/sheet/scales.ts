import type { LengthUnit } from '#units/quantity.ts'

/** A scale a drawing may be at: paper to room. */
export interface SheetScale {
  /** Room millimetres to one of paper. */
  readonly ratio: number
  /** As it is written in a title block. */
  readonly text: string
}

const METRIC = [10, 20, 25, 50, 75, 100, 200, 500, 1000, 2000]
const FEET: readonly (readonly [number, string])[] = [
  [24, '1/2"'],
  [32, '3/8"'],
  [48, '1/4"'],
  [64, '3/16"'],
  [96, '1/8"'],
  [192, '1/16"'],
  [384, '1/32"'],
  [1200, '1" = 100'],
]

/** Standard scales of a reader's units, largest drawing first. */
export function standardScales(units: LengthUnit): SheetScale[] {
  if (units === 'mm') return METRIC.map((ratio) => ({ ratio, text: `1:${ratio}` }))
  return FEET.map(([ratio, inch]) => ({
    ratio,
    text: inch.includes('=') ? `${inch}'-0" (1:${ratio})` : `${inch} = 1'-0" (1:${ratio})`,
  }))
}
