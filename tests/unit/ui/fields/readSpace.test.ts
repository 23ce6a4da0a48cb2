import { describe, expect, it } from 'vitest'
import { bothSpaces, isSameSpace, readSpace, spaceText } from '#ui/fields/readSpace.ts'

describe('a typed area or volume', () => {
  it.each([
    ['30', 'mm', 'volume', 30],
    ['30 m³', 'ft-in', 'volume', 30],
    ['1059.4', 'ft-in', 'volume', 30],
    ['1,059 ft3', 'mm', 'volume', 29.99],
    ['1059 cu ft', 'mm', 'volume', 29.99],
    ['10 m2', 'ft-in', 'area', 10],
    ['107.6', 'ft-in', 'area', 10],
    ['107.6 sq ft', 'mm', 'area', 10],
    ['-1', 'mm', 'volume', -1],
  ] as const)('reads %s in %s as a %s', (text, unit, kind, expected) => {
    const read = readSpace(text, unit, kind)
    expect(read.ok && read.value).toBeCloseTo(expected, 2)
  })

  it.each(['big', '', '30 m2', '30 litres', '3,5'])('refuses "%s" as a volume with a sentence', (text) => {
    expect(readSpace(text, 'mm', 'volume')).toEqual({
      ok: false,
      error: 'It is a number with m3 or ft3 after it, such as 30 m3.',
    })
  })

  it('is told in both units, and is the same where it is shown as the same', () => {
    expect(bothSpaces(30, 'ft-in', 'volume')).toBe('1,059 ft³ · 30.00 m³')
    const shown = readSpace(spaceText(30, 'ft-in', 'volume'), 'ft-in', 'volume')
    expect(shown.ok && isSameSpace(shown.value, 30, 'ft-in', 'volume')).toBe(true)
    expect(isSameSpace(30, 31, 'ft-in', 'volume')).toBe(false)
    expect(isSameSpace(null, 30, 'mm', 'area')).toBe(false)
  })
})
