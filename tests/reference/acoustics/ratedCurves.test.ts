import { describe, expect, it } from 'vitest'
import { flatCurve, shiftCurve } from '#acoustics/curve.ts'
import { RW, rate, rateAll, rateWithEvidence, STC, STC_NO_8DB_RULE } from '#acoustics/rating.ts'
import { rateOitc } from '#acoustics/spectrumRating.ts'
import table from './ratedCurves.json' with { type: 'json' }

/** Sources stand beside the curves in ratedCurves.json. Ratings are whole numbers: no tolerance. */
describe('ratings of published curves', () => {
  it.each(table.curves)('$id: $source', ({ lossDb, published, derived }) => {
    expect(rateAll(lossDb)).toMatchObject(published)
    expect(rateAll(lossDb)).toMatchObject(derived)
  })

  it('shows the 8 dB rule at work in IR-761', () => {
    const rating = rate(table.curves[2]!.lossDb, STC)
    expect(rating).toMatchObject({ value: 33, limitedBy: 'band', limitingBandHz: 125 })
    expect(rating.shortfalls[4]).toBe(8)
    expect(rate(table.curves[2]!.lossDb, STC_NO_8DB_RULE)).toMatchObject({ value: 40, limitedBy: 'total' })
  })

  it('reaches the sum of 31.8 dB the standard prints for its example', () => {
    // To the tenth the standard prints.
    expect(rate(table.curves[0]!.lossDb, RW).totalShortfallDb).toBeCloseTo(31.8, 6)
  })

  it('reaches the A-weighted sums behind C and Ctr of that example', () => {
    // 28.31 and 26.86 dB, and 30 - 1.79 and 30 - 3.64 over 50-5000 Hz: recomputed by an independent hand.
    const { c, ctr, c50, ctr50 } = rateWithEvidence(table.curves[0]!.lossDb)
    expect([c, ctr, c50, ctr50].map(({ droppedDb }) => Number(droppedDb.toFixed(2)))).toEqual([
      28.31, 26.86, 28.21, 26.36,
    ])
    expect([c, ctr].map(({ limitingBandHz }) => limitingBandHz)).toEqual([3150, 160])
  })

  it('reaches the tenths ISO 12999-1 prints for its example: 57.4', () => {
    expect(rate(table.curves[1]!.lossDb, { ...RW, valueStepDb: 0.1 }).value).toBeCloseTo(57.4, 9)
  })

  it('gives a flat curve its own OITC, and moves with it', () => {
    // Holds because the level outside is summed from the same table as the level inside (ASTM E1332, memory).
    expect(rateOitc(flatCurve(30)).value).toBe(30)
    expect(rateOitc(shiftCurve(flatCurve(30), 1)).value).toBe(31)
  })
})
