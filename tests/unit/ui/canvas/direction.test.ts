import { describe, expect, it } from 'vitest'
import { arrowDirection, directionName, directionText, parseDirection, stepFrom } from '#ui/canvas/direction.ts'

describe('a typed direction', () => {
  it.each([
    ['right', 0],
    ['u', 90],
    [' Left ', 180],
    ['down', 270],
    ['37,5°', 37.5],
    ['-90', 270],
    ['450 deg', 90],
  ])('%s is %d degrees', (text, degrees) => {
    expect(parseDirection(text)).toEqual({ ok: true, value: degrees })
  })

  it('says what it expected', () => {
    const read = parseDirection('north')
    expect(read.ok ? '' : read.error).toMatch(/"north" is not a direction: write right, up, left, down/)
    expect(parseDirection('').ok).toBe(false)
  })

  it.each([
    ['left turn', 0, 90],
    ['l turn', 270, 0],
    ['right turn', 0, 270],
    ['+45', 90, 135],
    ['- 45°', 90, 45],
    ['45', 90, 45],
  ])('%s after a wall at %d degrees is %d degrees', (text, before, degrees) => {
    expect(parseDirection(text, before)).toEqual({ ok: true, value: degrees })
  })

  it('does not turn where the word is not a turn', () => {
    expect(parseDirection('up turn', 0).ok).toBe(false)
    expect(parseDirection('turn', 0).ok).toBe(false)
  })

  it('writes a direction as it can be typed', () => {
    expect([0, 90, 180, 270, 45, 359.99999].map(directionText)).toEqual(['right', 'up', 'left', 'down', '45', '360'])
    expect([45, 12.3456].map((degrees) => parseDirection(directionText(degrees)))).toEqual([
      { ok: true, value: 45 },
      { ok: true, value: 12.346 },
    ])
  })

  it('is exact in quarter turns and read back in words', () => {
    expect(stepFrom([100, 200], 3810, 90)).toEqual([100, 4010])
    expect(stepFrom([0, 0], 1000, 30)[1]).toBeCloseTo(500, 9)
    expect(directionName(180)).toBe('left, 180°')
    expect(directionName(37.5)).toBe('37.5°')
    expect(arrowDirection('ArrowUp')).toBe('up')
    expect(arrowDirection('Enter')).toBeNull()
  })
})
