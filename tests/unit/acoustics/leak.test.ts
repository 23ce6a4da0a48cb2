import { describe, expect, it } from 'vitest'
import { BANDS_HZ, bandIndex } from '#acoustics/bands.ts'
import { holeLoss, slitLoss } from '#acoustics/leak.ts'

describe('leaks', () => {
  it('let through all that meets them where they are wide against the wave', () => {
    expect(slitLoss({ widthMm: 300, depthMm: 100, place: 'middle' }).slice(bandIndex(200))).toEqual(
      BANDS_HZ.slice(bandIndex(200)).map(() => 0),
    )
    expect(holeLoss({ diameterMm: 500, depthMm: 100 }).at(-1)).toBe(0)
  })

  it('let through more along an edge than in the open', () => {
    const [edge, middle] = (['edge', 'middle'] as const).map((place) =>
      slitLoss({ widthMm: 1, depthMm: 100, place }).reduce((sum, loss) => sum + loss, 0),
    )
    expect(edge!).toBeLessThan(middle!)
  })

  it('have a width', () => {
    expect(() => slitLoss({ widthMm: 0, depthMm: 100, place: 'edge' })).toThrow(/open/)
    expect(() => holeLoss({ diameterMm: 0, depthMm: 100 })).toThrow(/open/)
  })
})
