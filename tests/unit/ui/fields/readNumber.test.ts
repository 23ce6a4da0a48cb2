import { describe, expect, it } from 'vitest'
import { numberText, readNumber } from '#ui/fields/readNumber.ts'

const LEVEL = { unit: 'dB', what: 'At 63 Hz a level', example: 95 }

describe('a typed number', () => {
  it.each([
    ['100', 100],
    ['92.5 dB', 92.5],
    ['92,5', 92.5],
    ['−3 db', -3],
    ['-3', -3],
    ['+6', 6],
    ['.5', 0.5],
  ])('reads %s', (text, number) => {
    expect(readNumber(text, LEVEL)).toEqual({ ok: true, value: number })
  })

  it.each(['loud', '', '95 dBA', '1 2', '1.2.3'])('refuses "%s" and says what is expected', (text) => {
    expect(readNumber(text, LEVEL)).toEqual({ ok: false, error: 'At 63 Hz a level is a number in dB, such as 95.' })
  })

  it('asks for no unit where there is none', () => {
    expect(readNumber('x', { unit: '', what: 'The limit', example: 25 })).toEqual({
      ok: false,
      error: 'The limit is a number, such as 25.',
    })
  })

  it('shows two decimals at most, with a true minus sign, and reads what it shows', () => {
    expect([100, 92.456, -3.5].map(numberText)).toEqual(['100', '92.46', '−3.5'])
    expect(readNumber(numberText(-3.5), LEVEL)).toEqual({ ok: true, value: -3.5 })
  })
})
