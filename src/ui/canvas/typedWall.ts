import { parseDirection } from '#ui/canvas/direction.ts'
import { readLength } from '#ui/fields/readLength.ts'
import { parseLength } from '#units/parseLength.ts'
import type { LengthUnit, Millimetres } from '#units/quantity.ts'
import { fail, ok, type Result } from '#units/result.ts'

/** A wall as typed in one field. */
export interface TypedWall {
  readonly lengthMm: Millimetres
  /** Degrees counter-clockwise from right; null: only a length was typed. */
  readonly degrees: number | null
}

/** Directions written straight after a foot or inch mark or a number: 24'r, 14'up. */
const STUCK = /(['"′’″”\d])(right|up|left|down|[ruld])(\s+turn)?$/i
/** Feet, then a number that is more than the inches of a foot and says neither inches nor degrees. */
const FEET_THEN_MANY = /(?:['′’]|f(?:ee|oo)?t)\s*[-−–]?\s*(\d+(?:\.\d+)?)$/i
const INCHES_A_FOOT = 12
/** A length that ends in a bare number. */
const BARE_END = /^[\d.,/ -]+$/
/** A direction of digits alone. */
const BARE_DEGREES = /^\d+(?:[.,]\d+)?$/

/**
 * Reads a wall typed as a length, with its direction after it if it has one: 24' right, 12-6.5 u, 3.81 m 45, 168 in left turn.
 * Degrees after a bare number need their sign (3810 45°): without it neither reading is guessed.
 * @param before  direction of the last wall, which turns are taken from
 * @returns length and direction, or a sentence saying what is wrong
 */
export function readTypedWall(text: string, unit: LengthUnit, before = 0): Result<TypedWall, string> {
  const parts = split(text, unit, before)
  if (!parts.ok) return parts
  const { lengthText, degrees } = parts.value
  const length = readLength(lengthText, unit, { leastMm: 0, moreThanLeast: true })
  return length.ok ? ok({ lengthMm: length.value, degrees }) : length
}

interface Parts {
  readonly lengthText: string
  readonly degrees: number | null
}

/** The longest beginning that is a length, where what follows is a direction. */
function split(text: string, unit: LengthUnit, before: number): Result<Parts, string> {
  const typed = text.trim()
  const many = FEET_THEN_MANY.exec(typed)?.[1]
  if (many !== undefined && Number(many) >= INCHES_A_FOOT) {
    const plain = typed.slice(0, -many.length).trim()
    return fail(
      `"${typed}" can be read in two ways: write ${plain} ${many}° for the direction, or ${plain} ${many}" for inches.`,
    )
  }
  const words = typed.replace(STUCK, '$1 $2$3').split(/\s+/)
  let reason: string | null = null
  for (let count = words.length; count > 0; count -= 1) {
    const lengthText = words.slice(0, count).join(' ')
    const rest = words.slice(count).join(' ')
    if (!parseLength(lengthText, unit).ok) continue
    if (rest === '') return ok({ lengthText, degrees: null })
    const direction = parseDirection(rest, before)
    if (direction.ok && !(BARE_END.test(lengthText) && BARE_DEGREES.test(rest))) {
      return ok({ lengthText, degrees: direction.value })
    }
    reason ??= direction.ok ? twoNumbers(typed, lengthText, rest, unit) : direction.error
  }
  return reason !== null && isLikeADirection(words) ? fail(reason) : ok({ lengthText: typed, degrees: null })
}

/** Whether the last word was meant as a direction rather than as a unit: 12 furlongs is a length gone wrong. */
function isLikeADirection(words: readonly string[]): boolean {
  const last = words.at(-1) ?? ''
  return /\d|°$/.test(last) || words.length > 2 || /['"′″]$/.test(words.at(-2) ?? '')
}

function twoNumbers(typed: string, length: string, rest: string, unit: LengthUnit): string {
  const other = unit === 'ft-in' ? `${length}'-${rest}" for feet and inches` : `${length}${rest} for one length`
  return `"${typed}" can be read in two ways: write ${length} ${rest}° for the direction, or ${other}.`
}
