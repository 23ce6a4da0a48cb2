import { describe, expect, it } from 'vitest'
import { flatCurve } from '#acoustics/curve.ts'
import { RW, rate, rateAll, STC, STC_IN_TENTHS } from '#acoustics/rating.ts'

/** The STC contour itself at 50, set into 21 bands. */
const CONTOUR_50 = flatCurve(60).map((value, i) => rate(flatCurve(50), STC).contour[i] ?? value)

describe('rate', () => {
  it('gives a curve on the contour that value plus what 32 dB of shortfall buys', () => {
    const own = CONTOUR_50.map((value) => value + 50 - rate(flatCurve(50), STC).value)
    // 16 bands: two more dB cost 32 in all, a third would cost 48.
    expect(rate(own, STC)).toMatchObject({ value: 52, totalShortfallDb: 32, limitedBy: 'total' })
  })

  it('rounds halves upward before it looks', () => {
    expect(rate(flatCurve(40.5), STC).value).toBe(rate(flatCurve(41), STC).value)
    expect(rate(flatCurve(40.49), STC).value).toBe(rate(flatCurve(40), STC).value)
    // 40.05 has no exact binary form; it must still count as 40.1.
    expect(rate(flatCurve(40.05), RW).totalShortfallDb).toBeCloseTo(rate(flatCurve(40.1), RW).totalShortfallDb, 9)
  })

  it('leaves bands outside the rule out of contour and shortfalls', () => {
    const { contour, shortfalls } = rate(flatCurve(30), STC)
    expect(contour.slice(0, 4)).toEqual([null, null, null, null])
    expect(contour[20]).toBeNull()
    expect(shortfalls.slice(0, 4)).toEqual([0, 0, 0, 0])
  })

  it('names the band that holds the rating back', () => {
    const dip = flatCurve(60).map((value, i) => (i === 17 ? 30 : value))
    expect(rate(dip, STC)).toMatchObject({ limitedBy: 'band', limitingBandHz: 2500 })
  })

  it('gives tenths only where it is asked for statistics', () => {
    expect(rate(flatCurve(40.3), STC_IN_TENTHS).value - rate(flatCurve(40), STC_IN_TENTHS).value).toBeCloseTo(0.3, 9)
  })

  it('refuses a curve with a hole', () => {
    expect(() => rate(flatCurve(40).slice(1), STC)).toThrow('21 finite bands')
  })

  it('rates a curve that stops nothing without looping for ever', () => {
    expect(rateAll(flatCurve(0)).stc).toBeLessThanOrEqual(2)
    expect(rateAll(flatCurve(-30)).stc).toBeLessThan(-25)
  })
})
