import { describe, expect, it } from 'vitest'
import { between } from '#acoustics/between.ts'
import { octaveLoss } from '#acoustics/curve.ts'
import { thirdsOfOctaves } from '#acoustics/octaves.ts'

describe('tables', () => {
  it('are read straight between their points and held beyond them', () => {
    expect([0, 1, 1.5, 2, 3].map((x) => between(x, [1, 2], [10, 20]))).toEqual([10, 10, 15, 20, 20])
  })

  it('by octave read back the same from thirds', () => {
    const octaves = [1, 2, 3, 4, 5, 6, 7]
    octaveLoss(thirdsOfOctaves(octaves)).forEach((loss, octave) => {
      expect(loss).toBeCloseTo(octaves[octave]!, 9)
    })
  })
})
