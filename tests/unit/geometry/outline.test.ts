import { expect, test } from 'vitest'
import * as outlines from '#geometry/outline.ts'
import type { Point } from '#geometry/polygon.ts'
import { frozen, rectangleRing } from '../../support/geometryMeasures.ts'
import { rotate } from '../../support/geometryRooms.ts'

const L: readonly Point[] = frozen([
  [0, 0],
  [6000, 0],
  [6000, 2500],
  [3000, 2500],
  [3000, 5000],
  [0, 5000],
])

test('area is signed by direction', () => {
  expect(outlines.outlineArea(L)).toBe(22_500_000)
  expect(outlines.outlineArea(L.toReversed())).toBe(-22_500_000)
  expect(outlines.isCounterClockwise(L)).toBe(true)
  expect(outlines.outlineArea([])).toBe(0)
})

test('area of a small room far from the origin keeps its digits', () => {
  const far = rectangleRing(1e9, 1e9, 1000, 1000)
  expect(outlines.outlineArea(far)).toBe(1e6)
})

test('edges, perimeter and box', () => {
  expect(outlines.outlineEdges(L).map((edge) => edge.lengthMm)).toEqual([6000, 2500, 3000, 2500, 3000, 5000])
  expect(outlines.perimeter(L)).toBe(22_000)
  expect(outlines.boundingBox(L)).toEqual({ minX: 0, minY: 0, maxX: 6000, maxY: 5000 })
  expect(outlines.boundingBox([])).toBeNull()
})

test('inside and outside', () => {
  expect(outlines.contains(L, [1000, 4000])).toBe(true)
  expect(outlines.contains(L, [4000, 4000])).toBe(false)
  expect(outlines.contains(L, [-1, 0])).toBe(false)
})

test('centroid of an L weighs its two halves', () => {
  // 6000 x 2500 about (3000, 1250) and 3000 x 2500 about (1500, 3750).
  expect(outlines.centroid(L)).toEqual([2500, (15e6 * 1250 + 7.5e6 * 3750) / 22.5e6])
  expect(outlines.centroid([])).toBeNull()
  expect(outlines.centroid([[2, 4]])).toEqual([2, 4])
})

test('the longest edge is the first of equals', () => {
  expect(outlines.longestEdge(L)?.index).toBe(0)
  expect(outlines.longestEdge(rectangleRing(0, 0, 5, 5))?.index).toBe(0)
  expect(outlines.longestEdge([])).toBeNull()
})

test('the box along the longest wall does not depend on how the room stands', () => {
  for (const angle of [0, 0.3, 2]) {
    const box = outlines.boxAlongLongestWall(rotate(rectangleRing(0, 0, 3512, 5950), angle))
    expect(box.alongMm).toBeCloseTo(5950, 6)
    expect(box.acrossMm).toBeCloseTo(3512, 6)
  }
  expect(outlines.boxAlongLongestWall([])).toEqual({ alongMm: 0, acrossMm: 0 })
})

test('the largest circle of a rectangle, an L and a triangle', () => {
  const radius = (outline: readonly Point[], holes: readonly (readonly Point[])[] = []): number =>
    outlines.largestCircle({ outline, holes }).radiusMm
  expect(radius(rectangleRing(0, 0, 4000, 9000))).toBeCloseTo(2000, 1)
  // Into the corner of the L: the circle touches the walls at 0 and the corner (3000, 2500).
  const corner = 5500 - Math.sqrt(2 * 3000 * 2500)
  expect(Math.abs(radius(L) - corner)).toBeLessThan(0.1)
  const [a, b, c] = [3000, 4000, 5000]
  const inCircle = (a * b) / (a + b + c)
  const triangle: Point[] = [
    [0, 0],
    [a, 0],
    [0, b],
  ]
  expect(Math.abs(radius(triangle) - inCircle)).toBeLessThan(0.1)
  // A column in the middle leaves the corridor between it and the wall: 1500 beside, and a little more in the corners.
  const hole = rectangleRing(1500, 1500, 1000, 1000).toReversed()
  const inCornerOfRing = 1500 * (2 - Math.SQRT2)
  expect(Math.abs(radius(rectangleRing(0, 0, 4000, 4000), [hole]) - inCornerOfRing)).toBeLessThan(0.1)
  expect(radius([])).toBe(0)
})
