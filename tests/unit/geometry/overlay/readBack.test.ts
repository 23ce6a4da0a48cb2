import { expect, test } from 'vitest'
import { combine, type GridRings } from '#geometry/overlay/boolean.ts'

const square = (x: number, y: number, size: number): number[] => [x, y, x + size, y, x + size, y + size, x, y + size]

function read(operation: 'union' | 'difference' | 'intersection', first: GridRings, second: GridRings) {
  const shapes = combine(operation, first, second)
  if (!shapes) throw new Error('contradiction')
  return shapes.map(({ outline, holes, doubledArea }) => ({
    corners: outline.length / 2,
    holes: holes.length,
    doubledArea,
  }))
}

test('a hole stays a hole', () => {
  expect(read('difference', [square(0, 0, 10)], [square(2, 2, 3)])).toEqual([
    { corners: 4, holes: 1, doubledArea: 182 },
  ])
})

test('a hole that touches the outline in a corner is parted from it', () => {
  const diamond = [0, 5, 3, 2, 6, 5, 3, 8]
  expect(read('difference', [square(0, 0, 10)], [diamond])).toEqual([{ corners: 4, holes: 1, doubledArea: 164 }])
})

test('two squares that touch in a corner are two shapes', () => {
  const touching = read('union', [square(0, 0, 10)], [square(10, 10, 10)])
  expect(touching).toEqual([
    { corners: 4, holes: 0, doubledArea: 200 },
    { corners: 4, holes: 0, doubledArea: 200 },
  ])
})

test('two squares that share half a side become one shape without the corner on the side', () => {
  expect(read('union', [square(0, 0, 10)], [square(10, 0, 10)])).toEqual([{ corners: 4, holes: 0, doubledArea: 400 }])
})

test('an island in a hole is a shape of its own', () => {
  const ring = read('difference', [square(0, 0, 30)], [square(5, 5, 20)])
  expect(ring).toEqual([{ corners: 4, holes: 1, doubledArea: 1000 }])
  const island = read('union', [square(0, 0, 30), [5, 5, 5, 25, 25, 25, 25, 5]], [square(10, 10, 5)])
  expect(island.map((shape) => shape.doubledArea).sort((a, b) => a - b)).toEqual([50, 1000])
})
