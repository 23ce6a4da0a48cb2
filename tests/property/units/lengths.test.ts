import { describe, expect, it } from 'vitest'
import { formatLength, formatThickness } from '#units/format.ts'
import { parseLength } from '#units/parseLength.ts'
import type { LengthUnit } from '#units/quantity.ts'

/** Longest length a project may have, and a little more: 200 ft. */
const MOST_64THS = 200 * 12 * 64
const MOST_TENTHS_MM = 600_000
/** What one rounding of the machine may leave at these lengths, mm. */
const ROUNDING_MM = 1e-10

function read(text: string, unit: LengthUnit): number {
  const result = parseLength(text, unit)
  return result.ok ? result.value : Number.NaN
}

/** Ways of writing that differ only in words are tried on every seventh length, the law itself on every one. */
const SOME = 7

/** The first of all lengths that is not read as it was meant. */
function firstWrong(
  count: number,
  length: (k: number) => number,
  text: (k: number) => string,
  unit: LengthUnit,
  every = 1,
): string | null {
  for (let k = 0; k <= count; k += every) {
    const wrong = !(Math.abs(read(text(k), unit) - length(k)) <= ROUNDING_MM)
    if (wrong) return `${text(k)} is read as ${read(text(k), unit)}, not ${length(k)}`
  }
  return null
}

const inches64 = (k: number) => (k * 25.4) / 64

/** A whole number of thousandths, hundredths ... as a decimal, in exact digits. */
function decimal(k: number, places: number): string {
  const digits = String(k).padStart(places + 1, '0')
  return places === 0 ? digits : `${digits.slice(0, -places)}.${digits.slice(-places)}`
}

describe('every length that is written is read as itself', () => {
  it.each<LengthUnit>(['ft-in', 'mm'])('feet and inches to 1/64 in up to 200 ft, in a %s project', (unit) => {
    const every = unit === 'mm' ? SOME : 1
    expect(firstWrong(MOST_64THS, inches64, (k) => formatLength(inches64(k), 'ft-in', 64), unit, every)).toBeNull()
    expect(firstWrong(MOST_64THS, inches64, (k) => formatThickness(inches64(k), 'ft-in'), unit, SOME)).toBeNull()
  })

  it.each([2, 4, 8, 16, 32])('feet and inches to 1/%i in, written as coarsely', (fraction) => {
    const length = (k: number) => (k * 25.4) / fraction
    expect(firstWrong(2400 * fraction, length, (k) => formatLength(length(k), 'ft-in', fraction), 'ft-in')).toBeNull()
  })

  it.each<LengthUnit>(['mm', 'ft-in'])('millimetres and their tenths up to 60 m, in a %s project', (unit) => {
    expect(
      firstWrong(
        60_000,
        (k) => k,
        (k) => formatLength(k, 'mm'),
        unit,
      ),
    ).toBeNull()
    expect(
      firstWrong(
        MOST_TENTHS_MM,
        (k) => k / 10,
        (k) => formatThickness(k / 10, 'mm'),
        unit,
        unit === 'mm' ? 1 : SOME,
      ),
    ).toBeNull()
  })

  it('lengths below nothing too', () => {
    expect(
      firstWrong(
        12 * 64 * 20,
        (k) => -inches64(k),
        (k) => formatLength(-inches64(k), 'ft-in', 64),
        'mm',
      ),
    ).toBeNull()
    expect(
      firstWrong(
        20_000,
        (k) => -k / 10,
        (k) => formatThickness(-k / 10, 'mm'),
        'ft-in',
      ),
    ).toBeNull()
  })

  it.each([
    ['m', 4, 10],
    ['cm', 2, 10],
    ['mm', 1, 10],
  ] as const)('decimals of %s, with a point or a comma', (unit, places, perMm) => {
    const length = (k: number) => k / perMm
    expect(
      firstWrong(MOST_TENTHS_MM, length, (k) => `${decimal(k, places)} ${unit}`, 'ft-in', places === 4 ? 1 : SOME),
    ).toBeNull()
    expect(firstWrong(MOST_TENTHS_MM, length, (k) => `${decimal(k, places)}${unit}`, 'mm', SOME)).toBeNull()
    const comma = (k: number) => `${decimal(k, places).replace('.', ',')} ${unit}`
    expect(firstWrong(MOST_TENTHS_MM, length, comma, 'mm', SOME)).toBeNull()
  })

  it('decimals of a foot and of an inch', () => {
    expect(
      firstWrong(
        200_00,
        (k) => (k * 304.8) / 100,
        (k) => `${decimal(k, 2)} ft`,
        'mm',
      ),
    ).toBeNull()
    expect(
      firstWrong(
        2400_00,
        (k) => (k * 25.4) / 100,
        (k) => `${decimal(k, 2)} in`,
        'mm',
      ),
    ).toBeNull()
    expect(
      firstWrong(
        2400_00,
        (k) => (k * 25.4) / 100,
        (k) => decimal(k, 2),
        'ft-in',
      ),
    ).toBeNull()
    expect(
      firstWrong(
        200 * 24,
        (k) => (k * 304.8) / 24,
        (k) => `${Math.floor(k / 24)}-${(k % 24) / 2}`,
        'ft-in',
      ),
    ).toBeNull()
  })
})
