import { describe, expect, it } from 'vitest'
import { BANDS_HZ, bandIndex } from '#acoustics/bands.ts'
import { flatCurve } from '#acoustics/curve.ts'
import { adaptationTerm, rateOitc } from '#acoustics/spectrumRating.ts'

/** 50 dB everywhere but 20 dB in one band. */
const holeAt = (hz: number) => BANDS_HZ.map((band) => (band === hz ? 20 : 50))

describe('adaptationTerm', () => {
  it('of a flat curve is 0: the spectra sum to 0 dB, A-weighted, to a quarter of a dB', () => {
    // Rw of a flat 30 is 30: 26 dB of shortfall there, 35 one step higher.
    for (const name of ['C', 'Ctr', 'C50-5000', 'Ctr50-5000'] as const) {
      const { value, droppedDb } = adaptationTerm(flatCurve(30), 30, name)
      expect(value).toBe(0)
      expect(Math.abs(droppedDb - 30)).toBeLessThan(0.25)
    }
  })

  it('names the band that lets most through, with its share', () => {
    // By hand, spectrum 1 at 1000 Hz: -10 - 20 = -30 dB; the other bands carry 0.9 of the source, -50.5 dB.
    const { throughDb, shares, limitingBandHz, droppedDb } = adaptationTerm(holeAt(1000), 40, 'C')
    expect(limitingBandHz).toBe(1000)
    expect(throughDb[bandIndex(1000)]).toBe(-30)
    expect(shares[bandIndex(1000)]).toBeCloseTo(1e-3 / (1e-3 + 0.9e-5), 3)
    expect(shares.reduce((sum, share) => sum + share, 0)).toBeCloseTo(1, 12)
    expect(droppedDb).toBeCloseTo(29.96, 2)
  })

  it('looks below 100 Hz only over the enlarged range', () => {
    const hole = holeAt(50)
    expect(adaptationTerm(hole, 50, 'Ctr').throughDb[0]).toBeNull()
    expect(adaptationTerm(hole, 50, 'Ctr').value).toBe(0)
    expect(adaptationTerm(hole, 50, 'Ctr50-5000')).toMatchObject({ limitingBandHz: 50 })
    // -25 - 20 = -45 dB at 50 Hz and all else near -50: together -43.8, so 44 - 50.
    expect(adaptationTerm(hole, 50, 'Ctr50-5000').value).toBe(-6)
  })

  it('takes losses to a tenth of a dB over the enlarged range too', () => {
    // 30.47 counts as 30.5, and 30.5 + 0.01 rounds up; unrounded, 30.48 would round down.
    expect(adaptationTerm(flatCurve(30.47), 30, 'C50-5000').value).toBe(1)
    expect(adaptationTerm(flatCurve(30.44), 30, 'C50-5000').value).toBe(0)
  })

  it('refuses a curve with a hole in it', () => {
    expect(() => adaptationTerm(flatCurve(30).slice(1), 30, 'C')).toThrow('21 finite bands')
  })
})

describe('rateOitc', () => {
  it('A-weights the transport noise before it is sent through', () => {
    // By hand at 125 Hz: 101 - 16.1 - 20 = 64.9 dB; outside 100.13 dB in all.
    const { value, throughDb, limitingBandHz, shares } = rateOitc(holeAt(125))
    expect(throughDb[bandIndex(125)]).toBeCloseTo(64.9, 9)
    expect(limitingBandHz).toBe(125)
    expect(shares[bandIndex(125)]).toBeGreaterThan(0.9)
    expect(value).toBe(35)
  })

  it('does not look at 63 Hz or 5 kHz', () => {
    expect(rateOitc(holeAt(63)).value).toBe(50)
    expect(rateOitc(holeAt(5000)).value).toBe(50)
  })
})
