import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { formatLength } from '#units/format.ts'
import { parseLength } from '#units/parseLength.ts'
import type { LengthUnit } from '#units/quantity.ts'

function read(text: string, unit: LengthUnit = 'mm'): number {
  const result = parseLength(text, unit)
  if (!result.ok) throw new Error(result.error.message)
  return result.value
}

describe('parseLength', () => {
  it.each([
    [`12' 6 1/2"`, 'mm', 3822.7],
    [`12'-6 1/2"`, 'mm', 3822.7],
    ['12-6.5', 'ft-in', 3822.7],
    ['12 ft 6.5 in', 'mm', 3822.7],
    ["12'", 'mm', 3657.6],
    ["12'6", 'mm', 3810],
    ['12.5 ft', 'mm', 3810],
    ['6-1/2 in', 'mm', 165.1],
    ['6 1/2"', 'mm', 165.1],
    ['5/8"', 'mm', 15.875],
    ['3.81 m', 'mm', 3810],
    ['3,81 m', 'ft-in', 3810],
    ['381 cm', 'ft-in', 3810],
    ['3810', 'mm', 3810],
    ['150', 'ft-in', 3810],
    ['6 1/2', 'ft-in', 165.1],
    ['12′ 6 1/2″', 'mm', 3822.7],
    ['3810mm', 'ft-in', 3810],
    ['-25 mm', 'mm', -25],
  ] as const)('reads %s in a %s project', (text, unit, mm) => {
    expect(read(text, unit)).toBeCloseTo(mm, 9)
  })

  it('says where a length stops being one', () => {
    const result = parseLength('12 furlongs', 'mm')
    expect(result).toEqual({
      ok: false,
      error: { kind: 'not-a-length', message: '"12 furlongs" is not a length: expected mm, cm, m, ft or in after 12.' },
    })
  })

  it('does not guess what a comma before three digits means', () => {
    const result = parseLength('3,000', 'mm')
    expect(!result.ok && result.error.message).toBe(
      '"3,000" can be read in two ways: write 3000, or a point for the decimal mark.',
    )
  })

  it.each(['', '  ', 'abc', '1/0 in', '12 6 m', '1/2', '--3', '3..4', '12\' 6"" 3'])(
    'refuses %j in a metric project',
    (text) => {
      expect(parseLength(text, 'mm').ok).toBe(false)
    },
  )
})

describe('formatLength', () => {
  it.each([
    [3512, 'mm', '3512 mm'],
    [3511.55, 'ft-in', `11'-6 1/4"`],
    [146.05, 'ft-in', '5 3/4"'],
    [3365.5, 'ft-in', `11'-0 1/2"`],
    [12.7, 'ft-in', '1/2"'],
    [6096, 'ft-in', `20'-0"`],
    [0, 'ft-in', '0"'],
    [-12.7, 'ft-in', '-1/2"'],
    [-0.2, 'mm', '0 mm'],
  ] as const)('writes %s mm in %s as %s', (mm, unit, text) => {
    expect(formatLength(mm, unit)).toBe(text)
  })

  it('gives back what it wrote, down to 1/64 in and to the millimetre', () => {
    fc.assert(
      fc.property(fc.integer({ min: -64 * 12 * 200, max: 64 * 12 * 200 }), (parts) => {
        const mm = (parts * 25.4) / 64
        expect(read(formatLength(mm, 'ft-in', 64), 'ft-in')).toBeCloseTo(mm, 6)
      }),
    )
    fc.assert(
      fc.property(fc.integer({ min: -60000, max: 60000 }), (mm) => {
        expect(read(formatLength(mm, 'mm'), 'mm')).toBe(mm)
      }),
    )
  })
})
