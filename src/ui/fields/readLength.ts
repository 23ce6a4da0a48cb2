import { formatThickness } from '#units/format.ts'
import { parseLength } from '#units/parseLength.ts'
import type { LengthUnit, Millimetres } from '#units/quantity.ts'
import { fail, ok, type Result } from '#units/result.ts'

/** How far apart two lengths are still the same length: a tenth of what the grid can hold. */
const SAME_MM = 0.0003

/** A length in both units, the reader's first: 12'-6 1/2" · 3822.7 mm. */
export function bothReadings(length: Millimetres, unit: LengthUnit): string {
  const other: LengthUnit = unit === 'mm' ? 'ft-in' : 'mm'
  return `${formatThickness(length, unit)} · ${formatThickness(length, other)}`
}

/** What a field shows while nobody types in it. */
export function lengthText(length: Millimetres, unit: LengthUnit): string {
  return formatThickness(length, unit)
}

export interface LengthLimits {
  /** Smallest length accepted; absent: any. */
  readonly leastMm?: Millimetres | undefined
  /** True: 0 itself is refused. */
  readonly moreThanLeast?: boolean | undefined
}

/**
 * A typed length, checked against its limits.
 * @returns millimetres, or a sentence saying what is wrong and what now
 */
export function readLength(text: string, unit: LengthUnit, limits: LengthLimits = {}): Result<Millimetres, string> {
  const read = parseLength(text, unit)
  if (!read.ok) return fail(read.error.message)
  const { leastMm, moreThanLeast = false } = limits
  if (leastMm === undefined) return ok(read.value)
  const tooSmall = moreThanLeast ? read.value <= leastMm : read.value < leastMm
  if (!tooSmall) return ok(read.value)
  const least = formatThickness(leastMm, unit)
  return fail(
    moreThanLeast ? `It has to be more than ${least}; type a longer one.` : `It cannot be less than ${least}.`,
  )
}

export function isSameLength(a: Millimetres, b: Millimetres): boolean {
  return Math.abs(a - b) < SAME_MM
}

/** What one press of an arrow key adds: a sixteenth of an inch or a millimetre; with Shift an inch or a centimetre. */
export function nudge(unit: LengthUnit, big: boolean): Millimetres {
  if (unit === 'mm') return big ? 10 : 1
  return big ? 25.4 : 25.4 / 16
}
