import { expect, test } from 'vitest'
import { difference } from '#geometry/clip.ts'
import { type InsetInput, insetOnGrid, insetRoom } from '#geometry/inset/insetRoom.ts'
import type { Point } from '#geometry/polygon.ts'
import { clearArea, frozen, lengthOf } from '../../support/geometryMeasures.ts'
import cases from './cases.json' with { type: 'json' }

/** Origin of every number here: closed forms derived by algebra, see the note in cases.json. */
interface Expected {
  readonly area?: number
  readonly strips?: readonly number[]
  readonly inner?: Readonly<Record<string, number>>
  readonly parts?: number
  readonly holes?: number
  readonly gained?: number
  readonly returns?: number
  readonly refuse?: string
}

/** Lengths of slanted faces move by a rounded corner at each end. */
const LENGTH_TOLERANCE_MM = 0.02

function points(ring: readonly (readonly (number | null)[])[]): Point[] {
  return ring.map(([x, y]): Point => [x ?? Number.NaN, y ?? Number.NaN])
}

test.each(cases.closedForm.map((item) => [`${item.id} ${item.name}`, item] as const))('%s', (_, item) => {
  const expected: Expected = item.expect
  const obstacles = item.obstacles.map(({ outline, depthsMm }) => ({ outline: points(outline), depthsMm }))
  const room: InsetInput = frozen({ outline: points(item.outline), depthsMm: item.depthsMm, obstacles })
  const result = insetRoom(room)
  if (!result.ok) {
    expect(result.error.code).toBe(expected.refuse)
    return
  }
  expect(expected.refuse).toBeUndefined()
  const inset = result.value
  const within = item.toleranceMm2
  const holes = inset.clear.reduce((sum, part) => sum + part.holes.length, 0)
  const returns = inset.edges.filter((edge) => edge.kind === 'return').reduce((sum, edge) => sum + lengthOf(edge), 0)
  expect(Math.abs(clearArea(inset) - (expected.area ?? Number.NaN))).toBeLessThanOrEqual(within)
  expected.strips?.forEach((area, wall) => {
    expect(Math.abs(inset.walls[wall]!.areaMm2 - area), `strip of wall ${wall}`).toBeLessThanOrEqual(within)
  })
  for (const [wall, length] of Object.entries(expected.inner ?? {})) {
    const own = inset.walls[Number(wall)]!
    expect(Math.abs(own.clearLengthMm - length), `length of wall ${wall}`).toBeLessThanOrEqual(LENGTH_TOLERANCE_MM)
    expect(own.swallowed).toBe(length === 0)
  }
  if (expected.parts !== undefined) expect(inset.clear.length).toBe(expected.parts)
  if (expected.holes !== undefined) expect(holes).toBe(expected.holes)
  if (expected.returns !== undefined) expect(returns).toBeCloseTo(expected.returns, 6)
  expect(Math.abs(inset.gainedMm2 - (expected.gained ?? 0))).toBeLessThanOrEqual(within)
  expect(inset.closureGridUnits2).toBe(0)
})

test('all 26 closed forms are here', () => {
  expect(cases.closedForm.length).toBe(26)
})

test.each([320, 64, 100, 128, 961])(
  'the room with three corners within 0.05 mm keeps its floor at %i steps/mm',
  (grid) => {
    const { outline, depthsMm, clearAreaMm2, toleranceMm2 } = cases.noding
    const answer = insetOnGrid({ outline: points(outline), depthsMm, obstacles: [] }, grid)
    if (!answer?.ok) throw new Error('the drawing contradicts itself')
    // Coarser grids round by more: half a step along the outline and the faces.
    const room = toleranceMm2 * Math.max(1, 320 / grid)
    expect(Math.abs(clearArea(answer.value) - clearAreaMm2)).toBeLessThanOrEqual(room)
  },
)

test('a difference that made a library search for ever returns, and its area is right', () => {
  const { operands, unitMm } = cases.unroundedHang
  const shapes = operands.map((ring) => ({
    outline: points(ring).map(([x, y]): Point => [x * unitMm, y * unitMm]),
    holes: [],
  }))
  const [first, ...rest] = shapes
  const left = difference([first!], rest)
  const bitByBit = rest.reduce((kept, shape) => difference(kept, [shape]), difference([first!], []))
  const area = (parts: typeof left): number => parts.reduce((sum, part) => sum + part.areaMm2, 0)
  expect(area(left)).toBeGreaterThan(0)
  expect(Math.abs(area(left) - area(bitByBit))).toBeLessThan(1)
})
