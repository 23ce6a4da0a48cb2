import { describe, expect, it } from 'vitest'
import { bandIndex } from '#acoustics/bands.ts'
import { octaveLoss } from '#acoustics/curve.ts'
import { bendLoss, ductLoss, endReflectionLoss } from '#acoustics/duct.ts'
import { liningLoss } from '#acoustics/lining.ts'
import { thirdsOfOctaves } from '#acoustics/octaves.ts'

describe('ducts', () => {
  const bare = {
    perimeterMm: 800,
    areaM2: 0.04,
    lengthM: 3,
    liningMm: 0,
    linedLengthM: 3,
    bends: 0,
    silencerDb: [],
    end: 'flush',
  } as const

  it('have nothing but their end and their sheet when bare', () => {
    const end = endReflectionLoss(0.04, 'flush')
    ductLoss(bare).forEach((loss, band) => {
      expect(loss).toBeCloseTo(end[band]! + 0.3, 9)
    })
  })

  it('count no more lining than they are long', () => {
    const lined = { ...bare, liningMm: 50 }
    expect(ductLoss({ ...lined, linedLengthM: 9 })).toEqual(ductLoss({ ...lined, linedLengthM: 3 }))
  })

  it('count nothing where a silencer says nothing', () => {
    const silenced = ductLoss({ ...bare, silencerDb: [null, 10, null, null, null, null, null] })
    const gained = silenced.map((loss, band) => loss - ductLoss(bare)[band]!)
    expect(gained[bandIndex(63)]).toBeCloseTo(0, 9)
    expect(gained[bandIndex(125)]).toBeCloseTo(10, 9)
  })

  it('gain more from a lined bend than from a bare one, and nothing at 63 Hz', () => {
    expect(octaveLoss(bendLoss(2, true))).toEqual(octaveLoss(thirdsOfOctaves([0, 2, 4, 8, 12, 12, 12])))
    expect(bendLoss(2, false)[bandIndex(63)]).toBe(0)
  })

  it('take no straight run for more than 40 dB', () => {
    expect(Math.max(...liningLoss({ perimeterMm: 400, areaM2: 0.01, liningMm: 100, lengthM: 30 }))).toBe(40)
  })

  it('reflect at least as much at a free end as at a flush one', () => {
    const flush = endReflectionLoss(0.02, 'flush')
    endReflectionLoss(0.02, 'free').forEach((loss, band) => {
      expect(loss).toBeGreaterThanOrEqual(flush[band]!)
    })
  })
})
