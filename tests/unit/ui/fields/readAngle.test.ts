import { describe, expect, it } from 'vitest'
import { angleText, readAngle } from '#ui/fields/readAngle.ts'

describe('an angle', () => {
  it.each([
    ['22.5', 22.5],
    [' 22.5° ', 22.5],
    ['-90 deg', -90],
    ['−45°', -45],
    ['.5 degrees', 0.5],
  ])('is read from %s', (text, degrees) => {
    expect(readAngle(text)).toEqual({ ok: true, value: degrees })
  })

  it.each(['', 'north', '12 m', '1e3'])('is refused in a sentence: "%s"', (text) => {
    expect(readAngle(text)).toMatchObject({ ok: false, error: expect.stringMatching(/^An angle is .*\.$/) })
  })

  it('is shown as it is read back', () => {
    for (const degrees of [0, 22.5, -90, 33.33])
      expect(readAngle(angleText(degrees))).toEqual({ ok: true, value: degrees })
  })
})
