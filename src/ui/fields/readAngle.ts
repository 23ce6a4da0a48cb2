import { fail, ok, type Result } from '#units/result.ts'

const WRITTEN = /^([-+]?(?:\d+\.?\d*|\.\d+))\s*(?:°|deg|degrees?)?$/i

/**
 * A typed angle.
 * @returns degrees, or a sentence saying what is wrong and what now
 * @example readAngle('22.5°') // 22.5
 */
export function readAngle(text: string): Result<number, string> {
  const [, number] = WRITTEN.exec(text.trim().replace('−', '-')) ?? []
  return number === undefined ? fail('An angle is a number of degrees, such as 22.5.') : ok(Number(number))
}

/** What an angle field shows while nobody types: at most two decimals. */
export function angleText(degrees: number): string {
  return `${Math.round(degrees * 100) / 100}°`
}
