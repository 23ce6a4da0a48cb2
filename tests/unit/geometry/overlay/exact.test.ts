import { expect, test } from 'vitest'
import { meetsPixel, roundedAlong, turn } from '#geometry/overlay/exact.ts'
import { randomFrom } from '../../../support/geometryRooms.ts'

test('turn tells left from right at 60 m and 1 step', () => {
  const far = 60_000 * 320
  expect(turn(0, 0, far, far - 1, far - 1, far - 2)).toBe(-1)
  expect(turn(0, 0, far - 1, far - 2, far, far - 1)).toBe(1)
})

test.each([
  ['an exact half goes up', 0, 1, 1, 2, 1],
  ['an exact half below zero goes up', 0, -3, 1, 2, -1],
  ['a negative whole is no other fraction', 0, 1, -1, -2, 1],
  ['just under a half stays', 5, 1, 4_999_999_999, 10_000_000_000, 5],
  ['just over a half goes up', 5, 1, 5_000_000_001, 10_000_000_000, 6],
  ['plain', 10, 100, 1, 3, 43],
] as const)('rounding a crossing: %s', (_, start, span, part, whole, expected) => {
  expect(roundedAlong(start, span, part, whole)).toBe(expected)
})

test('a slanted segment through the corner of four squares meets three of them, not four', () => {
  const met = [
    [0, 0],
    [1, 0],
    [0, 1],
    [1, 1],
  ].filter(([x, y]) => meetsPixel(-5, -5, 5, 5, x!, y!))
  expect(met).toEqual([
    [0, 0],
    [1, 0],
    [1, 1],
  ])
  const falling = [
    [0, 1],
    [1, 1],
    [0, 0],
    [1, 0],
  ].filter(([x, y]) => meetsPixel(-4, 5, 5, -4, x!, y!))
  expect(falling.length).toBe(3)
})

test('squares met do not depend on the direction of the segment, and follow each other without a gap', () => {
  const random = randomFrom(5)
  const whole = (): number => Math.floor(random() * 13)
  for (let k = 0; k < 500; k++) {
    const [ax, ay, bx, by] = [whole(), whole(), whole(), whole()]
    if (ax === bx && ay === by) continue
    const met: [number, number][] = []
    for (let x = 0; x < 13; x++) {
      for (let y = 0; y < 13; y++) {
        const meets = meetsPixel(ax, ay, bx, by, x, y)
        if (meetsPixel(bx, by, ax, ay, x, y) !== meets) throw new Error(`direction matters at ${x}, ${y}`)
        if (meets) met.push([x, y])
      }
    }
    const along = ([x, y]: [number, number]): number => x * Math.sign(bx - ax) + y * Math.sign(by - ay)
    met.sort((one, other) => along(one) - along(other))
    expect(met[0]).toEqual([ax, ay])
    expect(met.at(-1)).toEqual([bx, by])
    // One square borders the next in a side, never in a corner only: so no two squares share a step along the way.
    expect(met.length).toBe(Math.abs(bx - ax) + Math.abs(by - ay) + 1)
  }
})
