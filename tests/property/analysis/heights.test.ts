import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { clearHeightAt } from '#analysis/heights/field.ts'
import type { CeilingPart, Drop, Room } from '#analysis/room.ts'
import { areaOf, intersection } from '#geometry/clip.ts'
import { outlineArea } from '#geometry/outline.ts'
import { aDrop, aHeight, aPart, aRoom, aScheme, box, resultsOf } from '../../support/rooms.ts'

const RUNS = { numRuns: 60 }
/** Thickness of ceiling C05 and floor F01, mm, as their layers add up. */
const [CEILING_MM, FLOOR_MM] = [73.025, 12.7]
const LINED = aScheme({ 'ceiling-1': 'C05', 'floor-1': 'F01' })

const side = fc.double({ min: 2000, max: 9000, noNaN: true }).map((mm) => Math.round(mm * 10) / 10)
/** Rise of a plane, mm a mm: up to 6 degrees. */
const rise = fc.double({ min: -0.1, max: 0.1, noNaN: true })

/** A star of 5 to 9 corners: any simple room, slanted walls included. */
const star = fc.array(fc.double({ min: 1500, max: 4000, noNaN: true }), { minLength: 5, maxLength: 9 }).map((radii) =>
  radii.map((r, k): [number, number] => {
    const angle = (2 * Math.PI * k) / radii.length
    return [Math.round(r * Math.cos(angle)), Math.round(r * Math.sin(angle))]
  }),
)

interface Slope {
  readonly at0: number
  readonly x: number
  readonly y: number
}
const at = ({ at0, x, y }: Slope, px: number, py: number): number => at0 + x * px + y * py
const tilt = ({ x, y }: Slope): number => 1 / Math.cos(Math.atan(Math.hypot(x, y)))

/** Heights as a tape reads them at three places between a floor and a ceiling of these slopes. */
function taped(floor: Slope, ceiling: Slope, places: readonly (readonly [number, number])[]) {
  return places.map(([x, y]) => aHeight(x, y, at(ceiling, x, y) - at(floor, x, y), at(floor, x, y)))
}

describe('volumes', () => {
  it('of a prism are its area times its height, whatever its outline', () => {
    fc.assert(
      fc.property(star, fc.double({ min: 1800, max: 5000, noNaN: true }), (corners, height) => {
        const { ledger } = resultsOf(aRoom(corners, { heights: [aHeight(0, 0, height)] }))
        const expected = (outlineArea(corners) * height) / 1e9
        expect(ledger.volumeM3.existing).toBeCloseTo(expected, 6)
        expect(ledger.volumeM3.clear).toBeCloseTo(expected, 3)
        expect(ledger.clearHeightMm.mean).toBeCloseTo(height, 6)
      }),
      RUNS,
    )
  })

  it('of a sloped prism are its area times the mean of its corners’ heights, build-ups taken square to the slopes', () => {
    fc.assert(
      fc.property(side, side, rise, rise, rise, rise, (w, l, fx, fy, cx, cy) => {
        const floor: Slope = { at0: 0, x: fx / 4, y: fy / 4 }
        const ceiling: Slope = { at0: 4500, x: cx, y: cy }
        const corners = box(0, 0, w, l)
        const room = aRoom(corners, { heights: taped(floor, ceiling, corners.slice(0, 3)) })
        const heights = corners.map(([x, y]) => at(ceiling, x, y) - at(floor, x, y))
        const mean = heights.reduce((sum, height) => sum + height, 0) / 4
        const bare = resultsOf(room).ledger
        expect(bare.volumeM3.existing).toBeCloseTo((w * l * mean) / 1e9, 6)
        expect(bare.clearHeightMm.lowest).toBeCloseTo(Math.min(...heights), 6)
        const lined = resultsOf(room, LINED).ledger
        const taken = CEILING_MM * tilt(ceiling) + FLOOR_MM * tilt(floor)
        expect(lined.volumeM3.clear).toBeCloseTo((w * l * (mean - taken)) / 1e9, 6)
        expect(lined.clearHeightMm.lowest).toBeCloseTo(Math.min(...heights) - taken, 6)
      }),
      RUNS,
    )
  })

  it('count nothing below the floor: a roof that comes down to it leaves a wedge', () => {
    fc.assert(
      fc.property(side, fc.double({ min: 0.2, max: 0.9, noNaN: true }), (w, share) => {
        const l = 6000
        const heights = [aHeight(0, 0, 3000), aHeight(0, share * l, 1e-9)]
        const { ledger } = resultsOf(aRoom(box(0, 0, w, l), { heights }))
        expect(ledger.volumeM3.clear).toBeCloseTo((w * share * l * 1500) / 1e9, 6)
        expect(ledger.clearHeightMm.lowest).toBe(0)
        const above = (mm: number) => (w * share * l * (1 - mm / 3000)) / 1e6
        expect(ledger.areaAbove.map(({ areaM2 }) => areaM2)).toEqual([
          expect.closeTo(above(1524), 6),
          expect.closeTo(above(2133.6), 6),
        ])
      }),
      RUNS,
    )
  })
})

const WIDE = 7000
const DEEP = 6000
const place = (least: number, most: number) => fc.integer({ min: least, max: most })
const rectangle = fc
  .tuple(place(-500, WIDE - 500), place(-500, DEEP - 500), place(100, 4000), place(100, 4000))
  .map(([x, y, w, l]) => box(x, y, x + w, y + l))

const drops: fc.Arbitrary<Drop[]> = fc
  .array(fc.tuple(rectangle, place(1500, 2700), place(0, 100), place(0, 100)), { maxLength: 4 })
  .map((all) =>
    all.map(([corners, undersideMm, boxBelowMm, boxSidesMm], k) =>
      aDrop(corners, { id: `drop-${k}`, undersideMm, boxBelowMm, boxSidesMm }),
    ),
  )

const parts: fc.Arbitrary<CeilingPart[]> = fc
  .array(fc.tuple(rectangle, place(2000, 2900)), { maxLength: 3 })
  .map((all) =>
    all.map(([corners, height], k) => ({ ...aPart(corners, [aHeight(corners[0]![0], 0, height)]), id: `part-${k}` })),
  )

const anyRoom: fc.Arbitrary<Room> = fc.tuple(drops, parts, rise).map(([someDrops, someParts, x]) =>
  aRoom(box(0, 0, WIDE, DEEP), {
    heights: taped({ at0: 0, x: 0, y: 0 }, { at0: 2500, x: x / 4, y: 0 }, box(0, 0, WIDE, DEEP).slice(0, 3)),
    drops: someDrops,
    ceilingParts: someParts,
  }),
)

const within = (
  shape: readonly { readonly xMm: number; readonly yMm: number }[],
  [px, py]: [number, number],
  by = 0,
) => {
  const xs = shape.map(({ xMm }) => xMm)
  const ys = shape.map(({ yMm }) => yMm)
  return (
    px > Math.min(...xs) - by && px < Math.max(...xs) + by && py > Math.min(...ys) - by && py < Math.max(...ys) + by
  )
}

/** A place no edge of anything runs through: everything else lies on whole millimetres. */
const anywhere = fc
  .tuple(place(0, WIDE - 1), place(0, DEEP - 1))
  .map(([x, y]): [number, number] => [x + 0.37, y + 0.41])

describe('the height field', () => {
  it('tiles the clear plan: patches do not overlap and add up to it', () => {
    fc.assert(
      fc.property(anyRoom, (room) => {
        const { clear, heights } = resultsOf(room, LINED)
        const plans = heights.patches.map(({ plan }) => plan)
        expect(Math.abs(areaOf(plans.flat()) - areaOf(clear))).toBeLessThan(1)
        plans.forEach((one, k) => {
          for (const other of plans.slice(k + 1)) expect(areaOf(intersection(one, other))).toBeLessThan(1)
        })
      }),
      RUNS,
    )
  })

  it('is, at any place, the lowest of ceiling and boxes less the floor', () => {
    fc.assert(
      fc.property(anyRoom, fc.array(anywhere, { minLength: 20, maxLength: 20 }), (room, places) => {
        const { heights } = resultsOf(room, aScheme({ 'floor-1': 'F01' }))
        const [first, second] = room.heights
        const fall = (second!.heightMm - first!.heightMm) / WIDE
        for (const point of places) {
          const part = room.ceilingParts.findLast(({ corners }) => within(corners, point))
          const ceiling = part ? part.heights[0]!.heightMm : first!.heightMm + fall * point[0]
          const boxes = room.drops.filter(({ corners, boxSidesMm }) => within(corners, point, boxSidesMm))
          const bottoms = boxes.map(({ undersideMm, boxBelowMm }) => undersideMm - boxBelowMm)
          expect(clearHeightAt(heights, point)).toBeCloseTo(Math.min(ceiling, ...bottoms) - FLOOR_MM, 6)
        }
      }),
      RUNS,
    )
  })

  it('is never below the lowest, away from drops, and never below the lowest under a drop', () => {
    fc.assert(
      fc.property(anyRoom, anywhere, (room, point) => {
        const { heights, ledger } = resultsOf(room, LINED)
        const height = clearHeightAt(heights, point)
        const least = Math.min(ledger.clearHeightMm.lowest, ...ledger.drops.map((drop) => drop.clearHeightMm))
        expect(height).not.toBeNull()
        expect(height!).toBeGreaterThanOrEqual(least - 1e-6)
        const isUnder = room.drops.some(({ corners, boxSidesMm }) => within(corners, point, boxSidesMm))
        if (!isUnder) expect(height!).toBeGreaterThanOrEqual(ledger.clearHeightMm.lowest - 1e-6)
      }),
      RUNS,
    )
  })

  it('does not ask in which order drops were drawn', () => {
    fc.assert(
      fc.property(anyRoom, (room) => {
        const one = resultsOf(room, LINED).ledger
        const other = resultsOf({ ...room, drops: room.drops.toReversed() }, LINED).ledger
        expect(other.volumeM3.clear).toBeCloseTo(one.volumeM3.clear, 6)
        expect(other.clearHeightMm.lowest).toBeCloseTo(one.clearHeightMm.lowest, 6)
        for (const drop of one.drops) {
          const same = other.drops.find(({ id }) => id === drop.id)
          // Of two boxes exactly as low the first has the floor they share, so only the height over it must agree.
          if (new Set(room.drops.map((d) => d.undersideMm - d.boxBelowMm)).size === room.drops.length)
            expect(same?.clearHeightMm).toBeCloseTo(drop.clearHeightMm, 6)
        }
      }),
      RUNS,
    )
  })

  it('does not ask in which order ceiling parts that keep apart were drawn', () => {
    const apart = fc.tuple(place(2000, 2900), place(2000, 2900), place(2000, 2900)).map((heights) =>
      heights.map((height, k) => ({
        ...aPart(box(500 + 2000 * k, 1000, 1900 + 2000 * k, 4000), [aHeight(600 + 2000 * k, 0, height)]),
        id: `part-${k}`,
      })),
    )
    fc.assert(
      fc.property(apart, drops, (ceilingParts, someDrops) => {
        const room = aRoom(box(0, 0, WIDE, DEEP), { ceilingParts, drops: someDrops })
        const one = resultsOf(room, LINED).ledger
        const other = resultsOf({ ...room, ceilingParts: ceilingParts.toReversed() }, LINED).ledger
        expect(other.volumeM3.clear).toBeCloseTo(one.volumeM3.clear, 6)
        expect(other.clearHeightMm.lowest).toBeCloseTo(one.clearHeightMm.lowest, 6)
      }),
      RUNS,
    )
  })
})
