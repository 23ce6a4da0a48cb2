import { describe, expect, it } from 'vitest'
import { planeAt, planeThrough, shifted, steepness } from '#analysis/heights/plane.ts'

const through = (...levels: readonly (readonly [number, number, number])[]) =>
  planeThrough(levels.map(([xMm, yMm, levelMm]) => ({ xMm, yMm, levelMm })))

const close = (atOrigin: number, perX: number, perY: number) => ({
  atOrigin: expect.closeTo(atOrigin, 6),
  perX: expect.closeTo(perX, 9),
  perY: expect.closeTo(perY, 9),
})

describe('the plane through measured levels', () => {
  it('is level through one, wherever it was measured', () => {
    expect(through([1200, 3400, 2400])).toEqual({ plane: close(2400, 0, 0), worstMissMm: 0 })
  })

  it('runs through two and is level across the line between them', () => {
    const { plane, worstMissMm } = through([1000, 1000, 2400], [4000, 5000, 2500])
    expect(planeAt(plane, [1000, 1000])).toBeCloseTo(2400, 6)
    expect(planeAt(plane, [4000, 5000])).toBeCloseTo(2500, 6)
    expect(planeAt(plane, [1000 - 4000, 1000 + 3000])).toBeCloseTo(2400, 6)
    expect(worstMissMm).toBe(0)
  })

  it('runs through three', () => {
    expect(through([0, 0, 2000], [1000, 0, 2100], [0, 1000, 1950])).toEqual({
      plane: close(2000, 0.1, -0.05),
      worstMissMm: 0,
    })
  })

  it('of more has the least squared misses, and tells the largest', () => {
    // Four corners of a square, one of them 40 mm off: the plane takes a quarter of it up at every corner.
    const { plane, worstMissMm } = through([0, 0, 2400], [1000, 0, 2400], [1000, 1000, 2440], [0, 1000, 2400])
    expect(plane).toEqual(close(2390, 0.02, 0.02))
    expect(worstMissMm).toBeCloseTo(10, 6)
  })

  it('is level across the line of many that lie on one, also where one lies a few millimetres aside', () => {
    expect(through([0, 0, 2400], [0, 2000, 2420], [0, 4000, 2440]).plane).toEqual(close(2400, 0, 0.01))
    expect(through([0, 0, 2400], [5, 2000, 2420], [0, 4000, 2440]).plane.perX).toBeCloseTo(0, 4)
  })

  it('is level at the mean of heights that were measured at one place', () => {
    expect(through([500, 500, 2400], [500, 500, 2430])).toEqual({ plane: close(2415, 0, 0), worstMissMm: 15 })
  })
})

it('takes a thickness square to a slope: t / cos of its angle', () => {
  const slope = { atOrigin: 2400, perX: 3 / 4, perY: 0 }
  expect(steepness(slope)).toBeCloseTo(1.25, 12)
  expect(planeAt(shifted(slope, -100), [0, 0])).toBeCloseTo(2275, 9)
})
