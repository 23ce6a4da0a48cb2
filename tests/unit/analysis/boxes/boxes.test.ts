import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { clearHeightAt } from '#analysis/heights/field.ts'
import type { SchemeResult } from '#analysis/results.ts'
import type { Furniture, Opening, Room } from '#analysis/room.ts'
import type { SilencerBox } from '#analysis/scheme.ts'
import { aDoor, aPiece } from '../../../support/drawing.ts'
import { aDrop, aHeight, anObstacle, aRoom, aScheme, box, resultsOf } from '../../../support/rooms.ts'

const HALL = aRoom(box(0, 0, 5000, 4000))

/** 1 by 0.5 m and 300 mm high in the middle of the hall, standing. */
function aBox(change: Partial<SilencerBox> = {}): SilencerBox {
  const size = { widthMm: 1000, depthMm: 500, heightMm: 300 }
  const at = { xMm: 2500, yMm: 2000, angleDeg: 0, undersideMm: 0 }
  return { id: 'box-1', name: 'Silencer', duct: null, room: HALL.id, ...at, ...size, ...change }
}

function withBoxes(boxes: readonly SilencerBox[], room: Room = HALL, built: Record<string, string> = {}): SchemeResult {
  return resultsOf(room, aScheme(built, { boxes }))
}

const said = ({ boxes }: SchemeResult): string[] => boxes.flatMap(({ problems }) => problems.map(({ text }) => text))
const codes = ({ boxes }: SchemeResult): string[] => boxes.flatMap(({ problems }) => problems.map(({ code }) => code))

describe('a box that stands', () => {
  it('takes its footprint of the floor and what it fills of the volume, and nothing of what was there before', () => {
    const { ledger, clear } = withBoxes([aBox()])
    expect(ledger.floorAreaM2).toMatchObject({ existing: 20, obstacles: 0, gained: 0, lostToWalls: 0 })
    expect(ledger.floorAreaM2.lostToBoxes).toBeCloseTo(0.5, 6)
    expect(ledger.floorAreaM2.lost).toBeCloseTo(0.5, 6)
    expect(ledger.floorAreaM2.clear).toBeCloseTo(19.5, 6)
    expect(ledger.keptPercent).toBeCloseTo(97.5, 6)
    expect(ledger.volumeM3.existing).toBeCloseTo(48, 6)
    expect(ledger.volumeM3.clear).toBeCloseTo(48 - 0.15, 6)
    expect(clear[0]?.holes).toHaveLength(1)
    expect(ledger.clearHeightMm.lowest).toBe(2400)
    expect(ledger.clearHeightMm.mean).toBeCloseTo(2400, 6)
  })

  it('leaves the linings as they are: their length, their weight and their strips', () => {
    const built = { 'wall-1': 'W14', 'wall-2': 'W14', 'floor-1': 'F01', 'ceiling-1': 'C05' }
    const against = aBox({ xMm: 2500, yMm: 450 })
    const [without, boxed] = [withBoxes([], HALL, built), withBoxes([against], HALL, built)]
    expect(boxed.surfaces).toEqual(without.surfaces)
    expect(boxed.ledger.addedMassKg).toBe(without.ledger.addedMassKg)
    expect(boxed.ledger.floorAreaM2.lostToWalls).toBe(without.ledger.floorAreaM2.lostToWalls)
  })

  it('takes of the floor only what no lining has taken already', () => {
    const built = { 'wall-1': 'W14' }
    const halfIn = withBoxes([aBox({ yMm: 250 })], HALL, built)
    expect(halfIn.ledger.floorAreaM2.lostToBoxes).toBeLessThan(0.5)
    expect(said(halfIn)).toEqual(["Silencer stands in Wall 1's lining: move or turn it."])
  })

  it('in another room of the project takes nothing here', () => {
    expect(withBoxes([aBox({ room: 'room-9' })])).toMatchObject({ boxes: [], ledger: { floorAreaM2: { clear: 20 } } })
  })
})

describe('a box that hangs', () => {
  it('takes what it fills and the height under it, and no floor', () => {
    const { ledger, heights } = withBoxes([aBox({ undersideMm: 2050 })])
    expect(ledger.floorAreaM2).toMatchObject({ lost: 0, lostToBoxes: 0, clear: 20 })
    expect(ledger.volumeM3.clear).toBeCloseTo(48 - 0.15, 6)
    expect(ledger.drops).toEqual([{ id: 'box-1', name: 'Silencer', clearHeightMm: 2050 }])
    expect(clearHeightAt(heights, [2500, 2000])).toBeCloseTo(2050, 6)
    expect(clearHeightAt(heights, [500, 500])).toBeCloseTo(2400, 6)
    expect(ledger.clearHeightMm.lowest).toBe(2400)
  })

  it('counts its height from the new floor', () => {
    const { ledger } = withBoxes([aBox({ undersideMm: 2000 })], HALL, { 'floor-1': 'F01' })
    expect(ledger.drops[0]?.clearHeightMm).toBeCloseTo(2000, 6)
  })

  it('fills no more than there is under a sloping ceiling', () => {
    const sloped = aRoom(box(0, 0, 5000, 4000), {
      heights: [aHeight(0, 0, 2000), aHeight(5000, 0, 2000), aHeight(0, 4000, 2800)],
    })
    const [{ ledger: bare }, { ledger }] = [
      withBoxes([], sloped),
      withBoxes([aBox({ undersideMm: 2100, heightMm: 1000 })], sloped),
    ]
    // 2400 mm in its middle, rising by 0.2: 1 m by 0.5 m by 0.3 m of air are left over its underside.
    expect(bare.volumeM3.clear - ledger.volumeM3.clear).toBeCloseTo(0.15, 6)
  })

  it('warns where people would strike their heads, as a beam does', () => {
    const { cautions } = withBoxes([aBox({ undersideMm: 1800 })])
    const caution = cautions.find(({ code }) => code === 'low-drop')
    expect(caution).toMatchObject({ kind: 'life-safety' })
    expect(caution?.text).toContain('Silencer leaves 1800 mm')
  })
})

describe('a box in the way', () => {
  const door: Opening = aDoor({ id: 'd1', wall: 'wall-1', fromMm: 2000 })
  const desk: Furniture = aPiece({ xMm: 2500, yMm: 2000 })

  it('is told where it stands in a swing, in furniture, in a column or in another box', () => {
    expect(codes(withBoxes([aBox({ yMm: 500 })], { ...HALL, openings: [door] }))).toContain('box-in-swing')
    expect(codes(withBoxes([aBox()], { ...HALL, furniture: [desk] }))).toEqual(['box-in-furniture'])
    const pier = anObstacle(box(2400, 1900, 2600, 2100), 0)
    expect(said(withBoxes([aBox()], { ...HALL, obstacles: [pier] }))).toEqual([
      'Silencer stands in Pier: move or turn it.',
    ])
    const two = withBoxes([aBox(), aBox({ id: 'box-2', name: 'Second', xMm: 3000 })])
    expect(said(two)).toEqual(['Second and Silencer are in one place: move one of them.'])
    const over = withBoxes([aBox(), aBox({ id: 'box-2', name: 'Second', undersideMm: 2000 })])
    expect(said(over)).toEqual([])
  })

  it('is told of the furniture once, and the furniture of it', () => {
    const result = withBoxes([aBox()], { ...HALL, furniture: [desk] })
    expect(result.furniture[0]?.problems.map(({ text }) => text)).toContain(
      'Desk stands in Silencer: move one of them.',
    )
    expect(result.cautions.filter(({ text }) => text.includes('Silencer'))).toHaveLength(1)
  })

  it('that hangs over furniture leaves it its height or says so', () => {
    const piano = aPiece({ xMm: 2500, yMm: 2000, heightMm: 2200, name: 'Rack' })
    const low = withBoxes([aBox({ undersideMm: 2050 })], { ...HALL, furniture: [piano] })
    expect(low.furniture[0]?.problems.map(({ code }) => code)).toEqual(['furniture-too-high'])
    expect(low.furniture[0]?.problems[0]?.text).toContain('Silencer leaves 2050 mm')
  })

  it('is told where it is higher than the room, or than a beam there', () => {
    expect(said(withBoxes([aBox({ undersideMm: 2200 })]))[0]).toMatch(
      /reaches up to 2500 mm .* the ceiling there is at 2400 mm/,
    )
    const beam = aDrop(box(2400, 0, 2600, 4000), { name: 'Beam', undersideMm: 2100 })
    expect(said(withBoxes([aBox({ heightMm: 2200 })], { ...HALL, drops: [beam] }))[0]).toMatch(
      /and Beam there is at 2100 mm/,
    )
  })

  it('that bars a door or a window is a matter of life safety', () => {
    const out: Opening = { ...door, swing: 'out' }
    const barred = withBoxes([aBox({ yMm: 500 })], { ...HALL, openings: [out] })
    expect(barred.cautions.find(({ code }) => code === 'box-before-opening')).toMatchObject({ kind: 'life-safety' })
    const window: Opening = { ...out, kind: 'window', name: 'Window', sillMm: 900, heightMm: 900 }
    expect(codes(withBoxes([aBox({ yMm: 500 })], { ...HALL, openings: [window] }))).toEqual([])
    expect(codes(withBoxes([aBox({ yMm: 500, heightMm: 1200 })], { ...HALL, openings: [window] }))).toEqual([
      'box-before-opening',
    ])
  })
})

describe('laws of boxes', () => {
  const place = fc.record({
    xMm: fc.integer({ min: -200, max: 5200 }),
    yMm: fc.integer({ min: -200, max: 4200 }),
    widthMm: fc.integer({ min: 50, max: 3000 }),
    depthMm: fc.integer({ min: 50, max: 2000 }),
    heightMm: fc.integer({ min: 50, max: 3000 }),
    angleDeg: fc.integer({ min: -180, max: 180 }),
    undersideMm: fc.constantFrom(0, 0, 1500, 2300),
  })

  it('the floor is told without a rest, whatever stands where', () => {
    const built = { 'wall-1': 'W14', 'wall-3': 'W14', 'ceiling-1': 'C05' }
    fc.assert(
      fc.property(fc.array(place, { maxLength: 3 }), (places) => {
        const boxes = places.map((at, k) => aBox({ ...at, id: `box-${k}`, name: `Box ${k}` }))
        const { ledger, clear, heights } = withBoxes(boxes, HALL, built)
        const { existing, gained, obstacles, lost, clear: left, ...takes } = ledger.floorAreaM2
        expect(existing + gained).toBeCloseTo(obstacles + lost + left, 9)
        expect(takes.lostToWalls + takes.lostToObstacleLinings + takes.lostToBoxes).toBeCloseTo(lost, 9)
        expect(clear.reduce((sum, { areaMm2 }) => sum + areaMm2, 0) / 1e6).toBeCloseTo(left, 9)
        const patches = heights.patches.flatMap(({ plan }) => plan).reduce((sum, { areaMm2 }) => sum + areaMm2, 0)
        expect(patches / 1e6).toBeCloseTo(left, 3)
      }),
      { numRuns: 60 },
    )
  })

  it('a box never gives back floor or volume, and never more volume than itself', () => {
    const bare = withBoxes([]).ledger
    fc.assert(
      fc.property(place, (at) => {
        const { ledger } = withBoxes([aBox(at)])
        expect(ledger.floorAreaM2.clear).toBeLessThanOrEqual(bare.floorAreaM2.clear + 1e-9)
        const filled = bare.volumeM3.clear - ledger.volumeM3.clear
        expect(filled).toBeGreaterThanOrEqual(-1e-9)
        expect(filled).toBeLessThanOrEqual((at.widthMm * at.depthMm * at.heightMm) / 1e9 + 1e-5)
      }),
      { numRuns: 100 },
    )
  })
})
