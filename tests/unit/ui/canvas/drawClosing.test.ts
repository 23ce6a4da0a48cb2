import { describe, expect, it } from 'vitest'
import type { Point } from '#geometry/polygon.ts'
import { misclosureOf } from '#geometry/survey.ts'
import { closedOutline, closingRows } from '#ui/canvas/closing.ts'
import { keptWords, misclosureWords } from '#ui/canvas/drawWords.ts'

const SURVEY: readonly Point[] = [
  [0, 0],
  [4000, 0],
  [4000, 3000],
  [0, 3000],
  [0, 50],
]

describe('closing a survey that does not quite meet', () => {
  it('keeps every corner for a short wall, and repeats none otherwise', () => {
    expect(closedOutline(SURVEY, null)).toEqual(SURVEY)
    expect(closedOutline(SURVEY, 'keep')).toEqual(SURVEY)
    expect(closedOutline(SURVEY, 'move')).toEqual(SURVEY.slice(0, 4))
    const spread = closedOutline(SURVEY, 'spread')
    expect(spread).toHaveLength(4)
    expect(spread[0]).toEqual([0, 0])
    // 50 mm over 13950 mm: 4000 mm on, the second corner goes down by its share.
    expect(spread[1]?.[1]).toBeCloseTo((-50 * 4000) / 13_950, 9)
  })

  it('shows each wall as measured and as closed', () => {
    const rows = closingRows(SURVEY, 'move')
    expect(rows.map(({ wall, measuredMm, closedMm }) => [wall, measuredMm, closedMm])).toEqual([
      [1, 4000, 4000],
      [2, 3000, 3000],
      [3, 4000, 4000],
      [4, 2950, 3000],
    ])
    expect(rows.map(({ turn }) => turn)).toEqual([0, 0, 0, 0])
    const kept = closingRows(SURVEY, 'keep')
    expect(kept).toHaveLength(5)
    expect(kept[4]).toEqual({ wall: 5, measuredMm: null, closedMm: 50, turn: 0 })
    const spread = closingRows(SURVEY, 'spread')
    // The first wall falls by 14.3 mm over 4 m: 0.205 degrees to the right.
    expect(spread[0]?.turn).toBeCloseTo(-(Math.atan(50 / 13_950) * 180) / Math.PI, 9)
    expect(spread[3]?.closedMm).toBeCloseTo(2950 + (50 * 2950) / 13_950, 9)
  })

  it('says by how much, which way and how good that is', () => {
    expect(misclosureWords(misclosureOf(SURVEY), 'mm')).toBe(
      `The last wall ends 50 mm · 1 31/32" off the first corner (50 mm above), 1 in 279 of the 13950 mm measured.`,
    )
    const both = misclosureOf([...SURVEY.slice(0, 4), [-30, -40]])
    expect(misclosureWords(both, 'mm')).toContain('(30 mm to the left and 40 mm below)')
    expect(keptWords(3)).toBe('The outline is kept with its 3 corners: Draw room goes on with it.')
  })
})
