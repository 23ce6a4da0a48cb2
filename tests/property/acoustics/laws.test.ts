import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { BANDS_HZ } from '#acoustics/bands.ts'
import { compositeLoss } from '#acoustics/composite.ts'
import { lossCurve } from '#acoustics/layered/lossCurve.ts'
import { METHOD } from '#acoustics/layered/method.ts'
import { predictLoss } from '#acoustics/layered/predict.ts'
import { massAirMass } from '#acoustics/layered/resonance.ts'
import { type Cavity, type LayeredSystem, type Leaf, type Link, reverseSystem } from '#acoustics/layered/system.ts'
import type { MaterialId } from '#acoustics/materials.ts'
import { RW, rate, STC, STC_IN_TENTHS, STC_NO_8DB_RULE } from '#acoustics/rating.ts'
import { leafOf, limpLeaf } from '../../support/acoustics.ts'

const curves = fc.array(fc.double({ min: 0, max: 90, noNaN: true }), { minLength: 21, maxLength: 21 })

const LIGHT: readonly MaterialId[] = ['gypsum-type-x', 'gypsum-regular', 'plywood', 'osb']
const leaves: fc.Arbitrary<Leaf> = fc
  .tuple(fc.constantFrom(...LIGHT), fc.constantFrom(9.5, 12.7, 15.875, 19), fc.integer({ min: 1, max: 3 }))
  .map(([material, thicknessMm, count]) => leafOf(material, thicknessMm, count))

const links: fc.Arbitrary<Link> = fc.constantFrom<Link>(
  { kind: 'none' },
  { kind: 'wood-stud', spacingMm: 406.4 },
  { kind: 'light-steel-stud', spacingMm: 609.6 },
  { kind: 'staggered-stud', spacingMm: 406.4 },
  { kind: 'resilient-channel', frame: 'wood-stud', studSpacingMm: 406.4, channelSpacingMm: 609.6 },
  { kind: 'sound-clip', frame: 'wood-stud', rowSpacingMm: 609.6, clipSpacingMm: 1219.2 },
)

const cavities: fc.Arbitrary<Cavity> = fc
  .tuple(fc.integer({ min: 30, max: 300 }), fc.constantFrom(0, 0.5, 0.9, 1), links)
  .map(([depthMm, share, link]) => ({ depthMm, fillMm: depthMm * share, link }))

/** Two to four leaves. */
const systems: fc.Arbitrary<LayeredSystem> = fc
  .tuple(leaves, fc.array(fc.tuple(cavities, leaves), { minLength: 1, maxLength: 3 }))
  .map(([first, rest]) => ({
    leaves: [first, ...rest.map(([, leaf]) => leaf)],
    cavities: rest.map(([cavity]) => cavity),
  }))

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

describe('the layered method', () => {
  it('gives finite losses for any light construction of two to four leaves', () => {
    fc.assert(
      fc.property(systems, (system) => {
        const { lossDb, spreadStcDb } = predictLoss(system, { quality: 'drag' })
        expect(lossDb).toHaveLength(BANDS_HZ.length)
        expect(lossDb.every((value) => Number.isFinite(value) && value > -5)).toBe(true)
        expect(spreadStcDb).toBeGreaterThanOrEqual(2)
      }),
      { numRuns: 60 },
    )
  })

  it('never loses isolation in any band when a limp leaf gets heavier', () => {
    const masses = fc.tuple(fc.double({ min: 3, max: 100, noNaN: true }), fc.double({ min: 1, max: 5, noNaN: true }))
    fc.assert(
      fc.property(masses, ([mass, factor]) => {
        const [light, heavy] = [mass, mass * factor].map(
          (kg) => predictLoss({ leaves: [limpLeaf(kg)], cavities: [] }, { quality: 'drag' }).lossDb,
        )
        light!.forEach((value, band) => {
          expect(heavy![band]!).toBeGreaterThanOrEqual(value - 1e-9)
        })
      }),
      { numRuns: 40 },
    )
  })

  it('never loses isolation up to half the coincidence when another equal board is screwed on', () => {
    fc.assert(
      fc.property(fc.constantFrom(...LIGHT), fc.constantFrom(9.5, 12.7, 15.875), (material, thicknessMm) => {
        const [one, two] = [1, 2].map(
          (count) =>
            predictLoss({ leaves: [leafOf(material, thicknessMm, count)], cavities: [] }, { quality: 'drag' }).lossDb,
        )
        for (let band = 0; BANDS_HZ[band]! <= 800; band++) expect(two![band]!).toBeGreaterThan(one![band]!)
      }),
      { numRuns: 20 },
    )
  })

  it('never raises the resonance by a deeper cavity, whichever cavity it is', () => {
    fc.assert(
      fc.property(systems, fc.nat(2), fc.double({ min: 1, max: 3, noNaN: true }), (system, place, factor) => {
        const at = place % system.cavities.length
        const deeper = {
          ...system,
          cavities: system.cavities.map((cavity, i) =>
            i === at ? { ...cavity, depthMm: cavity.depthMm * factor } : cavity,
          ),
        }
        const [before, after] = [massAirMass(system), massAirMass(deeper)]
        before.forEach((mode, i) => {
          expect(after[i]!.hz).toBeLessThanOrEqual(mode.hz * (1 + 1e-9))
        })
      }),
      { numRuns: 100 },
    )
  })

  it('is the same from both sides', () => {
    // 0.1 dB by the law of reciprocity; both directions are computed and averaged, so 1e-6 is rounding only.
    fc.assert(
      fc.property(systems, (system) => {
        const there = predictLoss(system, { quality: 'drag' }).lossDb
        const back = predictLoss(reverseSystem(system), { quality: 'drag' }).lossDb
        there.forEach((value, band) => {
          expect(Math.abs(back[band]! - value)).toBeLessThanOrEqual(1e-6)
        })
      }),
      { numRuns: 40 },
    )
  })

  it('has converged: twice the angles move STC by less than 0.3', () => {
    fc.assert(
      fc.property(systems, (system) => {
        const [usual, fine] = [8, 16].map(
          (gaussNodes) => rate(lossCurve(system, 10, 'plot', { ...METHOD, gaussNodes }), STC_IN_TENTHS).value,
        )
        expect(Math.abs(usual! - fine!)).toBeLessThan(0.3)
      }),
      { numRuns: 25 },
    )
  })

  it('has converged for concrete, block and glass too', () => {
    for (const leaf of [leafOf('concrete', 150), leafOf('concrete-block-hollow', 190), leafOf('glass', 6)]) {
      const [usual, fine] = [8, 16].map((gaussNodes) =>
        lossCurve({ leaves: [leaf], cavities: [] }, 10, 'plot', { ...METHOD, gaussNodes }),
      )
      usual!.forEach((value, band) => {
        expect(Math.abs(value - fine![band]!)).toBeLessThan(0.1)
      })
    }
  })
})
