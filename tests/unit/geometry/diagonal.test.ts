import { describe, expect, it } from 'vitest'
import { cornerFromDiagonal } from '#geometry/diagonal.ts'

describe('the corner a diagonal spans', () => {
  it('is square for 3-4-5', () => {
    const corner = cornerFromDiagonal(3000, 4000, 5000)
    expect(corner).toMatchObject({ angleDeg: expect.closeTo(90, 9), outOfSquareMm: expect.closeTo(0, 9) })
  })

  it('opens where the diagonal is longer and closes where it is shorter', () => {
    // A wall of 4000 that leans 100 mm out of the square line from one of 3000: its end stands at (-100, sqrt(4000^2 - 100^2)).
    const lean = Math.hypot(3000 + 100, Math.sqrt(4000 ** 2 - 100 ** 2))
    expect(cornerFromDiagonal(3000, 4000, lean)).toMatchObject({
      outOfSquareMm: expect.closeTo(100, 6),
      outOfSquareDeg: expect.closeTo((Math.asin(100 / 4000) * 180) / Math.PI, 9),
    })
    const closed = Math.hypot(3000 - 100, Math.sqrt(4000 ** 2 - 100 ** 2))
    expect(cornerFromDiagonal(3000, 4000, closed)).toMatchObject({ outOfSquareMm: expect.closeTo(-100, 6) })
  })

  it('is straight at most and shut at least', () => {
    expect(cornerFromDiagonal(3000, 4000, 7000)).toMatchObject({ angleDeg: 180 })
    expect(cornerFromDiagonal(3000, 4000, 1000)).toMatchObject({ angleDeg: 0 })
  })

  it('says which way three lengths fail to meet', () => {
    expect(cornerFromDiagonal(3000, 4000, 7001)).toBe('too-long')
    expect(cornerFromDiagonal(3000, 4000, 999)).toBe('too-short')
  })
})
