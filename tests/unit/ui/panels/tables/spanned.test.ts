import { describe, expect, it } from 'vitest'
import { diagonalFacts, spannedWords } from '#ui/panels/bench/outline/spanned.ts'
import { sampleProject } from '../samples.ts'

const room = sampleProject('garage').rooms[0]!
const [first, second, third, fourth] = room.corners.map(({ id }) => id)

describe('a measured diagonal', () => {
  it('is set beside the drawn one and spans the two corners between its ends', () => {
    // The garage is 3657.6 by 6096 mm and drawn square: its diagonal is the root of the sum of squares.
    const facts = diagonalFacts(room, { from: first!, to: third!, measuredMm: 7120 })
    expect(facts?.drawnMm).toBeCloseTo(Math.hypot(3657.6, 6096), 6)
    expect(facts?.differenceMm).toBeCloseTo(7120 - Math.hypot(3657.6, 6096), 6)
    expect(facts?.corners.map(({ number }) => number)).toEqual([2, 4])
  })

  it('along one wall spans no corner of two known walls but itself a wall', () => {
    expect(diagonalFacts(room, { from: first!, to: second!, measuredMm: 3657.6 })?.corners).toEqual([])
    expect(diagonalFacts(room, { from: fourth!, to: 'gone', measuredMm: 3657.6 })).toBeNull()
  })

  it('is told in words: square, open, closed in, impossible', () => {
    const words = (measuredMm: number) =>
      diagonalFacts(room, { from: first!, to: third!, measuredMm })!.corners.map(({ number, is }) =>
        spannedWords(number, is, 'mm'),
      )
    expect(words(Math.hypot(3657.6, 6096))[0]).toBe('Corner 2 measures 90.00°: square.')
    expect(words(7120)[0]).toMatch(
      /^Corner 2 measures 90\.\d\d°: out of square by 0\.\d\d°, \d+(\.\d)? mm open at the far end of the wall\.$/,
    )
    expect(words(7100)[0]).toMatch(/closed in at the far end/)
    expect(words(9800)[0]).toMatch(/longer than both walls in one line/)
    expect(words(2000)[0]).toMatch(/shorter than the two walls leave/)
  })
})
