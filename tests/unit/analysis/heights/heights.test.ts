import { describe, expect, it } from 'vitest'
import { clearHeightAt } from '#analysis/heights/field.ts'
import type { Room } from '#analysis/room.ts'
import { aDrop, aHeight, anObstacle, aPart, aRoom, aScheme, box, resultsOf } from '../../../support/rooms.ts'

/** Thicknesses as their layers add up, mm. */
const [W14, C05, F01, F03] = [146.05, 73.025, 12.7, 88.9]
const CEILING = aScheme({ 'ceiling-1': 'C05' })
const OUTLINE = box(0, 0, 5000, 4000)

const codes = (room: Room, scheme = CEILING) => resultsOf(room, scheme).cautions.map(({ code }) => code)

describe('several heights', () => {
  const sloped = { heights: [aHeight(0, 0, 2400), aHeight(5000, 0, 2900)] }

  it('slope the ceiling, unless the room reads them as a level one at the lowest', () => {
    const slope = resultsOf(aRoom(OUTLINE, sloped))
    expect(slope.ledger.clearHeightMm).toMatchObject({ existing: 2400, lowest: 2400, mean: expect.closeTo(2650, 6) })
    expect(clearHeightAt(slope.heights, [2500, 1000])).toBeCloseTo(2650, 6)
    const level = resultsOf(aRoom(OUTLINE, { ...sloped, ceilingShape: 'level' }))
    expect(level.ledger.clearHeightMm.mean).toBeCloseTo(2400, 6)
    expect(level.ledger.volumeM3.existing).toBeCloseTo(5 * 4 * 2.4, 9)
  })

  it('are told as a caution where one lies far off the plane of the others, with how far', () => {
    const heights = [aHeight(0, 0, 2400), aHeight(5000, 0, 2400), aHeight(5000, 4000, 2480), aHeight(0, 4000, 2400)]
    const { cautions } = resultsOf(aRoom(OUTLINE, { heights }))
    expect(cautions.find(({ code }) => code === 'poor-plane-fit')?.text).toMatch(/^A measured height lies 20 mm/)
    expect(codes(aRoom(OUTLINE, { heights: heights.slice(0, 3) }))).not.toContain('poor-plane-fit')
  })

  it('are null outside the clear plan', () => {
    expect(clearHeightAt(resultsOf(aRoom(OUTLINE)).heights, [-1, 10])).toBeNull()
  })
})

describe('a room with no height in part of it', () => {
  const said = (room: Room, choices: Readonly<Record<string, string>> = {}) =>
    resultsOf(room, aScheme(choices)).cautions.flatMap(({ code, text }) => (code === 'height-runs-out' ? [text] : []))
  const falling = (toMm: number) =>
    aRoom(box(0, 0, 5000, 4000), { heights: [aHeight(0, 0, 2000), aHeight(4000, 0, toMm)] })

  it('says whether its ceiling or its build-ups leave none, and nothing while some is left', () => {
    expect(said(falling(100))).toEqual([expect.stringContaining('The ceiling comes down to the floor')])
    expect(said(falling(430))).toEqual([])
    expect(said(falling(430), { [falling(430).ceiling.id]: 'C03' })).toEqual([
      expect.stringContaining('build-ups meet'),
    ])
  })
})

describe('a new floor on a fall', () => {
  const fallen = aRoom(OUTLINE, { heights: [aHeight(0, 0, 2500), aHeight(0, 4000, 2540, -40)] })
  const floating = { assembly: 'F03', removeLining: false }

  it('follows it, or is laid level on the highest place', () => {
    const follows = resultsOf(fallen, aScheme({ 'floor-1': 'F03' }))
    expect(follows.ledger.clearHeightMm.lowest).toBeCloseTo(2500 - F03 * Math.hypot(1, 0.01), 6)
    expect(follows.ledger.clearHeightMm.mean).toBeCloseTo(2520 - F03 * Math.hypot(1, 0.01), 6)
    const level = resultsOf(fallen, aScheme({}, { choices: { 'floor-1': { ...floating, laidLevel: true } } }))
    expect(level.ledger.clearHeightMm.lowest).toBeCloseTo(2500 - F03, 6)
    expect(level.ledger.clearHeightMm.mean).toBeCloseTo(2500 - F03, 6)
    expect(level.cautions.find(({ code }) => code === 'floor-laid-level')?.text).toContain('stands 129 mm')
  })

  it('says so, and nothing of a floor that stays or a fall of a few millimetres', () => {
    expect(codes(fallen, aScheme({ 'floor-1': 'F03' }))).toContain('floor-on-a-fall')
    expect(codes(fallen, aScheme())).not.toContain('floor-on-a-fall')
    const slight = aRoom(OUTLINE, { heights: [aHeight(0, 0, 2500), aHeight(0, 4000, 2508, -8)] })
    expect(codes(slight, aScheme({ 'floor-1': 'F03' }))).not.toContain('floor-on-a-fall')
  })

  it('counts an underside from the floor at the middle of the drop', () => {
    const drops = [aDrop(box(1000, 0, 2000, 4000), { undersideMm: 2100 })]
    const { heights, ledger } = resultsOf({ ...fallen, drops }, aScheme())
    expect(clearHeightAt(heights, [1500, 2000])).toBeCloseTo(2100, 6)
    expect(clearHeightAt(heights, [1500, 1000])).toBeCloseTo(2090, 6)
    expect(ledger.drops[0]?.clearHeightMm).toBeCloseTo(2080, 6)
  })
})

describe('a ceiling part', () => {
  const withPart = (height: number, corners = box(1000, 1000, 2000, 3000)) =>
    aRoom(OUTLINE, { ceilingParts: [aPart(corners, [aHeight(1500, 2000, height)])] })
  const area = (room: Room, height: number) => {
    const patches = resultsOf(room, CEILING).heights.patches.filter(
      ({ plane }) => Math.abs(plane.atOrigin - height) < 1,
    )
    return patches.reduce((sum, { plan }) => sum + plan.reduce((total, { areaMm2 }) => total + areaMm2, 0), 0)
  }

  it('has its own height, and its riser’s lining stands on the higher side', () => {
    expect(area(withPart(2200), 2200 - C05)).toBeCloseTo((1000 + 2 * C05) * (2000 + 2 * C05), -2)
    expect(area(withPart(2700), 2700 - C05)).toBeCloseTo((1000 - 2 * C05) * (2000 - 2 * C05), -2)
    expect(resultsOf(withPart(2200), aScheme()).ledger.volumeM3.clear).toBeCloseTo(5 * 4 * 2.4 - 1 * 2 * 0.2, 9)
  })

  it('has no riser along a wall', () => {
    const corner = box(0, 0, 1000, 2000)
    expect(area(withPart(2700, corner), 2700 - C05)).toBeCloseTo((1000 - C05) * (2000 - C05), -2)
  })

  it('counts before an earlier one where two overlap', () => {
    const parts = [
      aPart(box(1000, 1000, 3000, 3000), [aHeight(0, 0, 2200)]),
      aPart(box(2000, 1000, 4000, 3000), [aHeight(0, 0, 2300)]),
    ]
    const { heights } = resultsOf(aRoom(OUTLINE, { ceilingParts: parts }), aScheme())
    expect(clearHeightAt(heights, [2500, 2000])).toBe(2300)
    expect(clearHeightAt(heights, [1500, 2000])).toBe(2200)
  })

  it('slopes by its own points, and its floor levels count for the whole floor', () => {
    const part = aPart(box(0, 0, 5000, 2000), [aHeight(0, 0, 2000), aHeight(0, 2000, 2440, -40)])
    const { heights } = resultsOf(aRoom(OUTLINE, { heights: [aHeight(0, 0, 2500)], ceilingParts: [part] }), aScheme())
    expect(clearHeightAt(heights, [100, 1000])).toBeCloseTo(2200 + 20, 6)
    expect(clearHeightAt(heights, [100, 3000])).toBeCloseTo(2500 + 60, 6)
  })
})

describe('a drop', () => {
  it('hidden above the lining does not count, and says so where it is above the bare ceiling', () => {
    const hidden = aRoom(OUTLINE, { drops: [aDrop(box(1000, 0, 2000, 4000), { undersideMm: 2350 })] })
    const { heights, ledger } = resultsOf(hidden, CEILING)
    expect(heights.patches).toHaveLength(1)
    expect(ledger.drops[0]?.clearHeightMm).toBeCloseTo(2400 - C05, 6)
    expect(codes(hidden)).not.toContain('drop-above-ceiling')
    const above = aRoom(OUTLINE, { drops: [aDrop(box(1000, 0, 2000, 4000), { undersideMm: 2450 })] })
    expect(codes(above)).toContain('drop-above-ceiling')
  })

  it('under a slope counts where it hangs lower only', () => {
    const heights = [aHeight(0, 0, 2000), aHeight(5000, 0, 3000)]
    const room = aRoom(OUTLINE, { heights, drops: [aDrop(box(1000, 1000, 4000, 2000), { undersideMm: 2500 })] })
    const field = resultsOf(room, aScheme()).heights
    expect(clearHeightAt(field, [1500, 1500])).toBeCloseTo(2300, 6)
    expect(clearHeightAt(field, [3500, 1500])).toBeCloseTo(2500, 6)
    const under = field.patches.filter(({ drop }) => drop !== null).flatMap(({ plan }) => plan)
    expect(under.reduce((sum, { areaMm2 }) => sum + areaMm2, 0)).toBeCloseTo(1500 * 1000, -1)
  })

  it('that covers the room leaves the ceiling’s height as the lowest away from drops', () => {
    const room = aRoom(OUTLINE, { drops: [aDrop(box(-100, -100, 5100, 4100), { undersideMm: 2000 })] })
    const { ledger } = resultsOf(room, aScheme())
    expect([ledger.clearHeightMm.lowest, ledger.clearHeightMm.mean]).toEqual([2400, expect.closeTo(2000, 6)])
    expect(ledger.drops[0]?.clearHeightMm).toBe(2000)
  })
})

describe('walls', () => {
  it('are as high as the ceiling over each of them', () => {
    const { surfaces } = resultsOf(aRoom(OUTLINE, { heights: [aHeight(0, 0, 2000), aHeight(5000, 0, 3000)] }))
    expect(surfaces.slice(0, 4).map(({ soundAreaM2 }) => soundAreaM2)).toEqual([
      expect.closeTo(5 * 2.5, 6),
      expect.closeTo(4 * 3, 6),
      expect.closeTo(5 * 2.5, 6),
      expect.closeTo(4 * 2, 6),
    ])
    expect(surfaces[4]?.soundAreaM2).toBeCloseTo(20 * Math.hypot(1, 0.2), 6)
  })

  it('have no area where the ceiling would lie below the floor, and what is above it else', () => {
    // Falls 3 in 5 from 2000 mm: on the floor at 3333 mm.
    const room = aRoom(box(0, 0, 5000, 4000), { heights: [aHeight(0, 0, 2000), aHeight(2500, 0, 500)] })
    const areas = resultsOf(room)
      .surfaces.slice(0, 4)
      .map(({ soundAreaM2 }) => soundAreaM2)
    const gable = (2 * (10 / 3)) / 2
    for (const [k, area] of [gable, 0, gable, 8].entries()) expect(areas[k]).toBeCloseTo(area, 6)
  })

  it('under a part have its height along it, whichever way the outline was drawn', () => {
    const parts = [aPart(box(0, 0, 2000, 1000), [aHeight(0, 0, 3400)])]
    for (const corners of [OUTLINE, OUTLINE.toReversed()]) {
      const { surfaces } = resultsOf(aRoom(corners, { ceilingParts: parts }))
      const areas = surfaces.slice(0, 4).map(({ soundAreaM2 }) => soundAreaM2)
      expect(areas.toSorted((a, b) => a - b)).toEqual([
        expect.closeTo(4 * 2.4, 6),
        expect.closeTo(4 * 2.4 + 1, 6),
        expect.closeTo(5 * 2.4, 6),
        expect.closeTo(5 * 2.4 + 2, 6),
      ])
    }
  })

  it('weigh by their own clear height', () => {
    const heights = [aHeight(0, 0, 2000), aHeight(5000, 0, 3000)]
    const { surfaces } = resultsOf(aRoom(OUTLINE, { heights }), aScheme({ 'wall-2': 'W14', 'wall-4': 'W14' }))
    const [second, fourth] = [surfaces[1]!, surfaces[3]!]
    expect(fourth.addedMassKg).toBeCloseTo(fourth.addedMassKgM2 * 4 * (2 + W14 / 5000), 4)
    expect(second.addedMassKg).toBeCloseTo(second.addedMassKgM2 * 4 * (3 - W14 / 5000), 4)
  })

  it('take their allowance for being out of true before their assembly', () => {
    const room = aRoom(OUTLINE)
    const walls = room.walls.map((wall, k) => (k === 1 ? { ...wall, outOfTrueMm: 20 } : wall))
    const scheme = aScheme({ 'wall-2': 'W14', 'floor-1': 'F01' })
    const [bare, leaning] = [resultsOf(room, scheme), resultsOf({ ...room, walls }, scheme)]
    expect(bare.ledger.clearSizeMm.length - leaning.ledger.clearSizeMm.length).toBeCloseTo(20, 6)
    expect(bare.ledger.volumeM3.clear - leaning.ledger.volumeM3.clear).toBeCloseTo(0.02 * 4 * (2.4 - F01 / 1000), 6)
    expect(resultsOf({ ...room, walls }).ledger.floorAreaM2.lost).toBe(0)
  })
})

describe('an obstacle', () => {
  const room = aRoom(OUTLINE, { obstacles: [anObstacle(box(2000, 0, 2300, 100), 50)] })

  it('that a scheme takes out is not in its room, and an engineer is asked for', () => {
    const standing = resultsOf(room)
    const taken = resultsOf(room, aScheme({}, { takenOut: ['obstacle-1'] }))
    expect(standing.ledger.floorAreaM2.obstacles).toBeCloseTo(0.03, 9)
    expect(taken.ledger.floorAreaM2).toMatchObject({ obstacles: 0, lost: 0, clear: 20 })
    expect(taken.ledger.volumeM3.clear).toBeCloseTo(48, 9)
    expect(taken.cautions.find(({ code }) => code === 'taken-out')).toMatchObject({ kind: 'life-safety' })
    expect(standing.cautions.map(({ code }) => code)).not.toContain('taken-out')
  })

  it('is boxed where it stands out of a lining, and covered where the lining is deeper', () => {
    const covered = resultsOf(
      { ...room, obstacles: [anObstacle(box(2000, 0, 2300, 60), 50)] },
      aScheme({ 'wall-1': 'W14' }),
    )
    expect(covered.ledger.floorAreaM2.clear).toBeCloseTo((5000 * (4000 - W14)) / 1e6, 6)
    expect(covered.surfaces[0]?.clearLengthMm).toBeCloseTo(5000, 3)
    const boxed = resultsOf(room, aScheme({ 'wall-1': 'W07' }))
    expect(boxed.ledger.floorAreaM2.clear).toBeCloseTo((5000 * (4000 - C05) - 400 * (150 - C05)) / 1e6, 6)
  })
})
