import { describe, expect, it } from 'vitest'
import { readTypedWall } from '#ui/canvas/typedWall.ts'
import type { LengthUnit } from '#units/quantity.ts'

const read = (text: string, unit: LengthUnit = 'ft-in', before = 0) => {
  const wall = readTypedWall(text, unit, before)
  return wall.ok ? [Math.round(wall.value.lengthMm * 1000) / 1000, wall.value.degrees] : wall.error
}

describe('a wall typed in one field', () => {
  it.each([
    [`24' right`, 'ft-in', 7315.2, 0],
    [`24'r`, 'ft-in', 7315.2, 0],
    [`14'up`, 'ft-in', 4267.2, 90],
    ['12-6.5 u', 'ft-in', 3822.7, 90],
    [`12' 6 1/2" left`, 'ft-in', 3822.7, 180],
    ['3.81 m 45', 'ft-in', 3810, 45],
    ['381 cm 37,5°', 'mm', 3810, 37.5],
    ['168 in left', 'mm', 4267.2, 180],
    ['3810 d', 'mm', 3810, 270],
    ['3810d', 'mm', 3810, 270],
    ['3810 45°', 'mm', 3810, 45],
    ['12.5 ft 135 deg', 'ft-in', 3810, 135],
    ['150 u', 'ft-in', 3810, 90],
    [`24' 45°`, 'ft-in', 7315.2, 45],
  ] as const)('%s in %s is %d mm at %d degrees', (text, unit, length, degrees) => {
    expect(read(text, unit)).toEqual([length, degrees])
  })

  it('keeps every spelling of a length alone, and leaves the direction to its own field', () => {
    for (const text of [`12' 6 1/2"`, '12-6.5', '3822.7 mm', '3.8227 m', '382.27 cm', '150.5']) {
      expect(read(text)).toEqual([3822.7, null])
    }
    expect(read('12.5 ft')).toEqual([3810, null])
    expect(read('3810', 'mm')).toEqual([3810, null])
  })

  it('turns from the wall before', () => {
    expect(read(`6' left turn`, 'ft-in', 90)).toEqual([1828.8, 180])
    expect(read(`6' r turn`, 'ft-in', 0)).toEqual([1828.8, 270])
    expect(read('1.2 m +45', 'mm', 90)).toEqual([1200, 135])
    expect(read('1.2 m -90', 'mm', 90)).toEqual([1200, 0])
    expect(read('1.2 m -90°', 'mm', 0)).toEqual([1200, 270])
  })

  it('guesses neither of two readings', () => {
    expect(read(`24' 90`)).toBe(
      `"24' 90" can be read in two ways: write 24' 90° for the direction, or 24' 90" for inches.`,
    )
    expect(read('12 6')).toBe(
      `"12 6" can be read in two ways: write 12 6° for the direction, or 12'-6" for feet and inches.`,
    )
    expect(read('3810 45', 'mm')).toMatch(/write 3810 45° for the direction, or 381045 for one length/)
    expect(read(`12' 6`)).toEqual([3810, null])
  })

  it('says what is wrong', () => {
    expect(read('12 furlongs')).toMatch(/is not a length: expected mm, cm, m, ft or in after 12/)
    expect(read(`24' north`)).toMatch(/"north" is not a direction/)
    expect(read('')).toMatch(/Type a length/)
    expect(read('0')).toMatch(/more than 0/)
    expect(read('0 up')).toMatch(/more than 0/)
    expect(read('up')).toMatch(/"up" is not a length/)
  })
})
