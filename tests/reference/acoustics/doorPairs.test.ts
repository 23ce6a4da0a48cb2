import { describe, expect, it } from 'vitest'
import { BANDS_HZ } from '#acoustics/bands.ts'
import { lobbyAbsorption, pairLoss } from '#acoustics/pair.ts'
import { rate, STC } from '#acoustics/rating.ts'

/**
 * Harris (ed.), Handbook of Acoustical Measurements and Noise Control, 3rd ed., Table 31.6 (rows HAR31.6-1 to 14), seen in a
 * public repository's table retyped. It gives STC only: the leaf's curve is laid along the STC contour, which is assumed,
 * and so is the size, 0.9 x 2.1 m.
 */
const PRINTED = [
  { row: 7, leaf: 17, gapMm: 100, isLined: false, pair: 22, off: 2 },
  { row: 8, leaf: 20, gapMm: 100, isLined: false, pair: 26, off: 2 },
  { row: 9, leaf: 20, gapMm: 70, isLined: false, pair: 28, off: 0 },
  { row: 10, leaf: 28, gapMm: 70, isLined: false, pair: 40, off: -2 },
  { row: 11, leaf: 20, gapMm: 70, isLined: true, pair: 40, off: -12 },
  { row: 12, leaf: 28, gapMm: 70, isLined: true, pair: 44, off: -6 },
  { row: 13, leaf: 20, gapMm: 230, isLined: true, pair: 42, off: -14 },
  { row: 14, leaf: 28, gapMm: 230, isLined: true, pair: 50, off: -7 },
]

/** The STC contour, carried on below 125 Hz by 3 dB a third. */
const CONTOUR = [-28, -25, -22, -19, -16, -13, -10, -7, -4, -1, 0, 1, 2, 3, 4, 4, 4, 4, 4, 4, 4]

describe('pairs of doors', () => {
  it.each(PRINTED)('row $row: print $pair, calculated $off dB away', ({ leaf, gapMm, isLined, pair, off }) => {
    const areaM2 = 0.9 * 2.1
    const curve = BANDS_HZ.map((_, band) => leaf + CONTOUR[band]!)
    const absorptionM2 = lobbyAbsorption({ areaM2, perimeterMm: 6000, gapMm, isLined })
    const { value } = rate(pairLoss(curve, curve, { areaM2, gapMm, absorptionM2 }), STC)
    // How far off is written down, so that a change of the rule shows. Never more than 3 too high: the leaves alone are
    // told to 2 or 3. Lined pairs come out 6 to 14 too low, most where unsealed leaves let through more at high frequencies
    // than the contour says and the lining takes just that away.
    expect(value - pair).toBe(off)
    expect(value - pair).toBeLessThanOrEqual(3)
  })
})
