import { describe, expect, test } from 'vitest'
import type { Point } from '#geometry/polygon.ts'
import {
  misclosureOf,
  moveEndOntoFirst,
  nearlyCloses,
  returnsToFirst,
  spreadMisclosure,
  wallLengths,
} from '#geometry/survey.ts'
import { frozen } from '../../support/geometryMeasures.ts'

/** A room of 4 by 3 m whose last wall was read 30 mm short and whose second leans 40 mm. */
const SURVEY: readonly Point[] = frozen([
  [0, 0],
  [4000, 0],
  [4040, 3000],
  [40, 3000],
  [40, 30],
])
const CLOSED: readonly Point[] = frozen([
  [100, 200],
  [4100, 200],
  [4100, 3200],
  [100, 3200],
  [100, 200],
])

describe('the misclosure', () => {
  test('is the end seen from the beginning, and a share of the way walked', () => {
    const { xMm, yMm, distanceMm, perimeterMm, oneIn } = misclosureOf(SURVEY)
    expect([xMm, yMm, distanceMm]).toEqual([40, 30, 50])
    expect(perimeterMm).toBeCloseTo(4000 + Math.hypot(40, 3000) + 4000 + 2970, 9)
    expect(oneIn).toBeCloseTo(perimeterMm / 50, 9)
  })

  test('of a survey that closes is nothing', () => {
    expect(misclosureOf(CLOSED)).toEqual({ xMm: 0, yMm: 0, distanceMm: 0, perimeterMm: 14_000, oneIn: null })
    expect(returnsToFirst(CLOSED)).toBe(true)
    expect(nearlyCloses(CLOSED)).toBe(false)
    expect(misclosureOf([]).distanceMm).toBe(0)
  })
})

describe('near the first corner', () => {
  const endingAt = (x: number, side = 4000): Point[] => [
    [0, 0],
    [side, 0],
    [side, side],
    [0, side],
    [0, x],
  ]
  test.each([
    // 16 m round less what is missing: 2 % is a little under 320 mm, so the 300 mm rule.
    [4000, 300, true],
    [4000, 301, false],
    // 4 m round: 2 % of what was walked.
    [1000, 78, true],
    [1000, 79, false],
    [1000, 0.9, false],
  ])('a room of %d mm that ends %d mm off: %s', (side, off, near) => {
    expect(nearlyCloses(endingAt(off, side))).toBe(near)
  })

  test('asks for three walls at least', () => {
    expect(nearlyCloses(SURVEY.slice(0, 3))).toBe(false)
    expect(
      nearlyCloses([
        [0, 0],
        [100, 0],
        [1, 1],
      ]),
    ).toBe(false)
  })
})

describe('spread over all walls', () => {
  const spread = spreadMisclosure(SURVEY)

  test('closes exactly and keeps the first corner', () => {
    expect(spread).toHaveLength(SURVEY.length)
    expect(spread[0]).toEqual(SURVEY[0])
    expect(spread.at(-1)).toEqual(SURVEY[0])
  })

  test('changes every wall in proportion to its length', () => {
    const lengths = wallLengths(SURVEY)
    const { xMm, yMm, perimeterMm } = misclosureOf(SURVEY)
    lengths.forEach((length, i) => {
      const change = [0, 1].map((axis) => {
        const after = spread[i + 1]![axis]! - spread[i]![axis]!
        const before = SURVEY[i + 1]![axis]! - SURVEY[i]![axis]!
        return after - before
      })
      expect(change[0]).toBeCloseTo((-xMm * length) / perimeterMm, 8)
      expect(change[1]).toBeCloseTo((-yMm * length) / perimeterMm, 8)
    })
  })

  test('of a survey that closes is the survey', () => {
    expect(spreadMisclosure(CLOSED)).toEqual(CLOSED)
    expect(spreadMisclosure([])).toEqual([])
    expect(spreadMisclosure([[5, 6]])).toEqual([[5, 6]])
  })
})

test('moving the end changes the last wall alone', () => {
  const moved = moveEndOntoFirst(SURVEY)
  expect(moved.slice(0, -1)).toEqual(SURVEY.slice(0, -1))
  expect(moved.at(-1)).toEqual(SURVEY[0])
  expect(wallLengths(moved).slice(0, -1)).toEqual(wallLengths(SURVEY).slice(0, -1))
  expect(wallLengths(moved).at(-1)).toBeCloseTo(Math.hypot(40, 3000), 9)
})
