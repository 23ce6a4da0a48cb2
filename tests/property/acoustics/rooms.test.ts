import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { BANDS_HZ } from '#acoustics/bands.ts'
import { compositeLoss, type Part } from '#acoustics/composite.ts'
import { ncCurve, ncRating, nrCurve } from '#acoustics/criteria.ts'
import { ductLoss } from '#acoustics/duct.ts'
import { holeLoss, holeTransmission, slitLoss } from '#acoustics/leak.ts'
import { energySum } from '#acoustics/levels.ts'
import { pairLoss } from '#acoustics/pair.ts'

const number = (min: number, max: number) => fc.double({ min, max, noNaN: true })
const curve = fc.array(number(0, 90), { minLength: BANDS_HZ.length, maxLength: BANDS_HZ.length })
const part: fc.Arbitrary<Part> = fc.record({ areaM2: number(0.001, 100), lossDb: curve })
const place = fc.constantFrom('middle', 'edge')

describe('parts side by side', () => {
  it('are the same when one is split into two equal halves', () => {
    fc.assert(
      fc.property(part, fc.array(part, { maxLength: 4 }), (one, others) => {
        const half = { ...one, areaM2: one.areaM2 / 2 }
        const whole = compositeLoss([one, ...others])
        compositeLoss([half, ...others, half]).forEach((loss, band) => {
          expect(loss).toBeCloseTo(whole[band]!, 9)
        })
      }),
    )
  })
})

describe('a leak', () => {
  it('is never worse than its open area, and passes something', () => {
    const slit = fc.record({ widthMm: number(0.05, 400), depthMm: number(0, 800), place })
    const hole = fc.record({ diameterMm: number(0.5, 400), depthMm: number(0, 800) })
    fc.assert(
      fc.property(slit, hole, (gap, round) => {
        for (const loss of [...slitLoss(gap), ...holeLoss(round)]) {
          expect(loss).toBeGreaterThanOrEqual(0)
          expect(Number.isFinite(loss)).toBe(true)
        }
      }),
      { numRuns: 300 },
    )
  })

  it('through a round hole falls below its first resonance as the wall gets deeper', () => {
    fc.assert(
      fc.property(number(1, 20), number(10, 100), number(1, 100), (diameterMm, depthMm, deeper) => {
        const before = holeTransmission(100, { diameterMm, depthMm })
        expect(holeTransmission(100, { diameterMm, depthMm: depthMm + deeper })).toBeLessThan(before)
      }),
    )
  })
})

describe('criteria', () => {
  it('rise in every octave with their index, and are finite from 0 to 80', () => {
    fc.assert(
      fc.property(number(0, 80), number(0.1, 20), (index, by) => {
        for (const family of [ncCurve, nrCurve]) {
          const low = family(index)
          family(index + by).forEach((level, octave) => {
            expect(Number.isFinite(level)).toBe(true)
            expect(level).toBeGreaterThan(low[octave]!)
          })
        }
      }),
    )
  })

  it('rate a spectrum at the lowest NC curve that no octave passes', () => {
    const spectrum = fc.array(number(20, 60), { minLength: 7, maxLength: 7 })
    fc.assert(
      fc.property(spectrum, (levels) => {
        const { index } = ncRating(levels)!
        if (index === null) return
        const above = ncCurve(index).map((limit, octave) => limit - levels[octave]!)
        expect(Math.min(...above)).toBeCloseTo(0, 6)
      }),
    )
  })
})

describe('levels together', () => {
  it('are at least the loudest, and at most 10 lg n above it', () => {
    fc.assert(
      fc.property(fc.array(number(-20, 130), { minLength: 1, maxLength: 9 }), (levels) => {
        const together = energySum(levels)
        const loudest = Math.max(...levels)
        expect(together).toBeGreaterThanOrEqual(loudest - 1e-9)
        expect(together).toBeLessThanOrEqual(loudest + 10 * Math.log10(levels.length) + 1e-9)
      }),
    )
  })
})

describe('two leaves', () => {
  const between = fc.record({ areaM2: number(0.2, 10), gapMm: number(10, 1500), absorptionM2: number(0.01, 20) })

  it('are at least as good as the better one, whichever comes first', () => {
    fc.assert(
      fc.property(curve, curve, between, (first, second, room) => {
        const pair = pairLoss(first, second, room)
        const back = pairLoss(second, first, room)
        pair.forEach((loss, band) => {
          expect(loss).toBeGreaterThanOrEqual(Math.max(first[band]!, second[band]!))
          expect(loss).toBeCloseTo(back[band]!, 9)
        })
      }),
    )
  })

  it('never lose by a better leaf or a softer room', () => {
    fc.assert(
      fc.property(curve, curve, between, number(0, 20), number(1, 5), (first, second, room, by, times) => {
        const before = pairLoss(first, second, room)
        const better = first.map((loss) => loss + by)
        const softer = { ...room, absorptionM2: room.absorptionM2 * times }
        for (const after of [pairLoss(better, second, room), pairLoss(first, second, softer)]) {
          after.forEach((loss, band) => {
            expect(loss).toBeGreaterThanOrEqual(before[band]! - 1e-9)
          })
        }
      }),
    )
  })
})

describe('a duct', () => {
  const run = fc.record({
    widthMm: number(80, 900),
    heightMm: number(80, 900),
    lengthM: number(0, 20),
    liningMm: fc.oneof(fc.constant(0), number(0, 150)),
    linedLengthM: number(0, 25),
    bends: fc.integer({ min: 0, max: 6 }),
  })
  const lossOf = ({ widthMm, heightMm, ...rest }: typeof run extends fc.Arbitrary<infer R> ? R : never) =>
    ductLoss({
      ...rest,
      perimeterMm: 2 * (widthMm + heightMm),
      areaM2: (widthMm * heightMm) / 1e6,
      silencerDb: [null, 5, 10, 20, 30, 30, 20],
      end: 'flush',
    })

  it('never lets less be lost by one bend, a longer way or a thicker lining more', () => {
    fc.assert(
      fc.property(run, (duct) => {
        const before = lossOf(duct)
        const more = [
          { ...duct, bends: duct.bends + 1 },
          { ...duct, lengthM: duct.lengthM + 1, linedLengthM: duct.linedLengthM + 1 },
          { ...duct, liningMm: duct.liningMm + 10 },
        ]
        for (const after of more.map(lossOf)) {
          after.forEach((loss, band) => {
            expect(loss).toBeGreaterThanOrEqual(before[band]! - 1e-9)
          })
        }
        for (const loss of before) expect(loss).toBeGreaterThanOrEqual(0)
      }),
    )
  })
})
