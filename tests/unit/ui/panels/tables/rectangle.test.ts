import { describe, expect, it } from 'vitest'
import { onRectangle, rectangleOf, squareAround } from '#ui/panels/bench/tables/rectangle.ts'

const corners = (...points: readonly (readonly [number, number])[]) => points.map(([xMm, yMm]) => ({ xMm, yMm }))

describe('a shape along the page', () => {
  it('is told by its lower left corner and its size, whichever corner comes first', () => {
    const beam = corners([7315, 2210], [0, 2210], [0, 2057], [7315, 2057])
    expect(rectangleOf(beam)).toEqual({ xMm: 0, yMm: 2057, widthMm: 7315, depthMm: 153 })
  })

  it('is none when it is turned, has another number of corners or crosses itself', () => {
    expect(rectangleOf(corners([0, 10], [10, 0], [20, 10], [10, 20]))).toBeNull()
    expect(rectangleOf(corners([0, 0], [10, 0], [0, 10]))).toBeNull()
    expect(rectangleOf(corners([0, 0], [10, 10], [10, 0], [0, 10]))).toBeNull()
  })

  it('takes a new size with its corners in the same order', () => {
    const beam = corners([10, 5], [0, 5], [0, 0], [10, 0])
    expect(onRectangle(beam, { xMm: 1, yMm: 2, widthMm: 20, depthMm: 30 })).toEqual(
      corners([21, 32], [1, 32], [1, 2], [21, 2]),
    )
  })

  it('stands round a middle', () => {
    expect(rectangleOf(squareAround([100, 200], 60))).toEqual({ xMm: 70, yMm: 170, widthMm: 60, depthMm: 60 })
  })
})
