import { describe, expect, it } from 'vitest'
import { bandIndex } from '#acoustics/bands.ts'
import { flatCurve } from '#acoustics/curve.ts'
import { lobbyAbsorption, pairLoss } from '#acoustics/pair.ts'

describe('two leaves', () => {
  const leaf = flatCurve(30)
  const room = { areaM2: 2, gapMm: 1200, absorptionM2: 2 }

  it('add up where the room between absorbs as much as a leaf is large', () => {
    expect(pairLoss(leaf, leaf, room).at(-1)).toBeCloseTo(60, 9)
  })

  it('are worth what a spring of air leaves of them where it is shallow', () => {
    const pair = pairLoss(leaf, leaf, { ...room, gapMm: 100 })
    // 100 Hz exact, d 0.1 m: 20 lg 10 - 29.
    expect(pair[bandIndex(100)]).toBeCloseTo(51, 6)
  })

  it('are the better one alone at least', () => {
    const pair = pairLoss(flatCurve(40), flatCurve(5), { ...room, gapMm: 20 })
    expect(pair[0]).toBe(40)
  })

  it('absorb more between them with a lined reveal', () => {
    const lobby = { areaM2: 2, perimeterMm: 6000, gapMm: 300 }
    const [hard, lined] = [false, true].map((isLined) => lobbyAbsorption({ ...lobby, isLined }))
    expect(hard![bandIndex(1000)]).toBeCloseTo(0.29, 9)
    expect(lined![bandIndex(1000)]).toBeCloseTo(1.64, 9)
  })
})
