import { describe, expect, it } from 'vitest'
import { A_WEIGHTS, C_WEIGHTS, weightedLevel } from '#acoustics/weighting.ts'

describe('weighting', () => {
  it('leaves out octaves of which nothing is known', () => {
    expect(weightedLevel([null, null, null, null, 50, null, null], A_WEIGHTS)).toBeCloseTo(50, 9)
    expect(weightedLevel([null, null, null, null, null, null, null], A_WEIGHTS)).toBeNull()
  })

  it('lets bass count in C and hardly in A', () => {
    const bass = [80, null, null, null, null, null, null]
    expect(weightedLevel(bass, C_WEIGHTS)! - weightedLevel(bass, A_WEIGHTS)!).toBeCloseTo(25.4, 1)
  })
})
