import { describe, expect, it } from 'vitest'
import { neededAirflow, velocityLimit } from '#acoustics/airflow.ts'
import { bandIndex } from '#acoustics/bands.ts'
import { octaveLoss } from '#acoustics/curve.ts'
import { endReflectionLoss } from '#acoustics/duct.ts'
import { liningLoss, lossPerMetre } from '#acoustics/lining.ts'

const circle = (diameterM: number) => (Math.PI * diameterM ** 2) / 4

describe('end reflection', () => {
  // engineeringtoolbox.com, Sound attenuation in ducts due to end reflection, seen: 63-1000 Hz.
  it.each([
    [125, [17, 12, 8, 4, 1]],
    [250, [12, 8, 4, 1, 0]],
    [500, [8, 4, 1, 0, 0]],
  ] as const)('of a duct of %i mm is printed, and never more than that by half a dB', (diameterMm, printed) => {
    const loss = octaveLoss(endReflectionLoss(circle(diameterMm / 1000), 'flush'))
    printed.forEach((value, octave) => {
      // An octave is the energy mean of its thirds, so it lies a little under the value at its centre.
      expect(loss[octave]!).toBeLessThanOrEqual(value + 0.5)
      expect(loss[octave]!).toBeGreaterThanOrEqual(value - 1)
    })
  })

  it('takes the formula where that is lower than print', () => {
    // Flush, 200 x 200 mm at 125 Hz: the formula says 9.7 dB (own arithmetic), print between 8 and 12.
    expect(endReflectionLoss(0.04, 'flush')[bandIndex(125)]).toBeLessThanOrEqual(9.75)
  })
})

describe('lined duct', () => {
  it('of 200 x 200 mm, 2 m, follows the rule recalled (own arithmetic): 6.0 dB for 0.25, 28.1 dB for 0.75', () => {
    const section = { perimeterMm: 800, areaM2: 0.04 }
    expect(2 * lossPerMetre(0.25, section)).toBeCloseTo(6.0, 1)
    expect(2 * lossPerMetre(0.75, section)).toBeCloseTo(28.1, 1)
  })

  it('as an element of a 12 m2 wall it is 40.5 dB at 125 Hz by that rule (own arithmetic)', () => {
    const share = 10 * Math.log10(12 / 0.04)
    expect(9.7 + 2 * lossPerMetre(0.25, { perimeterMm: 800, areaM2: 0.04 }) + share).toBeCloseTo(40.5, 1)
  })

  // A controls maker's application guide (125-1929 Rev. 4, 2009), Tables 18 and 21, seen: dB a foot with 50 mm of lining.
  it.each([
    { name: '8 x 8 in', perimeterMm: 812.8, areaM2: 0.2032 ** 2, perFt: [0.77, 0.9, 1.29, 2.57, 6.23, 5.94, 3.49] },
    {
      name: '12 in round',
      perimeterMm: Math.PI * 304.8,
      areaM2: circle(0.3048),
      perFt: [0.42, 0.67, 1.25, 2.18, 2.18, 1.91, 1.48],
    },
  ])('of $name never counts for more than print, and not for less than half of it above 125 Hz', (duct) => {
    const foot = { ...duct, liningMm: 50, lengthM: 0.3048 }
    const loss = octaveLoss(liningLoss(foot))
    duct.perFt.forEach((printed, octave) => {
      expect(loss[octave]!).toBeLessThanOrEqual(printed + 1e-9)
      if (octave > 1) expect(loss[octave]!).toBeGreaterThan(printed / 2)
    })
  })
})

describe('airflow', () => {
  it('for four players in 20.9 m2 is 26.3 L/s (ASHRAE 62.1 rates, seen; own arithmetic)', () => {
    expect(neededAirflow(4, 20.9)).toBeCloseTo(26.3, 1)
  })

  // Egan, velocities at grilles, seen: ft/min.
  it.each([
    [15, 250, 300],
    [20, 300, 360],
    [25, 350, 420],
    [30, 425, 510],
  ])('for NC-%i may leave a grille at %i and enter one at %i ft/min', (nc, supply, returned) => {
    const { supplyMS, returnMS, isPrinted } = velocityLimit(nc)
    expect(supplyMS / 0.00508).toBeCloseTo(supply, 0)
    expect(returnMS / 0.00508).toBeCloseTo(returned, 0)
    expect(isPrinted).toBe(true)
  })
})
