import { describe, expect, it } from 'vitest'
import { BANDS_HZ, bandIndex, EXACT_CENTRES_HZ, isBandCurve } from '#acoustics/bands.ts'
import { capForDisplay, flatCurve, octaveLoss, shiftCurve } from '#acoustics/curve.ts'

describe('bands', () => {
  it('are 21 thirds whose names lie within 2 % of their exact centres', () => {
    expect(BANDS_HZ).toHaveLength(21)
    BANDS_HZ.forEach((name, i) => {
      expect(Math.abs(EXACT_CENTRES_HZ[i]! / name - 1)).toBeLessThan(0.02)
    })
    expect(bandIndex(500)).toBe(10)
    expect(bandIndex(501)).toBe(-1)
  })

  it('accept 21 finite numbers as a curve and nothing else', () => {
    expect(isBandCurve(flatCurve(3))).toBe(true)
    expect(isBandCurve(flatCurve(3).slice(1))).toBe(false)
    expect(isBandCurve(flatCurve(Number.NaN))).toBe(false)
  })
})

describe('curves', () => {
  it('turn into octaves by energy: thirds of 20, 30, 40 dB give 24.3', () => {
    const curve = flatCurve(30).map((value, i) => (i < 3 ? [20, 30, 40][i]! : value))
    // -10 lg((0.01 + 0.001 + 0.0001) / 3) = 24.318
    expect(octaveLoss(curve)[0]).toBeCloseTo(24.318, 3)
    expect(octaveLoss(curve).slice(1)).toEqual([30, 30, 30, 30, 30, 30].map((value) => expect.closeTo(value, 9)))
  })

  it('are moved and capped band by band', () => {
    expect(shiftCurve(flatCurve(10), -3)).toEqual(flatCurve(7))
    expect(capForDisplay([79.9, 80.1])).toEqual([79.9, 80])
  })
})
