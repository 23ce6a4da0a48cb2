import { describe, expect, it } from 'vitest'
import { analyseScheme } from '#analysis/analyse.ts'
import { checkFurniture } from '#analysis/furniture/checkFurniture.ts'
import type { FurnitureCheck, HeightField, SchemeResult } from '#analysis/results.ts'
import type { Furniture, Opening, Room } from '#analysis/room.ts'
import { outlineArea } from '#geometry/outline.ts'
import { aDoor, aPiece, aPlanRoom } from '../../../support/drawing.ts'
import { aHeight, aPart, aRoom, box, resultsOf } from '../../../support/rooms.ts'
import { CATALOGUE, deepFreeze } from '../../../support/samples.ts'

const NO_HEIGHTS: HeightField = { patches: [], worstMissMm: 0 }

/** 12 by 20 ft with W14 all round: clear from 146.05 to 3511.55 and to 5949.95. */
function checks(
  furniture: readonly Furniture[],
  more: { room?: Partial<Room>; openings?: readonly Opening[]; heights?: HeightField } = {},
): readonly FurnitureCheck[] {
  const plan = aPlanRoom({
    corners: [
      [0, 0],
      [3657.6, 0],
      [3657.6, 6096],
      [0, 6096],
    ],
    openings: more.openings ?? [],
  })
  const room: Room = deepFreeze({ ...plan, ...more.room, furniture })
  const choices = Object.fromEntries(room.walls.map(({ id }) => [id, { assembly: 'W14', removeLining: false }]))
  const input = { room, scheme: { id: 's', name: 'S', choices }, catalogue: CATALOGUE, quality: 'drag' } as const
  const analysed = analyseScheme(input)
  if (!analysed.ok) throw new Error(analysed.error.message)
  const result: SchemeResult = { ...analysed.value, heights: more.heights ?? NO_HEIGHTS }
  return checkFurniture(input, result, [])
}

const codes = (check: FurnitureCheck | undefined): string[] => check!.problems.map(({ code }) => code)
const said = (check: FurnitureCheck | undefined): string => check!.problems.map(({ text }) => text).join(' ')

describe('a desk', () => {
  it('fits in the middle of the room, with its clearances', () => {
    const [desk] = checks([aPiece()])
    expect(desk!.problems).toEqual([])
    expect(outlineArea(desk!.footprint)).toBeCloseTo(1600 * 800, 6)
    expect(outlineArea(desk!.withClearance)).toBeCloseTo(1600 * (800 + 900), 6)
  })

  it('keeps its size when it turns, and looks down the page unturned', () => {
    const [turned] = checks([aPiece({ angleDeg: 37 })])
    expect(outlineArea(turned!.footprint)).toBeCloseTo(1600 * 800, 6)
    const [desk] = checks([aPiece()])
    expect(Math.min(...desk!.withClearance.map(([, y]) => y))).toBeCloseTo(3000 - 400 - 900, 9)
    const [quarter] = checks([aPiece({ angleDeg: 90 })])
    expect(Math.max(...quarter!.withClearance.map(([x]) => x))).toBeCloseTo(1800 + 400 + 900, 9)
  })

  it('fits flush to a lining but not a millimetre into it', () => {
    const flush = 146.05 + 800
    expect(checks([aPiece({ xMm: flush })])[0]!.problems).toEqual([])
    const [inside] = checks([aPiece({ xMm: flush - 1 })])
    expect(said(inside)).toContain("Desk stands in Wall 4's lining")
    expect(codes(inside)).toEqual(['furniture-in-wall'])
  })

  it('says which lining takes its clearance', () => {
    const [desk] = checks([aPiece({ yMm: 700 })])
    expect(codes(desk)).toEqual(['furniture-clearance'])
    expect(said(desk)).toContain("Wall 1's lining takes part of it")
  })

  it('does not stand in a column, a swing or another piece', () => {
    const corners = [
      [1700, 2900],
      [1900, 2900],
      [1900, 3100],
      [1700, 3100],
    ].map(([xMm, yMm]) => ({ xMm: xMm!, yMm: yMm! }))
    const column = { id: 'c', name: 'Column', liningMm: 50, corners }
    expect(said(checks([aPiece()], { room: { obstacles: [column] } })[0])).toContain('Desk stands in Column')
    const [swing] = checks([aPiece({ xMm: 2650, yMm: 1500, angleDeg: 180 })], { openings: [aDoor({})] })
    expect(codes(swing)).toContain('furniture-in-swing')
    const both = checks([aPiece(), aPiece({ id: 'f2', name: 'Piano', yMm: 3500 })])
    expect(both.map((check) => codes(check))).toEqual([['furniture-overlaps'], ['furniture-overlaps']])
    const near = checks([aPiece(), aPiece({ id: 'f2', name: 'Piano', yMm: 2000 })])
    expect(said(near[0])).toContain('Piano takes part of it')
    expect(near[1]!.problems).toEqual([])
  })

  it('does not stand under a drop or a slope lower than it is high', () => {
    const shape = (x0: number, x1: number) => ({
      outline: [
        [x0, 0],
        [x1, 0],
        [x1, 6096],
        [x0, 6096],
      ] as const,
      holes: [],
      areaMm2: (x1 - x0) * 6096,
    })
    const heights: HeightField = {
      worstMissMm: 0,
      patches: [
        { plan: [shape(0, 1200)], plane: { atOrigin: 700, perX: 0, perY: 0 }, drop: 'b' },
        { plan: [shape(1200, 3657.6)], plane: { atOrigin: 0, perX: 1, perY: 0 }, drop: null },
      ],
    }
    const [desk] = checks([aPiece()], { heights, room: { drops: [] } })
    // From x 1000 to 2600: 200 mm of it under the drop, the slope 1200 mm high at its lowest.
    expect(codes(desk)).toEqual(['furniture-too-high'])
    expect(said(desk)).toContain('700 mm')
    expect(checks([aPiece({ xMm: 2100 })], { heights })[0]!.problems).toEqual([])
    const [high] = checks([aPiece({ xMm: 2100, heightMm: 1400 })], { heights, room: { drops: [] } })
    expect(said(high)).toContain('The ceiling leaves 1300 mm')
  })
})

describe('a piece that stands half under a raised bay', () => {
  // The ceiling falls from 2600 to 1600 mm at the bay's edge; past it, where the bay hangs at 2500, it would go on falling.
  const heights = [aHeight(0, 0, 2600), aHeight(2500, 0, 1600)]
  const piece = aPiece({ xMm: 2700, yMm: 2000, widthMm: 1000, depthMm: 600, heightMm: 1500, angleDeg: 0 })

  it.each([
    ['at a wall', box(2500, 1000, 4500, 4000)],
    ['in the middle of the room', box(2500, 1000, 4500, 3000)],
  ])('%s is not held against the ceiling the bay interrupts', (_, bay) => {
    const ceilingParts = [aPart(bay, [aHeight(3000, 2000, 2500)])]
    const low = (heightMm: number) =>
      resultsOf(
        aRoom(box(0, 0, 5000, 4000), { heights, ceilingParts, furniture: [{ ...piece, heightMm }] }),
      ).furniture[0]?.problems.filter(({ code }) => code === 'furniture-too-high').length
    expect([low(1590), low(1610)]).toEqual([0, 1])
  })
})
