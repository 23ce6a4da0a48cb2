import { describe, expect, it } from 'vitest'
import type { Point } from '#geometry/polygon.ts'
import { calibrate, firstPlacement, inPicture, inPlan, isOnPicture, plainAngle } from '#ui/trace/placement.ts'

const SIZE = { widthPx: 400, heightPx: 200 }
const ASKEW = { ...SIZE, xMm: 1200, yMm: -300, mmPerPx: 7.5, angleDeg: 33 }
const away = (a: Point, b: Point) => Math.hypot(a[0] - b[0], a[1] - b[1])

describe('a picture in the plan', () => {
  it('a place goes into the picture and back', () => {
    const place: Point = [431.5, 77]
    expect(away(inPlan(ASKEW, inPicture(ASKEW, place)), place)).toBeLessThan(1e-9)
    expect(isOnPicture(ASKEW, [ASKEW.xMm, ASKEW.yMm])).toBe(true)
    expect(isOnPicture(ASKEW, inPlan(ASKEW, [201, 0]))).toBe(false)
  })

  it('first lies round the middle of the room', () => {
    const placed = firstPlacement(SIZE, { minX: 0, minY: 0, maxX: 4000, maxY: 3000 })
    expect([placed.xMm, placed.yMm]).toEqual([2000, 1500])
    // The room's height decides: 3000 mm on 200 px, and a quarter more.
    expect(placed.mmPerPx).toBeCloseTo(18.75)
  })
})

describe('calibrating', () => {
  const from: Point = inPlan(ASKEW, [-150, -60])
  const to: Point = inPlan(ASKEW, [170, 40])

  it('makes the distance true and leaves the first point where it was', () => {
    const placed = calibrate(ASKEW, { from, to, distanceMm: 5000, squares: false })
    if (!placed.ok) throw new Error(placed.error)
    const after = { ...ASKEW, ...placed.value }
    const [a, b] = [inPlan(after, [-150, -60]), inPlan(after, [170, 40])]
    expect(away(a, from)).toBeLessThan(1e-9)
    expect(away(a, b)).toBeCloseTo(5000, 9)
    expect(after.angleDeg).toBe(ASKEW.angleDeg)
  })

  it('turns the two level where they lay nearer to level, plumb where nearer to plumb', () => {
    for (const [b, axis] of [
      [[170, 40], 1],
      [[-140, 90], 0],
    ] as const) {
      const upright = { ...ASKEW, angleDeg: 10 }
      const ends = { from: inPlan(upright, [-150, -60]), to: inPlan(upright, b) }
      const placed = calibrate(upright, { ...ends, distanceMm: 3810, squares: true })
      if (!placed.ok) throw new Error(placed.error)
      const after = { ...upright, ...placed.value }
      const [p, q] = [inPlan(after, [-150, -60]), inPlan(after, b)]
      expect(away(p, ends.from)).toBeLessThan(1e-9)
      expect(Math.abs(q[axis] - p[axis])).toBeLessThan(1e-9)
      expect(away(p, q)).toBeCloseTo(3810, 9)
    }
  })

  it('refuses one place twice, a distance of nothing, and a scale past any plan', () => {
    const says = (calibration: Parameters<typeof calibrate>[1]) => {
      const placed = calibrate(ASKEW, calibration)
      return placed.ok ? 'taken' : placed.error
    }
    expect(says({ from, to: from, distanceMm: 1000, squares: false })).toMatch(/the same place/)
    expect(says({ from, to, distanceMm: 0, squares: false })).toMatch(/more than 0/)
    expect(says({ from, to, distanceMm: 50_000_000, squares: false })).toMatch(/outside any plan/)
  })

  it('angles stay within half a turn', () => {
    expect([plainAngle(190), plainAngle(-180), plainAngle(180), plainAngle(-725), plainAngle(360)]).toEqual([
      -170, 180, 180, -5, 0,
    ])
  })
})
