import { describe, expect, test } from 'vitest'
import { type Inset, type InsetInput, insetRoom } from '#geometry/inset/insetRoom.ts'
import type { Point } from '#geometry/polygon.ts'
import { clearArea, frozen, lengthOf, rectangleRing } from '../../../support/geometryMeasures.ts'
import { randomRoom, rotate } from '../../../support/geometryRooms.ts'

function solved(input: Omit<InsetInput, 'obstacles'> & Partial<InsetInput>): Inset {
  const answer = insetRoom(frozen({ obstacles: [], ...input }))
  if (!answer.ok) throw new Error(answer.error.message)
  return answer.value
}

const codes = (inset: Inset): string[] => inset.warnings.map((warning) => warning.code)
const ROOM = rectangleRing(0, 0, 5000, 4000)

describe('walls and edges', () => {
  test('every edge of the clear room names its wall, the room on its left', () => {
    const { edges } = solved({ outline: ROOM, depthsMm: [100, 150, 75, 0] })
    expect(edges.map(({ wall, kind }) => `${wall} ${kind}`).sort()).toEqual(['0 face', '1 face', '2 face', '3 bare'])
    const bottom = edges.find((edge) => edge.wall === 0)
    expect(bottom).toEqual({ from: [0, 100], to: [4850, 100], wall: 0, kind: 'face' })
  })

  test('sections are measured along the wall as the caller drew it', () => {
    const forward = solved({ outline: ROOM, depthsMm: [100, 150, 75, 50] })
    expect(forward.walls[0]?.sections).toEqual([{ from: [50, 100], to: [4850, 100], s0Mm: 50, s1Mm: 4850 }])
    const backward = solved({ outline: ROOM.toReversed(), depthsMm: [75, 150, 100, 50] })
    expect(backward.walls[2]?.sections.map(({ s0Mm, s1Mm }) => [s0Mm, s1Mm])).toEqual([[150, 4950]])
  })

  test('a step on a straight wall has a return that belongs to the thicker lining', () => {
    const outline: Point[] = [[0, 0], [2000, 0], ...ROOM.slice(1)]
    const { edges } = solved({ outline, depthsMm: [100, 200, 0, 0, 0] })
    const steps = edges.filter((edge) => edge.kind === 'return')
    expect(steps).toEqual([{ from: [2000, 100], to: [2000, 200], wall: 1, kind: 'return' }])
  })

  test('a wall split by a column has two sections; the column shares no floor with it', () => {
    const column = { outline: rectangleRing(2000, 0, 300, 300), depthsMm: [0, 25, 25, 25] }
    const inset = solved({ outline: ROOM, depthsMm: [100, 0, 0, 0], obstacles: [column] })
    const sections = inset.walls[0]?.sections.map(({ s0Mm, s1Mm }) => [s0Mm, s1Mm])
    expect(sections).toEqual([
      [0, 1975],
      [2325, 5000],
    ])
    expect(inset.obstaclesMm2).toBe(90_000)
    expect(clearArea(inset)).toBe(20e6 - 4650 * 100 - 350 * 325)
    expect(inset.walls.length).toBe(8)
  })

  test('a room turned by any angle keeps lengths and areas, bare walls beside linings too', () => {
    const outline: Point[] = [
      [0, 0],
      [6000, 0],
      [6000, 2500],
      [3000, 2500],
      [3000, 5000],
      [0, 5000],
    ]
    const depthsMm = [100, 0, 80, 120, 0, 90]
    const straight = solved({ outline, depthsMm })
    for (let k = 1; k < 40; k++) {
      const turned = solved({ outline: rotate(outline, k * 0.157), depthsMm })
      expect(Math.abs(clearArea(turned) - clearArea(straight))).toBeLessThan(60)
      expect(turned.edges.length).toBe(straight.edges.length)
      turned.walls.forEach((wall, w) => {
        expect(Math.abs(wall.clearLengthMm - straight.walls[w]!.clearLengthMm)).toBeLessThan(0.05)
      })
    }
  })
})

describe('linings that take all', () => {
  test('a thick lining does not reach through a thin wall into the next leg', () => {
    const outline: Point[] = [
      [0, 0],
      [5000, 0],
      [5000, 1500],
      [5000, 4000],
      [2550, 4000],
      [2550, 1500],
      [2450, 1500],
      [2450, 4000],
      [0, 4000],
    ]
    const inset = solved({ outline, depthsMm: [0, 0, 2700, 0, 0, 0, 0, 0, 0] })
    expect(inset.lostMm2).toBe(2450 * 2500)
    expect(clearArea(inset)).toBe(5000 * 4000 - 100 * 2500 - inset.lostMm2)
  })

  test('a swallowed wall is named, a split room says its parts', () => {
    const jog: Point[] = [[0, 0], [3000, 0], [3000, 100], [5000, 100], ...ROOM.slice(2)]
    const swallowed = solved({ outline: jog, depthsMm: [300, 0, 0, 0, 0, 0] })
    expect(swallowed.walls.map((wall) => wall.swallowed)).toEqual([false, true, false, false, false, false])
    expect(swallowed.warnings).toEqual([
      {
        code: 'swallowed',
        message: 'Wall 2 disappears behind the linings of its neighbours: none of it faces the clear room.',
        walls: [1],
      },
    ])
    const waist: Point[] = [
      [0, 0],
      [2000, 900],
      [4000, 0],
      [4000, 2000],
      [2000, 1100],
      [0, 2000],
    ]
    const split = solved({ outline: waist, depthsMm: waist.map(() => 150) })
    expect(split.clear.length).toBe(2)
    expect(codes(split)).toContain('split')
    expect(clearArea(split)).toBeGreaterThan(0)
  })

  test('linings whose faces just meet leave no crumbs and no second part', () => {
    const neck = [...Array(40).keys()].map((k) => {
      const waist: Point[] = [
        [0, 0],
        [3000, 0],
        [3000, 1500],
        [3400, 1500],
        [3400, 0],
        [6000, 0],
        [6000, 3000],
        [3400, 3000],
        [3400, 2000],
        [3000, 2000],
        [3000, 3000],
        [0, 3000],
      ]
      const depthsMm = waist.map((_, wall) => (wall === 2 || wall === 8 ? 250 : 0))
      return solved({ outline: rotate(waist, k * 0.157), depthsMm })
    })
    for (const inset of neck) {
      expect(Math.abs(clearArea(inset) - 16_800_000)).toBeLessThan(60)
      expect(inset.clear.every((part) => part.areaMm2 > 1e6)).toBe(true)
    }
  })

  test('a thick lining stops where its thin neighbour ends and turns away', () => {
    const outline: Point[] = [
      [0, 0],
      [4000, 0],
      [4200, 200],
      [7000, 200],
      [7000, 4000],
      [0, 4000],
    ]
    const inset = solved({ outline, depthsMm: [300, 50, 0, 0, 0, 0] })
    // Square to wall 1 at its end (4200, 200): the face at y 300 is met at x 4100.
    expect(inset.walls[0]?.clearLengthMm).toBeCloseTo(4100, 2)
    expect(inset.walls[1]?.swallowed).toBe(true)
  })

  test('what rounding leaves between two strips is no part of the floor', () => {
    for (const seed of [105, 159]) {
      const drawn = randomRoom('convex', seed, { lattice: 0, obstacles: 1 })
      const angle = 0.1 + seed * 0.37
      const obstacles = drawn.obstacles.map((ring) => ({ ...ring, outline: rotate(ring.outline, angle) }))
      const inset = solved({ outline: rotate(drawn.outline, angle), depthsMm: drawn.depthsMm, obstacles })
      expect(inset.clear.length).toBe(1)
    }
  })

  test('nothing left is said once, not wall by wall', () => {
    const inset = solved({ outline: rectangleRing(0, 0, 500, 400), depthsMm: [300, 300, 300, 300] })
    expect(inset.clear).toEqual([])
    expect(inset.edges).toEqual([])
    expect(codes(inset)).toEqual(['nothing-left'])
    expect(inset.walls.every((wall) => wall.swallowed && wall.clearLengthMm === 0)).toBe(true)
  })

  test('a nook is kept and told apart', () => {
    const outline: Point[] = [
      [0, 0],
      [3000, 0],
      [3000, 1000],
      [3150, 1000],
      [3150, 1100],
      [3350, 1100],
      [3350, 1250],
      [3150, 1250],
      [3150, 1350],
      [3000, 1350],
      [3000, 3000],
      [0, 3000],
    ]
    const depths = outline.map((_, k) => (k === 3 || k === 7 ? 130 : 0))
    const inset = solved({ outline, depthsMm: depths.map((depth, k) => (k === 2 || k === 8 ? 180 : depth)) })
    expect(inset.clear.length).toBe(2)
    const nook = inset.warnings.find((warning) => warning.code === 'small-part')
    expect(nook?.message).toMatch(/^A part of the clear floor is only 0\.0\d m2 \(between Wall /)
    expect(nook?.walls).toContain(5)
  })
})

describe('walls that move outward', () => {
  test('neighbours follow along their own lines, at right angles and others', () => {
    const inset = solved({ outline: ROOM, depthsMm: [-25, -30, 0, 100] })
    expect(inset.gainedMm2).toBe(5000 * 25 + 4000 * 30 + 25 * 30)
    expect(inset.walls[0]?.sections.map(({ s0Mm, s1Mm }) => [s0Mm, s1Mm])).toEqual([[100, 5030]])
    expect(inset.walls[0]?.areaMm2).toBe(0)
    const triangle: Point[] = [
      [0, 0],
      [4000, 0],
      [0, 3000],
    ]
    const wider = solved({ outline: triangle, depthsMm: [0, -50, 0] })
    expect(Math.abs(wider.gainedMm2 - (5000 * 50 + (50 * 50 * 25) / 24))).toBeLessThan(20)
  })

  test('on a straight wall the move ends square', () => {
    const outline: Point[] = [[0, 0], [2000, 0], ...ROOM.slice(1)]
    const inset = solved({ outline, depthsMm: [-40, 60, 0, 0, 0] })
    expect(inset.gainedMm2).toBe(2000 * 40)
    expect(inset.lostMm2).toBe(3000 * 60)
    expect(clearArea(inset)).toBe(20e6 + 80_000 - 180_000)
    const returns = inset.edges.filter((edge) => edge.kind === 'return')
    expect(returns.map((edge) => [edge.wall, lengthOf(edge)])).toEqual(
      expect.arrayContaining([
        [0, 40],
        [1, 60],
      ]),
    )
  })

  test('a column can lose its casing', () => {
    const column = { outline: rectangleRing(2000, 2000, 400, 400), depthsMm: [-20, -20, -20, -20] }
    const inset = solved({ outline: ROOM, depthsMm: [0, 0, 0, 0], obstacles: [column] })
    expect(inset.obstaclesMm2).toBe(160_000)
    expect(inset.gainedMm2).toBe(160_000 - 360 * 360)
    expect(clearArea(inset)).toBe(20e6 - 360 * 360)
    expect(inset.closureGridUnits2).toBe(0)
  })
})

describe('obstacles', () => {
  test('only what stands in the room counts, overlaps once', () => {
    const one = { outline: rectangleRing(-100, 1000, 300, 300), depthsMm: [0, 0, 0, 0] }
    const other = { outline: rectangleRing(100, 1200, 300, 300), depthsMm: [0, 0, 0, 0] }
    const inset = solved({ outline: ROOM, depthsMm: [0, 0, 0, 0], obstacles: [one, other] })
    expect(inset.obstaclesMm2).toBe(200 * 300 + 300 * 300 - 100 * 100)
  })

  test('a column drawn against a slanted wall stands against it: no lining grows in front of it through the gap', () => {
    const column = rectangleRing(2000, 0, 400, 300)
    const depthsMm = [400, 0, 0, 0]
    for (let k = 0; k < 40; k++) {
      const obstacle = { outline: rotate(column, k * 0.157), depthsMm: [0, 0, 25, 0] }
      const inset = solved({ outline: rotate(ROOM, k * 0.157), depthsMm, obstacles: [obstacle] })
      // The wall is lined beside the column, the column in front: 25 mm between the two ends.
      expect(Math.abs(inset.lostMm2 - (4600 * 400 + 400 * 25))).toBeLessThan(60)
      expect(inset.clear.length).toBe(1)
      expect(Math.abs(inset.walls[0]!.clearLengthMm - 4600)).toBeLessThan(0.05)
    }
  })

  test('two boxes drawn side by side leave no gap between them', () => {
    for (let k = 0; k < 20; k++) {
      const boxes = [rectangleRing(1000, 1000, 500, 300), rectangleRing(1500, 1000, 200, 300)]
      const obstacles = boxes.map((ring) => ({ outline: rotate(ring, k * 0.3), depthsMm: [0, 0, 0, 0] }))
      const inset = solved({ outline: rotate(ROOM, k * 0.3), depthsMm: [0, 0, 0, 0], obstacles })
      expect(Math.abs(inset.obstaclesMm2 - 700 * 300)).toBeLessThan(30)
      expect(inset.walls[5]!.swallowed).toBe(true)
      if (k === 0) expect(inset.obstaclesMm2).toBe(700 * 300)
    }
  })

  test('a column in a corner of the room leaves no crumb behind it', () => {
    for (let k = 0; k < 40; k++) {
      const obstacle = { outline: rotate(rectangleRing(0, 0, 400, 300), k * 0.157), depthsMm: [0, 0, 0, 0] }
      const inset = solved({ outline: rotate(ROOM, k * 0.157), depthsMm: [0, 0, 0, 0], obstacles: [obstacle] })
      expect(inset.clear.length).toBe(1)
      expect(inset.edges.length).toBe(6)
      expect(Math.abs(inset.obstaclesMm2 - 120_000)).toBeLessThan(30)
    }
  })

  test('one outside the room takes nothing and is named', () => {
    const far = { outline: rectangleRing(9000, 0, 300, 300), depthsMm: [50, 50, 50, 50] }
    const inset = solved({ outline: ROOM, depthsMm: [0, 0, 0, 0], obstacles: [far] })
    expect(inset.obstaclesMm2).toBe(0)
    expect(clearArea(inset)).toBe(20e6)
    expect(inset.warnings.map(({ code, walls }) => [code, walls])).toEqual([['obstacle-outside', [4, 5, 6, 7]]])
  })
})

describe('short walls', () => {
  test('a repeated corner is dropped, its wall keeps its number', () => {
    const outline: Point[] = [[0, 0], [5000, 0], [5000, 0], ...ROOM.slice(2)]
    const inset = solved({ outline, depthsMm: [100, 999, 150, 75, 50] })
    expect(clearArea(inset)).toBe(18_360_000)
    expect(inset.walls[1]).toEqual({ wall: 1, clearLengthMm: 0, swallowed: false, areaMm2: 0, sections: [] })
    expect(inset.warnings[0]?.walls).toEqual([1])
    expect(codes(inset)).toEqual(['repeated-point'])
  })

  test('a repeated closing corner is dropped with its depth', () => {
    const inset = solved({ outline: [...ROOM, [0, 0]], depthsMm: [100, 150, 75, 50, 999] })
    expect(clearArea(inset)).toBe(18_360_000)
    expect(inset.walls.length).toBe(4)
    expect(codes(inset)).toEqual([])
  })

  test('a wall too short for the grid is merged, one under 10 mm draws a warning', () => {
    const merged = solved({ outline: [...ROOM, [0, 0.001]], depthsMm: [0, 0, 0, 0, 0] })
    expect(codes(merged)).toEqual(['merged-edge'])
    const tiny = solved({ outline: [...ROOM, [0, 8]], depthsMm: [0, 0, 0, 0, 0] })
    expect(codes(tiny)).toEqual(['tiny-edge'])
    expect(tiny.warnings[0]?.message).toBe('Wall 5 is only 8 mm long (x 0 mm, y 8 mm). Check its corners.')
  })

  test('a tiny slanted wall with a thick lining is not turned by rounding', () => {
    const outline: Point[] = [
      [0, 0],
      [5000, 0],
      [5000, 3998.6],
      [4999.2, 4000],
      [0, 4000],
    ]
    const inset = solved({ outline, depthsMm: [0, 0, 500, 0, 0] })
    const strip = inset.strips.find((part) => part.wall === 2)
    // Square to the wall as drawn: its face lies 500 mm from it everywhere.
    const [ux, uy] = [-0.8 / Math.hypot(0.8, 1.4), 1.4 / Math.hypot(0.8, 1.4)]
    const depths = strip?.outline.map(([x, y]) => (x - 5000) * -uy + (y - 3998.6) * ux) ?? []
    expect(Math.abs(Math.max(...depths) - 500)).toBeLessThan(0.01)
  })
})

test('an obstacle over the whole room is told as that, not as lying outside it', () => {
  const over = {
    outline: [
      [-10, -10],
      [5010, -10],
      [5010, 4010],
      [-10, 4010],
    ] as const,
    depthsMm: [0, 0, 0, 0],
  }
  const inset = solved({ outline: ROOM, depthsMm: [0, 0, 0, 0], obstacles: [over] })
  expect(inset.warnings.map(({ message }) => message)).toEqual([
    'No clear floor is left: obstacles cover the whole room. Check their outlines.',
  ])
  expect(inset.obstaclesMm2).toBe(20_000_000)
})
