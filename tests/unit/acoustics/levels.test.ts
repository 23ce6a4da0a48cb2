import { describe, expect, it } from 'vitest'
import { absorptionArea, energySum, isFarEnough, outdoorTerm, roomTerm } from '#acoustics/levels.ts'

describe('levels', () => {
  it('take the absorption from volume and reverberation', () => {
    expect(absorptionArea(50, 0.5)).toBeCloseTo(16.1, 9)
  })

  it('refuse a room that absorbs nothing, a surface without area and a distance of 0', () => {
    expect(() => absorptionArea(50, 0)).toThrow(/reverberation/)
    expect(() => roomTerm(10, 0)).toThrow(/absorbs/)
    expect(() => outdoorTerm(10, 0)).toThrow(/distance/)
    expect(() => outdoorTerm(0, 1000)).toThrow(/area/)
  })

  it('fall by 6 dB for twice the distance and rise by 3 for twice the area', () => {
    expect(outdoorTerm(10, 20_000) - outdoorTerm(10, 10_000)).toBeCloseTo(-6.02, 2)
    expect(outdoorTerm(20, 10_000) - outdoorTerm(10, 10_000)).toBeCloseTo(3.01, 2)
  })

  it('say from where a surface may be taken for a point', () => {
    expect(isFarEnough(16, 6100)).toBe(true)
    expect(isFarEnough(16, 6000)).toBe(false)
  })

  it('add by energy; of nothing comes no sound', () => {
    expect(energySum([60, 60])).toBeCloseTo(63.01, 2)
    expect(energySum([])).toBe(Number.NEGATIVE_INFINITY)
  })
})
