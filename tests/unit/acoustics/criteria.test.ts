import { describe, expect, it } from 'vitest'
import { isPrintedNc, ncCurve, ncRating } from '#acoustics/criteria.ts'

describe('criteria', () => {
  it('lie half way between two printed curves', () => {
    expect(ncCurve(17.5)[0]).toBeCloseTo(49, 9)
  })

  it('say which curves are not printed', () => {
    expect([0, 14.9, 15, 70, 70.1].map(isPrintedNc)).toEqual([false, false, true, true, false])
  })

  it('rate what is under or over every printed curve in words, without a number', () => {
    expect(ncRating(ncCurve(10))).toMatchObject({ index: null, words: 'below NC-15' })
    expect(ncRating([90, 60, 50, 40, 30, 20, 10])).toMatchObject({ index: null, words: 'above NC-70, set by 63 Hz' })
    expect(ncRating([null, null, null, null, null, null, null])).toBeNull()
  })

  it('round the words up, never down', () => {
    expect(ncRating(ncCurve(22.1))?.words).toMatch(/^NC-23, set by/)
  })

  it('judge the octaves that are known alone', () => {
    expect(ncRating([null, 60, null, null, null, null, null])).toMatchObject({ index: 45, governingHz: 125 })
  })
})
