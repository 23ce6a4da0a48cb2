import { expect, test } from 'vitest'
import { areaOf, difference, intersection, union } from '#geometry/clip.ts'
import type { Point, Polygon } from '#geometry/polygon.ts'
import { frozen, rectangleRing, shoelace } from '../../support/geometryMeasures.ts'
import { randomFrom, randomRoom } from '../../support/geometryRooms.ts'

const box = (x: number, y: number, width: number, height: number) =>
  frozen({ outline: rectangleRing(x, y, width, height), holes: [] as Point[][] })

function checkPromises(shapes: readonly Polygon[]): void {
  for (const shape of shapes) {
    expect(shape.areaMm2).toBeGreaterThan(0)
    expect(shoelace(shape)).toBeCloseTo(shape.areaMm2, 4)
    expect(shoelace({ outline: shape.outline, holes: [] })).toBeGreaterThan(0)
    for (const hole of shape.holes) expect(shoelace({ outline: hole, holes: [] })).toBeLessThan(0)
    expect(shape.outline[0]).not.toEqual(shape.outline.at(-1))
  }
}

test('areas of boxes', () => {
  const [one, other] = [box(0, 0, 10, 10), box(5, 5, 10, 10)]
  expect(areaOf(union([one], [other]))).toBe(175)
  expect(areaOf(intersection([one], [other]))).toBe(25)
  expect(areaOf(difference([one], [other]))).toBe(75)
  expect(areaOf(union([one, other]))).toBe(175)
})

test('nothing in, nothing out', () => {
  const one = box(0, 0, 10, 10)
  expect(union()).toEqual([])
  expect(union([], [])).toEqual([])
  expect(difference([], [one])).toEqual([])
  expect(intersection([one], [])).toEqual([])
  expect(areaOf(difference([one], []))).toBe(100)
  expect(areaOf(union([], [one]))).toBe(100)
})

test('a hole, boxes side by side, boxes on each other', () => {
  const ring = difference([box(0, 0, 10, 10)], [box(2, 2, 3, 3)])
  expect(ring.map((shape) => shape.holes.length)).toEqual([1])
  checkPromises(ring)
  expect(areaOf(difference(ring, [box(0, 0, 5, 5)]))).toBe(75)
  expect(union([box(0, 0, 10, 10)], [box(10, 0, 10, 10)]).map((shape) => shape.outline.length)).toEqual([4])
  expect(difference([box(0, 0, 10, 10)], [box(0, 0, 10, 10)])).toEqual([])
})

test('a ring in the wrong direction, without area or with repeated corners does no harm', () => {
  const backward = { outline: rectangleRing(0, 0, 10, 10).toReversed(), holes: [rectangleRing(2, 2, 3, 3)] }
  expect(areaOf(union([backward]))).toBe(91)
  const line = { outline: [[0, 0] as Point, [5, 5] as Point, [9, 9] as Point], holes: [] }
  expect(areaOf(union([box(0, 0, 10, 10)], [line]))).toBe(100)
})

test('random rooms: the parts add up to the whole', () => {
  const random = randomFrom(3)
  for (let seed = 0; seed < 30; seed++) {
    const one = { outline: randomRoom('star', seed, { rotated: true }).outline, holes: [] }
    const moved = randomRoom('simple', seed).outline.map(([x, y]): Point => [x - 3000 * random(), y - 3000 * random()])
    const other = { outline: randomRoom('convex', seed).outline, holes: [] }
    for (const second of [other, { outline: seed % 2 ? moved.slice(0, 3) : other.outline, holes: [] }]) {
      const both = intersection([one], [second])
      const [onlyOne, onlyOther] = [difference([one], [second]), difference([second], [one])]
      const all = union([one], [second])
      for (const shapes of [both, onlyOne, onlyOther, all]) checkPromises(shapes)
      expect(Math.abs(areaOf(both) + areaOf(onlyOne) + areaOf(onlyOther) - areaOf(all))).toBeLessThan(200)
      expect(Math.abs(areaOf(both) + areaOf(onlyOne) - Math.abs(shoelace(one)))).toBeLessThan(200)
    }
  }
})
