import { describe, expect, it } from 'vitest'
import { arrowDirection, directionName, parseDirection, stepFrom } from '#ui/canvas/direction.ts'

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

  it('is exact in quarter turns and read back in words', () => {
    expect(stepFrom([100, 200], 3810, 90)).toEqual([100, 4010])
    expect(stepFrom([0, 0], 1000, 30)[1]).toBeCloseTo(500, 9)
    expect(directionName(180)).toBe('left, 180°')
    expect(directionName(37.5)).toBe('37.5°')
    expect(arrowDirection('ArrowUp')).toBe('up')
    expect(arrowDirection('Enter')).toBeNull()
  })
})
