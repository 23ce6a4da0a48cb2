import { describe, expect, it } from 'vitest'
import { compositeLoss } from '#acoustics/composite.ts'
import { flatCurve } from '#acoustics/curve.ts'
import { slitLoss } from '#acoustics/leak.ts'
import { roomTerm } from '#acoustics/levels.ts'
import { rate, STC } from '#acoustics/rating.ts'

/** The STC contour, carried on below 125 Hz by 3 dB a third. */
const CONTOUR = [-28, -25, -22, -19, -16, -13, -10, -7, -4, -1, 0, 1, 2, 3, 4, 4, 4, 4, 4, 4, 4]

/** Loss of parts side by side, each area in m2 and loss in dB. */
function composite(...parts: readonly (readonly [areaM2: number, lossDb: number])[]): number {
  return compositeLoss(parts.map(([areaM2, loss]) => ({ areaM2, lossDb: flatCurve(loss) })))[0]!
}

describe('published worked examples of parts side by side', () => {
  it('Crocker, Engineering Acoustics (2021), Example 12.13, seen: brick 59 dB with a pane of 35 dB, 44.8 dB', () => {
    // Printed to a tenth from inputs rounded to whole dB.
    expect(composite([2.3 * 4.6 - 0.9 * 1.2, 59], [0.9 * 1.2, 35])).toBeCloseTo(44.8, 1)
  })

  it('a public question-and-answer page (ans.fyi, 20161031040944AAZy8TB), seen: three parts, 27.43 dB', () => {
    // Brick 53 dB, window 1.2 x 0.8 m 25 dB, door 2 x 0.75 m 20 dB in 4 x 2.5 m; printed to a hundredth.
    expect(composite([7.54, 53], [0.96, 25], [1.5, 20])).toBeCloseTo(27.43, 2)
  })

  it('a college work sheet (scribd 702027321), seen: brickwork 45 dB, 10 m2, windows 10 dB, 3 m2, 16.4 dB', () => {
    // It rounds the sum to 0.023 on the way, which is worth 0.02 dB.
    expect(composite([10, 45], [3, 10])).toBeCloseTo(16.4, 1)
  })

  it('University of Stuttgart, course on building physics, seen: a door of 20 dB and 2 m2 in 20 m2 gives 30 dB', () => {
    // The page leaves out what the wall itself lets through, so here the wall lets nothing through.
    expect(composite([18, 200], [2, 20])).toBeCloseTo(30, 6)
  })

  it.each([52, 56])('trade pages on door seals, seen: 1/8 in all round a door of STC %i leaves 21', (stc) => {
    // Neither page gives the size of the door or how its gap runs: 36 x 84 in by 1 3/4 in is assumed, its curve along the
    // STC contour, and the figure has to lie between a gap along an edge and one in the open, which are 3 apart.
    const [width, height, gapMm] = [0.9144, 2.1336, 3.175]
    const leaf = { areaM2: width * height, lossDb: CONTOUR.map((shape) => stc + shape) }
    const withGap = (place: 'middle' | 'edge') => {
      const lossDb = slitLoss({ widthMm: gapMm, depthMm: 44.45, place })
      return rate(compositeLoss([leaf, { areaM2: 2 * (width + height) * (gapMm / 1000), lossDb }]), STC).value
    }
    expect(withGap('edge')).toBe(20)
    expect(withGap('middle')).toBe(23)
  })
})

// Closed form; single numbers stand in for curves only here, as a check of the sum.
describe('the weakest-link sums of the scenarios (section 1, own arithmetic)', () => {
  const whole = 15.794
  const door = 1.652
  const vent = 0.02
  const wall = whole - door

  it.each([
    {
      name: 'wall 60 with a door of 34',
      parts: [
        [wall, 60],
        [door, 34],
      ],
      loss: 43.7,
    },
    {
      name: 'wall 60 with a door set of 50',
      parts: [
        [wall, 60],
        [door, 50],
      ],
      loss: 57.1,
    },
    {
      name: 'that with an untreated vent',
      parts: [
        [wall - vent, 60],
        [door, 50],
        [vent, 0],
      ],
      loss: 29.0,
    },
    {
      name: 'that vent with a silencer of 30',
      parts: [
        [wall - vent, 60],
        [door, 50],
        [vent, 30],
      ],
      loss: 54.9,
    },
  ] as const)('$name: $loss dB', ({ parts, loss }) => {
    expect(composite(...parts)).toBeCloseTo(loss, 1)
  })

  it('gives the door 98 % of the energy', () => {
    const through = [wall * 1e-6, door * 10 ** -3.4]
    expect(through[1]! / (through[0]! + through[1]!)).toBeCloseTo(0.98, 2)
    expect(composite([wall, 60], [door, 34])).toBeCloseTo(-10 * Math.log10((through[0]! + through[1]!) / whole), 9)
  })
})

describe('what an open area leaves of a perfect wall', () => {
  it.each([
    [1, 20],
    [0.1, 30],
    [0.01, 40],
    [0.001, 50],
  ])('%s %% leaves %s dB', (percent, loss) => {
    const open = percent / 100
    expect(composite([1 - open, 200], [open, 0])).toBeCloseTo(loss, 6)
  })
})

describe('the level next door', () => {
  it('follows L1 - TL + 10 lg(S/A) (own arithmetic): 12 m2 into 10 m2', () => {
    const there = [95, 97, 95, 92, 90, 86, 80]
    const loss = [30, 38, 50, 58, 63, 60, 62]
    const here = there.map((level, octave) => level - loss[octave]! + roomTerm(12, 10))
    expect(here.map((level) => Number(level.toFixed(1)))).toEqual([65.8, 59.8, 45.8, 34.8, 27.8, 26.8, 18.8])
  })
})
