import { describe, expect, it } from 'vitest'
import { SQUARE_FEET_PER_M2 } from '#units/quantity.ts'
import { analyse, openSample } from '../../support/samples.ts'

/** Invented rooms worked by hand; tolerances 1 mm, 0.01 m2, 0.02 m3. The garage is level here, at its back wall's height. */
describe('garage, by hand', () => {
  const garage = openSample('garage')

  it.each([
    ['B clips', 3512, 5950, 20.894, 2505.7],
    ['B2 clips, low-profile ceiling', 3512, 5950, 20.894, 2540.6],
    ['C independent room', 3366, 5804, 19.533, 2381.25],
    ['D independent, nested joists', 3315, 5753, 19.07, 2508.25],
    ['E maximum', 3213, 5652, 18.159, 2305.05],
  ])('%s', (name, width, length, areaM2, lowest) => {
    const { ledger } = analyse(garage, name)
    expect(Math.abs(ledger.clearSizeMm.width - width)).toBeLessThanOrEqual(1)
    expect(Math.abs(ledger.clearSizeMm.length - length)).toBeLessThanOrEqual(1)
    expect(ledger.floorAreaM2.clear).toBeCloseTo(areaM2, 2)
    expect(Math.abs(ledger.clearHeightMm.lowest - lowest)).toBeLessThanOrEqual(1)
  })

  it('keeps what the sheet of the talked-through option says', () => {
    const b = analyse(garage, 'B clips').ledger
    expect(100 - b.keptPercent).toBeCloseTo(6.3, 1)
    const c = analyse(garage, 'C independent room').ledger
    expect(c.floorAreaM2.clear * SQUARE_FEET_PER_M2).toBeCloseTo(210.25, 2)
    expect(100 - c.keptPercent).toBeCloseTo(12.4, 1)
    expect(Math.round(c.clearHeightMm.lowest)).toBe(2381)
  })

  it('loses nothing where nothing is built', () => {
    const a = analyse(garage, 'A do nothing but close the door').ledger
    expect(a.floorAreaM2.clear * SQUARE_FEET_PER_M2).toBeCloseTo(240, 6)
    expect(a.floorAreaM2.lost).toBe(0)
    expect(a.clearHeightMm.lowest).toBe(2590.8)
  })
})

describe('basement, by hand', () => {
  const basement = openSample('basement')

  it.each([
    ['A independent on concrete', 381.84, 2286, 79.86],
    ['A2 independent, clip ceiling', 381.84, 2251.1, 78.79],
    ['B clips on concrete', 398.46, 2286, 83.36],
    ['C insulated', 369.59, 2286, 77.28],
  ])('%s', (name, squareFeet, lowest, volumeM3) => {
    const { ledger } = analyse(basement, name)
    expect(ledger.floorAreaM2.clear * SQUARE_FEET_PER_M2).toBeCloseTo(squareFeet, 1)
    expect(Math.abs(ledger.clearHeightMm.lowest - lowest)).toBeLessThanOrEqual(1)
    expect(Math.abs(ledger.volumeM3.clear - volumeM3)).toBeLessThanOrEqual(0.02)
  })

  it('gives the clear area before the boxed column, and the heights under beam and duct', () => {
    const { ledger } = analyse(basement, 'A independent on concrete')
    const { clear, obstacles, lostToObstacleLinings } = ledger.floorAreaM2
    expect((clear + obstacles + lostToObstacleLinings) * SQUARE_FEET_PER_M2).toBeCloseTo(382.53, 1)
    expect(ledger.drops.map((drop) => drop.clearHeightMm / 25.4)).toEqual([
      expect.closeTo(81.625, 6),
      expect.closeTo(78.75, 6),
    ])
  })

  it('gives no floor back where a lining comes off a wall that was measured to its studs', () => {
    const { ledger, surfaces } = analyse(basement, 'A independent on concrete')
    expect(ledger.floorAreaM2.gained).toBe(0)
    const partition = surfaces.find((surface) => surface.id === 'wall-3')
    expect(partition?.depthFromStructureMm).toBeCloseTo(73.025, 6)
    expect(partition?.depthFromFaceMm).toBeCloseTo(73.025 - 12.7, 6)
  })
})

describe('the ledger', () => {
  it.each(['garage', 'basement'])('closes in %s: outline + gained = strips + obstacles + clear', (name) => {
    const project = openSample(name)
    for (const scheme of project.schemes) {
      const { floorAreaM2, keptPercent } = analyse(project, scheme.name).ledger
      const { existing, gained, obstacles, lost, clear } = floorAreaM2
      expect(Math.abs(existing + gained - lost - obstacles - clear)).toBeLessThan(1e-9)
      expect(keptPercent).toBeCloseTo((clear / existing) * 100, 9)
    }
  })
})
