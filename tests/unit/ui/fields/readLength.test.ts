import { describe, expect, test } from 'vitest'
import { bothReadings, nudge, readLength } from '#ui/fields/readLength.ts'

describe('a typed length', () => {
  test('is read in the unit of the project and shown in both', () => {
    const read = readLength('12-6.5', 'ft-in')
    expect(read.ok && read.value).toBeCloseTo(3822.7, 9)
    expect(bothReadings(3822.7, 'ft-in')).toBe(`12'-6 1/2" · 3822.7 mm`)
    expect(bothReadings(3822.7, 'mm')).toBe(`3822.7 mm · 12'-6 1/2"`)
  })

  test('that cannot be read says what was expected', () => {
    expect(readLength('12 furlongs', 'mm')).toEqual({
      ok: false,
      error: '"12 furlongs" is not a length: expected mm, cm, m, ft or in after 12.',
    })
  })

  test('of 0 is refused where a thing must have a length, and kept where 0 means none', () => {
    expect(readLength('0', 'mm', { leastMm: 0, moreThanLeast: true }).ok).toBe(false)
    expect(readLength('0', 'mm', { leastMm: 0 })).toEqual({ ok: true, value: 0 })
    expect(readLength('-3', 'mm', { leastMm: 0 })).toEqual({ ok: false, error: 'It cannot be less than 0 mm.' })
  })

  test('is nudged by the finest step a tape shows', () => {
    expect(nudge('mm', false)).toBe(1)
    expect(nudge('ft-in', false)).toBe(1.5875)
    expect(nudge('ft-in', true)).toBe(25.4)
  })
})
