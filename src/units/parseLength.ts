import { type LengthUnit, type Millimetres, MM_PER_FOOT, MM_PER_INCH } from '#units/quantity.ts'
import { fail, ok, type Result } from '#units/result.ts'

/** Where a typed length could not be read. */
export interface LengthProblem {
  readonly kind: 'empty' | 'not-a-length'
  /** A full sentence: what was expected, after what. */
  readonly message: string
}

const MM_PER_UNIT: Readonly<Record<string, number>> = { mm: 1, cm: 10, m: 1000, ft: MM_PER_FOOT, in: MM_PER_INCH }

const NUMBER = String.raw`\d+(?:\.\d+)?|\.\d+`
const INCHES = String.raw`(?:(?<whole>${NUMBER})(?:[ -](?<num>\d+)/(?<den>\d+))?|(?<num2>\d+)/(?<den2>\d+))`
const DECIMAL_WITH_UNIT = new RegExp(`^(?<value>${NUMBER}) ?(?<unit>mm|cm|m|ft|in)$`)
const INCHES_ONLY = new RegExp(`^${INCHES} ?in$`)
const BARE = new RegExp(`^${INCHES}$`)
const FEET_AND_INCHES = new RegExp(`^(?<feet>${NUMBER}) ?(?:ft ?-? ?|- ?)${INCHES} ?(?:in)?$`)

/**
 * Reads a typed length.
 * @param text  12' 6 1/2", 12-6.5, 12.5 ft, 6-1/2 in, 3.81 m, 381 cm, 3810; decimal comma allowed
 * @param unit  what a bare number means: millimetres, or inches in a feet-inch project
 * @returns millimetres, or a sentence saying what was expected
 * @example parseLength(`12' 6 1/2"`, 'ft-in') // ok 3822.7
 */
export function parseLength(text: string, unit: LengthUnit): Result<Millimetres, LengthProblem> {
  if (/\d,\d{3}(?!\d)/.test(text)) return fail(ambiguousComma(text))
  const tidy = normalise(text)
  if (tidy === '') return fail({ kind: 'empty', message: `Type a length, for example ${example(unit)}.` })
  const negative = tidy.startsWith('-')
  const read = readPositive(negative ? tidy.slice(1).trim() : tidy, unit)
  if (read === null) return fail(notALength(text, tidy, unit))
  return ok(negative ? -read : read)
}

function normalise(text: string): string {
  return text
    .trim()
    .toLowerCase()
    .replace(/[′’‘]{2}|''/g, '"')
    .replace(/[″”“]/g, '"')
    .replace(/[′’‘]/g, "'")
    .replace(/[−–]/g, '-')
    .replace(/(\d),(\d)/g, '$1.$2')
    .replace(/\b(?:millimet(?:er|re)s?)\b/g, 'mm')
    .replace(/\b(?:centimet(?:er|re)s?)\b/g, 'cm')
    .replace(/\b(?:met(?:er|re)s?)\b/g, 'm')
    .replace(/\b(?:feet|foot)\b/g, 'ft')
    .replace(/\binch(?:es)?\b/g, 'in')
    .replace(/'/g, ' ft ')
    .replace(/"/g, ' in ')
    .replace(/\s+/g, ' ')
    .trim()
}

function readPositive(text: string, unit: LengthUnit): Millimetres | null {
  const decimal = DECIMAL_WITH_UNIT.exec(text)?.groups
  if (decimal) return Number(decimal['value']) * (MM_PER_UNIT[decimal['unit'] ?? ''] ?? Number.NaN)
  const inchesOnly = inchesOf(INCHES_ONLY.exec(text)?.groups)
  if (inchesOnly !== null) return inchesOnly * MM_PER_INCH
  const bare = BARE.exec(text)?.groups
  if (bare) return readBare(bare, text, unit)
  return readFeetAndInches(text)
}

function readBare(groups: Record<string, string | undefined>, text: string, unit: LengthUnit): Millimetres | null {
  const value = inchesOf(groups)
  if (value === null) return null
  if (unit === 'ft-in') return value * MM_PER_INCH
  return text.includes('/') ? null : value
}

function readFeetAndInches(text: string): Millimetres | null {
  const groups = FEET_AND_INCHES.exec(text)?.groups
  const rest = inchesOf(groups)
  if (!groups || rest === null) return null
  return Number(groups['feet']) * MM_PER_FOOT + rest * MM_PER_INCH
}

function inchesOf(groups: Record<string, string | undefined> | undefined): number | null {
  if (!groups) return null
  const whole = Number(groups['whole'] ?? 0)
  const top = Number(groups['num'] ?? groups['num2'] ?? 0)
  const bottom = Number(groups['den'] ?? groups['den2'] ?? 1)
  return bottom === 0 ? null : whole + top / bottom
}

/** 3,000 is three thousand to one reader and three to another: neither is guessed. */
function ambiguousComma(text: string): LengthProblem {
  const plain = text.trim().replace(/(\d),(\d{3})(?!\d)/g, '$1$2')
  const message = `"${text.trim()}" can be read in two ways: write ${plain}, or a point for the decimal mark.`
  return { kind: 'not-a-length', message }
}

function example(unit: LengthUnit): string {
  return unit === 'ft-in' ? `12' 6 1/2" or 150 (inches)` : '3810 (millimetres) or 3.81 m'
}

function notALength(text: string, tidy: string, unit: LengthUnit): LengthProblem {
  const start = /^-?[\d. /-]+/.exec(tidy)?.[0]?.trim() ?? ''
  const rest = tidy.slice(start.length).trim()
  if (start !== '' && /^[a-z]+/.test(rest)) {
    return {
      kind: 'not-a-length',
      message: `"${text.trim()}" is not a length: expected mm, cm, m, ft or in after ${start}.`,
    }
  }
  return { kind: 'not-a-length', message: `"${text.trim()}" is not a length: write it like ${example(unit)}.` }
}
