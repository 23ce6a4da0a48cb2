import { fail, ok, type Result } from '#units/result.ts'

const WRITTEN = /^([-+]?(?:\d+\.?\d*|\.\d+))\s*(\D*)$/

/** A plain number that may carry its unit. */
export interface NumberReading {
  /** What may follow it: dB, s; nothing for a bare count. */
  readonly unit: string
  /** What it is, as a sentence begins: "A level", "At 63 Hz a level". */
  readonly what: string
  /** One that would do. */
  readonly example: number
}

/**
 * A typed number; a comma counts as a decimal point, and the unit may be written or left out.
 * @returns the number, or a sentence saying what is expected
 * @example readNumber('-3,5 dB', { unit: 'dB', what: 'A level', example: 95 }) // -3.5
 */
export function readNumber(text: string, { unit, what, example }: NumberReading): Result<number, string> {
  const [, number, named = ''] = WRITTEN.exec(text.trim().replace('−', '-').replace(',', '.')) ?? []
  const isKnown = named === '' || named.trim().toLowerCase() === unit.toLowerCase()
  if (number !== undefined && isKnown) return ok(Number(number))
  return fail(`${what} is a number${unit === '' ? '' : ` in ${unit}`}, such as ${example}.`)
}

/** What a number field shows while nobody types: at most two decimals. */
export function numberText(value: number): string {
  return String(Math.round(value * 100) / 100).replace('-', '−')
}
