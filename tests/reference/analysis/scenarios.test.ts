import { describe, expect, it } from 'vitest'
import type { Ledger } from '#analysis/results.ts'
import type { Room } from '#analysis/room.ts'
import { perimeter } from '#geometry/outline.ts'
import type { Project } from '#project/project.ts'
import { CUBIC_FEET_PER_M3, inches, MM_PER_FOOT, SQUARE_FEET_PER_M2 } from '#units/quantity.ts'
import { analyse, openSample } from '../../support/samples.ts'
import facts from './scenarios.json'

const { tolerance } = facts
const near = (actual: number, expected: number, within: number): void => {
  expect(Math.abs(actual - expected), `${actual} against ${expected}`).toBeLessThanOrEqual(within)
}

interface Row {
  readonly name: string
  readonly widthMm: number
  readonly lengthMm: number
  readonly areaM2: number
  readonly lostPercent: number
  readonly lowestMm: number | null
  readonly volumeM3: number
  readonly modesHz: readonly number[] | null
}

/** Every number of a line of the scenarios' tables. */
function expectRow(ledger: Ledger, row: Row): void {
  const { clearSizeMm, clearHeightMm, floorAreaM2 } = ledger
  const sizes = [clearSizeMm.width, clearSizeMm.length].sort((a, b) => a - b)
  near(sizes[0]!, row.widthMm, tolerance.mm)
  near(sizes[1]!, row.lengthMm, tolerance.mm)
  near(floorAreaM2.clear, row.areaM2, tolerance.m2)
  near(100 - ledger.keptPercent, row.lostPercent, tolerance.percent)
  if (row.lowestMm !== null) near(clearHeightMm.lowest, row.lowestMm, tolerance.mm)
  near(ledger.volumeM3.clear, row.volumeM3, tolerance.m3)
  const lengths = [sizes[1]!, sizes[0]!, clearHeightMm.mean]
  row.modesHz?.forEach((hz, k) => {
    near(343_000 / (2 * lengths[k]!), hz, tolerance.hz)
  })
}

function withRoom(project: Project, change: Partial<Room>): Project {
  return { ...project, rooms: [{ ...project.rooms[0]!, ...change }] }
}

/** The slab falls 2 in to the vehicle door under level trusses; lowest is the true least over the clear plan. */
describe('garage', () => {
  const garage = openSample('garage')

  it('as it stands', () => {
    const { floorAreaM2, clearHeightMm, volumeM3 } = analyse(garage, 'A do nothing but close the door').ledger
    near(floorAreaM2.existing, facts.garage.existing.areaM2, tolerance.m2)
    near(volumeM3.existing, facts.garage.existing.volumeM3, tolerance.m3)
    near(clearHeightMm.mean, facts.garage.existing.meanMm, tolerance.mm)
    near(clearHeightMm.existing, 2590.8, 1e-6)
    near(floorAreaM2.clear * SQUARE_FEET_PER_M2, 240, 1e-6)
    expect(floorAreaM2.lost).toBe(0)
  })

  it.each(facts.garage.schemes.map((row) => [row.name, row] as const))('%s', (name, row) => {
    expectRow(analyse(garage, name).ledger, row)
  })

  it('gives option C as it was worked by hand, at the back wall and at the lined face in front of it', () => {
    const { ledger } = analyse(garage, 'C independent room')
    near(ledger.floorAreaM2.clear * SQUARE_FEET_PER_M2, 210.25, 0.005)
    near(ledger.clearHeightMm.lowest, inches(93.75) + inches((2 * 5.75) / 240), 0.05)
  })

  it('gains height to the door where the floor follows the fall, and none where it is laid level', () => {
    const follows = analyse(garage, 'E maximum').ledger.clearHeightMm
    const level = analyse(garage, 'E2 maximum, floating floor laid level').ledger.clearHeightMm
    near(follows.mean - follows.lowest, inches(2) * ((240 - 17.5) / 240 / 2), 0.05)
    near(level.mean - level.lowest, 0, 1e-6)
    near(level.lowest, inches(102 - 7.75 - 3.5), 1e-6)
  })
})

describe('basement', () => {
  const basement = openSample('basement')

  it('as it stands', () => {
    const { floorAreaM2, volumeM3 } = analyse(basement, 'A independent on concrete').ledger
    near(floorAreaM2.existing, facts.basement.existing.areaM2, tolerance.m2)
    near(floorAreaM2.existing * SQUARE_FEET_PER_M2, 420, 0.005)
    near(volumeM3.existing, facts.basement.existing.volumeM3, tolerance.m3)
  })

  it.each(facts.basement.schemes.map((row) => [row.name, row] as const))('%s', (name, row) => {
    const { ledger } = analyse(basement, name)
    near(ledger.floorAreaM2.clear * SQUARE_FEET_PER_M2, row.clearFt2, 0.05)
    near(ledger.clearHeightMm.lowest, row.lowestMm, tolerance.mm)
    near(ledger.volumeM3.clear, row.volumeM3, tolerance.m3)
    near(ledger.areaAbove[0]!.areaM2, ledger.floorAreaM2.clear, 1e-6)
    expect(ledger.drops.map((drop) => drop.clearHeightMm)).toEqual(
      facts.basement.soffitsIn.map((soffit) => expect.closeTo(inches(soffit), 6)),
    )
    const bare = analyse(withRoom(basement, { obstacles: [] }), name).ledger
    near(bare.floorAreaM2.clear, row.beforeColumnM2, tolerance.m2)
    near(100 - bare.keptPercent, row.lostPercent, tolerance.percent)
    near(bare.volumeM3.clear, row.beforeColumnM3, tolerance.m3)
  })

  it.each(facts.basement.otherCeilings)('under ceiling $assembly', ({ assembly, lowestMm, isLow }) => {
    const scheme = basement.schemes[0]!
    const choices = { ...scheme.choices, 'ceiling-1': { assembly, removeLining: false } }
    const { ledger, cautions } = analyse({ ...basement, schemes: [{ ...scheme, choices }] }, scheme.name)
    near(ledger.clearHeightMm.lowest, lowestMm, tolerance.mm)
    expect(cautions.some(({ code }) => code === 'low-ceiling')).toBe(isLow)
  })

  it('leaves the polygon that was worked by hand', () => {
    const { clear } = analyse(withRoom(basement, { obstacles: [] }), 'A independent on concrete')
    const outline = clear[0]?.outline ?? []
    expect(outline).toHaveLength(facts.basement.netPolygonAIn.length)
    for (const [x, y] of facts.basement.netPolygonAIn) {
      const apart = outline.map(([cx, cy]) => Math.hypot(cx - inches(x!), cy - inches(y!)))
      expect(Math.min(...apart)).toBeLessThanOrEqual(0.01)
    }
    near(perimeter(outline) / MM_PER_FOOT, facts.basement.netPerimeterAFt, 0.005)
  })

  it('takes from the volume what beam and duct box take', () => {
    const bare = withRoom(basement, { obstacles: [] })
    const volume = (some: Project) => analyse(some, 'A independent on concrete').ledger.volumeM3.clear
    const without = volume(withRoom(bare, { drops: [] }))
    bare.rooms[0]!.drops.forEach((drop, k) => {
      const one = volume(withRoom(bare, { drops: [drop] }))
      near((without - one) * CUBIC_FEET_PER_M3, facts.basement.soffitsFt3[k]!, 0.06)
    })
  })

  it('gives no floor back where a lining comes off a wall that was measured to its studs', () => {
    const { ledger, surfaces } = analyse(basement, 'A independent on concrete')
    expect(ledger.floorAreaM2.gained).toBe(0)
    const partition = surfaces.find((surface) => surface.id === 'wall-3')
    expect(partition?.depthFromStructureMm).toBeCloseTo(73.025, 6)
    expect(partition?.depthFromFaceMm).toBeCloseTo(73.025 - 12.7, 6)
  })
})

describe('outbuilding', () => {
  const outbuilding = openSample('outbuilding')
  const { existing, schemes, beforePierBoxesM2, pierBoxM2 } = facts.outbuilding

  it('as it stands', () => {
    const { floorAreaM2, volumeM3 } = analyse(outbuilding, 'B clips on block, piers left standing').ledger
    near(floorAreaM2.existing, existing.areaM2, 1e-9)
    near(floorAreaM2.existing - floorAreaM2.obstacles, existing.lessPiersM2, 5e-4)
    near(volumeM3.existing, existing.volumeM3, 1e-9)
    near(volumeM3.existing - floorAreaM2.obstacles * 2.3, existing.lessPiersM3, 5e-3)
  })

  it.each(schemes.map((row) => [row.name, row] as const))('%s', (name, row) => {
    const { ledger, cautions } = analyse(outbuilding, name)
    expectRow(ledger, row)
    expect(cautions.some(({ code }) => code === 'equal-sides')).toBe(row.isNearOneToTwo)
  })

  it('boxes the piers that are left standing, and says what it means to take them out', () => {
    const name = 'B clips on block, piers left standing'
    const { clear } = analyse(outbuilding, name).ledger.floorAreaM2
    near(analyse(withRoom(outbuilding, { obstacles: [] }), name).ledger.floorAreaM2.clear, beforePierBoxesM2, 5e-4)
    near(clear + 2 * pierBoxM2, beforePierBoxesM2, 5e-4)
    const taken = analyse(outbuilding, 'C piers taken out')
    expect(taken.ledger.floorAreaM2.obstacles).toBe(0)
    const caution = taken.cautions.find(({ code }) => code === 'taken-out')
    expect([caution?.kind, caution?.text]).toEqual(['life-safety', expect.stringMatching(/Pier.*structural engineer/)])
  })

  it('counts the lining in front of a pier to its wall', () => {
    const { surfaces, ledger } = analyse(outbuilding, 'A lining clear of the piers')
    const long = surfaces.filter(({ id }) => id === 'wall-1' || id === 'wall-3')
    for (const { clearLengthMm } of long) near(clearLengthMm, 5164, 0.1)
    near(ledger.floorAreaM2.lost, existing.lessPiersM2 - 13.2405, 1e-3)
    expect(ledger.floorAreaM2.lostToObstacleLinings).toBe(0)
  })
})

describe.each(['garage', 'basement', 'outbuilding'])('the ledger of %s', (name) => {
  it('closes: outline + gained = strips + obstacles + clear', () => {
    const project = openSample(name)
    for (const scheme of project.schemes) {
      const { floorAreaM2, keptPercent } = analyse(project, scheme.name).ledger
      const { existing, gained, obstacles, lost, clear } = floorAreaM2
      near(existing + gained - lost - obstacles - clear, 0, 1e-9)
      near(keptPercent, (clear / existing) * 100, 1e-9)
    }
  })
})
