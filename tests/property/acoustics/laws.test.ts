import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { compositeLoss } from '#acoustics/composite.ts'
import { RW, rate, STC, STC_IN_TENTHS, STC_NO_8DB_RULE } from '#acoustics/rating.ts'

const curves = fc.array(fc.double({ min: 0, max: 90, noNaN: true }), { minLength: 21, maxLength: 21 })

describe('ratings', () => {
  it('keep inside their own limits, and one step more would not', () => {
    fc.assert(
      fc.property(curves, fc.constantFrom(STC, STC_NO_8DB_RULE, RW, STC_IN_TENTHS), (curve, rule) => {
        const rating = rate(curve, rule)
        const most = Math.max(...rating.shortfalls)
        expect(rating.totalShortfallDb).toBeLessThanOrEqual(32 + 1e-6)
        expect(most).toBeLessThanOrEqual((rule.maxBandShortfallDb ?? 32) + 1e-6)
        const grown = rating.shortfalls.map((shortfall, band) => {
          const at = rating.contour[band]
          if (at === null || at === undefined) return 0
          const heard = shortfall > 0 ? at - shortfall : Math.floor(curve[band]! * 10 + 0.5) / 10
          const told = rule.roundLossToDb === 1 && shortfall === 0 ? Math.floor(curve[band]! + 0.5) : heard
          return Math.max(
            0,
            at + rule.valueStepDb - (rule.roundLossToDb === null && shortfall === 0 ? curve[band]! : told),
          )
        })
        const breaksTotal = grown.reduce((a, b) => a + b, 0) > 32
        const breaksBand = rule.maxBandShortfallDb !== null && Math.max(...grown) > rule.maxBandShortfallDb
        expect(breaksTotal || breaksBand).toBe(true)
      }),
      { numRuns: 300 },
    )
  })

  it('never fall when a band rises', () => {
    fc.assert(
      fc.property(
        curves,
        fc.integer({ min: 0, max: 20 }),
        fc.double({ min: 0, max: 20, noNaN: true }),
        (curve, band, by) => {
          const better = curve.map((value, i) => (i === band ? value + by : value))
          for (const rule of [STC, STC_NO_8DB_RULE, RW]) {
            expect(rate(better, rule).value).toBeGreaterThanOrEqual(rate(curve, rule).value)
          }
        },
      ),
    )
  })
})

describe('a composite', () => {
  it('lies between its worst and its best part in every band', () => {
    const parts = fc.array(fc.record({ areaM2: fc.double({ min: 0.001, max: 100, noNaN: true }), lossDb: curves }), {
      minLength: 1,
      maxLength: 5,
    })
    fc.assert(
      fc.property(parts, (side) => {
        compositeLoss(side).forEach((value, band) => {
          const own = side.map((part) => part.lossDb[band]!)
          expect(value).toBeGreaterThanOrEqual(Math.min(...own) - 1e-9)
          expect(value).toBeLessThanOrEqual(Math.max(...own) + 1e-9)
        })
      }),
    )
  })
})
