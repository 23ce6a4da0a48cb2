import { expect, test } from 'vitest'
import { firstAnswer, type Inset, type InsetInput, type InsetRefusal, insetRoom } from '#geometry/inset/insetRoom.ts'
import { validateOutline } from '#geometry/inset/validate.ts'
import type { Point } from '#geometry/polygon.ts'
import { ok } from '#units/result.ts'
import { frozen, rectangleRing } from '../../../support/geometryMeasures.ts'

function refused(
  outline: readonly Point[],
  depthsMm: readonly number[],
  obstacles: InsetInput['obstacles'] = [],
): InsetRefusal {
  const answer = insetRoom(frozen({ outline, depthsMm, obstacles }))
  if (answer.ok) throw new Error('not refused')
  return answer.error
}

const ROOM = rectangleRing(0, 0, 5000, 4000)
const zeros = (n: number): number[] => new Array<number>(n).fill(0)

const BOW_TIE: Point[] = [
  [0, 0],
  [1000, 1000],
  [1000, 0],
  [0, 1000],
]
const FOLD: Point[] = [
  [0, 0],
  [1000, 0],
  [2000, 0],
  [1000, 0],
  [1000, 1000],
  [0, 1000],
]
const TOUCHING: Point[] = [
  [0, 0],
  [4000, 0],
  [4000, 3000],
  [2000, 0],
  [0, 3000],
]
const ON_A_LINE: Point[] = [
  [0, 0],
  [1000, 500],
  [2000, 1000],
]

test.each([
  ['bow-tie', BOW_TIE, 'self-intersection', [0, 2], /^Wall 1 and Wall 3 cross or touch near x 500 mm, y 500 mm\. /],
  [
    'corner on a wall',
    TOUCHING,
    'self-intersection',
    [0, 2],
    /^Wall 1 and Wall 3 cross or touch near x 2000 mm, y 0 mm/,
  ],
  ['fold-back', FOLD, 'spike', [1, 2], /^Wall 3 runs back along Wall 2 from x 2000 mm, y 0 mm\. /],
  ['line', ON_A_LINE, 'no-area', [0, 1, 2], /lie on one line/],
  ['two corners', ROOM.slice(0, 2), 'too-few-corners', [0, 1], /fewer than three different corners/],
  ['nothing', [], 'too-few-corners', [], /fewer than three/],
  ['not a number', [...ROOM.slice(0, 3), [0, Number.NaN]], 'not-finite', [3], /first corner of Wall 4 is not a place/],
  ['endless', [...ROOM.slice(0, 3), [Infinity, 0]], 'not-finite', [3], /Wall 4/],
  ['kilometres', rectangleRing(0, 0, 70_000, 4000), 'too-large', [], /more than 60 m across/],
] as const)('%s is refused in words', (_, outline, code, walls, message) => {
  const points = outline as readonly Point[]
  const refusal = refused(points, zeros(points.length))
  expect(refusal).toMatchObject({ code, walls })
  expect(refusal.message).toMatch(message)
  expect(refusal.message).toMatch(/\.$/)
  expect(validateOutline(points)).toEqual(refusal)
})

test('a fold-back one step wide on the grid is refused like an exact one', () => {
  const needle: Point[] = [...FOLD.slice(0, 3), [1000, 0.0001], ...FOLD.slice(4)]
  expect(refused(needle, zeros(6)).code).toBe('spike')
})

test('a good outline is valid, in either direction and with a repeated corner', () => {
  expect(validateOutline(ROOM)).toBeNull()
  expect(validateOutline(ROOM.toReversed())).toBeNull()
  expect(validateOutline([...ROOM, [0, 0]])).toBeNull()
})

test('depths: one for each wall, each a number, none absurd', () => {
  expect(refused(ROOM, [1, 2, 3])).toMatchObject({ code: 'wrong-depth-count', walls: [] })
  expect(refused(ROOM, [1, 2, Number.NaN, 4])).toMatchObject({ code: 'not-finite', walls: [2] })
  expect(refused(ROOM, [1, 20_000, 3, 4])).toMatchObject({ code: 'too-large', walls: [1] })
})

test('a bad obstacle is refused with its own wall numbers', () => {
  const obstacle = { outline: BOW_TIE, depthsMm: zeros(4) }
  expect(refused(ROOM, zeros(4), [obstacle])).toMatchObject({ code: 'self-intersection', walls: [4, 6] })
  expect(refused(ROOM, zeros(4), [{ outline: BOW_TIE, depthsMm: [1] }]).code).toBe('wrong-depth-count')
})

test('a wall that would vanish, and walls that would meet, by moving outward', () => {
  const notch: Point[] = [
    [0, 0],
    [2000, 0],
    [2000, 30],
    [2050, 30],
    [2050, 0],
    [5000, 0],
    [5000, 4000],
    [0, 4000],
  ]
  const vanishing = refused(notch, [0, -40, 0, -40, 0, 0, 0, 0])
  expect(vanishing.code === 'strip-collapses' || vanishing.code === 'strip-collides').toBe(true)
  const jog: Point[] = [[0, 0], [3000, 0], [3000, 20], [5000, 20], ...ROOM.slice(2)]
  expect(refused(jog, [0, 0, -50, 0, 0, 0])).toMatchObject({ code: 'strip-collapses', walls: [1] })
  const legs: Point[] = [
    [0, 0],
    [5000, 0],
    [5000, 4000],
    [2550, 4000],
    [2550, 1500],
    [2500, 1500],
    [2500, 4000],
    [0, 4000],
  ]
  const meeting = refused(legs, [0, 0, 0, -60, 0, 0, 0, 0])
  expect(meeting.code === 'strip-collapses' || meeting.code === 'strip-collides').toBe(true)
  expect(meeting.message).toMatch(/Wall \d/)
})

test('a grid that contradicts itself is left for the next one, and all of them for a refusal', () => {
  const tried: number[] = []
  const answer = { clear: [] } as unknown as Inset
  const second = firstAnswer([320, 640, 321], (steps) => {
    tried.push(steps)
    return steps === 640 ? ok(answer) : null
  })
  expect(tried).toEqual([320, 640])
  expect(second).toEqual({ ok: true, value: answer })
  const none = firstAnswer([320, 640], () => null)
  expect(none.ok ? null : none.error.code).toBe('engine')
})
