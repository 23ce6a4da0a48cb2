import { expect, test } from 'vitest'
import { gridAround, STEPS_PER_MM, stepsX, stepsY, toMm2, toPoint } from '#geometry/grid.ts'

test('tenths of a millimetre and sixty-fourths of an inch are whole steps', () => {
  const grid = { stepsPerMm: STEPS_PER_MM, originXMm: 0, originYMm: 0 }
  expect(stepsX(grid, 0.1)).toBe(32)
  expect(stepsX(grid, 25.4 / 64)).toBeCloseTo(127, 9)
  expect(stepsY(grid, 41.275)).toBeCloseTo(13_208, 9)
})

test('whole millimetres come back as they were, wherever the room lies', () => {
  const grid = gridAround(
    [
      [1_000_003, -77],
      [1_004_000, 4001],
    ],
    STEPS_PER_MM,
  )
  expect(toPoint(grid, Math.round(stepsX(grid, 1_000_003)), Math.round(stepsY(grid, 4001)))).toEqual([1_000_003, 4001])
  expect(Math.abs(stepsX(grid, 1_004_000))).toBeLessThan(2001 * STEPS_PER_MM)
})

test('half a square step is 1/204800 mm2', () => {
  expect(toMm2(gridAround([], STEPS_PER_MM), 1)).toBe(1 / 204_800)
})
