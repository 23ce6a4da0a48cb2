import { describe, expect, it } from 'vitest'
import { narrowestWidth } from '#geometry/narrowest.ts'
import type { Point, Ring } from '#geometry/polygon.ts'

const widthOf = (outline: Ring, holes: readonly Ring[] = []) => narrowestWidth({ outline, holes })?.widthMm

const box = (x0: number, y0: number, x1: number, y1: number): Ring => [
  [x0, y0],
  [x1, y0],
  [x1, y1],
  [x0, y1],
]

describe('the narrowest clear width', () => {
  it('is the short side of a rectangle, across its middle', () => {
    const found = narrowestWidth({ outline: box(0, 0, 5000, 3000), holes: [] })
    expect(found).toMatchObject({ widthMm: 3000, from: [2500, 0], to: [2500, 3000] })
  })

  it('is the side of a square', () => {
    expect(widthOf(box(0, 0, 3000, 3000))).toBe(3000)
  })

  it('is the narrow leg of an L', () => {
    const L: Ring = [
      [0, 0],
      [6000, 0],
      [6000, 2000],
      [2500, 2000],
      [2500, 5000],
      [0, 5000],
    ]
    expect(widthOf(L)).toBe(2000)
  })

  it('is a neck between two piers that stand across from each other', () => {
    const neck: Ring = [
      [0, 0],
      [2400, 0],
      [2400, 200],
      [2600, 200],
      [2600, 0],
      [5000, 0],
      [5000, 3000],
      [2600, 3000],
      [2600, 2700],
      [2400, 2700],
      [2400, 3000],
      [0, 3000],
    ]
    expect(widthOf(neck)).toBe(2500)
  })

  it('runs from corner to corner where piers are offset', () => {
    const offset: Ring = [
      [0, 0],
      [2000, 0],
      [2000, 1400],
      [2200, 1400],
      [2200, 0],
      [5000, 0],
      [5000, 3000],
      [2800, 3000],
      [2800, 1800],
      [2600, 1800],
      [2600, 3000],
      [0, 3000],
    ]
    expect(widthOf(offset)).toBeCloseTo(Math.hypot(400, 400), 6)
  })

  it('passes a column on its narrow side', () => {
    const column = [...box(3800, 1000, 4100, 1300)].reverse() as Point[]
    expect(widthOf(box(0, 0, 5000, 3000), [column])).toBe(900)
  })

  it('does not take a shallow niche for a width', () => {
    const niche: Ring = [
      [0, 0],
      [5000, 0],
      [5000, 3000],
      [3000, 3000],
      [3000, 3100],
      [2000, 3100],
      [2000, 3000],
      [0, 3000],
    ]
    expect(widthOf(niche)).toBe(3000)
  })

  it('is the least height of a triangle', () => {
    const triangle: Ring = [
      [0, 0],
      [4000, 0],
      [0, 3000],
    ]
    expect(widthOf(triangle)).toBeCloseTo(2400, 6)
  })

  it('does not take a cut-off corner for a width', () => {
    const cut: Ring = [
      [0, 0],
      [4900, 0],
      [5000, 100],
      [5000, 3000],
      [0, 3000],
    ]
    expect(widthOf(cut)).toBe(3000)
  })

  it('is null without a shape', () => {
    expect(narrowestWidth({ outline: [], holes: [] })).toBeNull()
  })
})
