import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Box } from '#drawing/model.ts'
import { boxesMeet, createPlacer } from '#drawing/place.ts'
import { insideTest, isInside } from '#drawing/plan/rings.ts'

const coordinate = fc.integer({ min: -300, max: 300 })
const size = fc.integer({ min: 1, max: 90 })
const box: fc.Arbitrary<Box> = fc.record({ x: coordinate, y: coordinate, width: size, height: size })
const VIEW: Box = { x: -250, y: -250, width: 500, height: 500 }

function within({ x, y, width, height }: Box): boolean {
  return x >= VIEW.x && y >= VIEW.y && x + width <= VIEW.x + VIEW.width && y + height <= VIEW.y + VIEW.height
}

describe('what is taken on a drawing', () => {
  it('is found again whatever the size of the cells, with a bound and without', () => {
    fc.assert(
      fc.property(fc.array(box, { maxLength: 30 }), box, fc.integer({ min: 3, max: 200 }), (taken, asked, cell) => {
        const isFree = !taken.some((other) => boxesMeet(other, asked))
        const open = createPlacer(cell)
        const bounded = createPlacer(cell, VIEW)
        for (const other of taken) for (const placer of [open, bounded]) placer.take(other)
        expect(open.isFree(asked)).toBe(isFree)
        expect(bounded.isFree(asked)).toBe(isFree && within(asked))
      }),
      { seed: 4 },
    )
  })

  it('holds a slanting line all along, however far it runs beyond the view', () => {
    const placer = createPlacer(20, VIEW)
    placer.takeLine(-1e6, -1e6, 1e6, 1e6)
    for (let at = -240; at <= 220; at += 10) {
      expect(placer.isFree({ x: at, y: at, width: 8, height: 8 })).toBe(false)
      expect(placer.isFree({ x: at, y: at > 0 ? at - 30 : at + 30, width: 8, height: 8 })).toBe(true)
    }
  })

  it('lets a symbol stand over a thin line, and a line pass labels by', () => {
    const placer = createPlacer(20)
    placer.takeLine(0, 0, 100, 40, true)
    const asked = { x: 40, y: 10, width: 20, height: 20 }
    expect([placer.isFree(asked), placer.isFree(asked, true)]).toEqual([false, true])
    placer.take(asked)
    expect(placer.isFreeLine([50, -50], [50, 90], 1)).toBe(false)
    expect(placer.isFreeLine([70, -50], [70, 90], 1)).toBe(true)
  })

  it('keeps a trial to itself', () => {
    const placer = createPlacer(20)
    const taken = { x: 0, y: 0, width: 10, height: 10 }
    placer.take(taken)
    const trial = placer.trial()
    const other = { x: 50, y: 50, width: 10, height: 10 }
    expect(trial.placeFirst([{ boxes: [taken] }, { boxes: [other] }])).toEqual({ boxes: [other] })
    expect([trial.isFree(other), placer.isFree(other)]).toEqual([false, true])
  })

  it('asks whether a candidate fits before taking it', () => {
    const placer = createPlacer(20)
    const [first, second] = [
      { x: 0, y: 0, width: 5, height: 5 },
      { x: 9, y: 9, width: 5, height: 5 },
    ]
    const found = placer.placeFirst([{ boxes: [first] }, { boxes: [second] }], ({ boxes }) => boxes[0] === second)
    expect(found?.boxes).toEqual([second])
    expect(placer.isFree(first)).toBe(true)
  })
})

describe('a ring asked again and again', () => {
  it('answers as asked once', () => {
    const place = fc.tuple(coordinate, coordinate)
    fc.assert(
      fc.property(fc.array(place, { minLength: 3, maxLength: 25 }), place, (ring, at) => {
        expect(insideTest(ring)(at)).toBe(isInside(ring, at))
      }),
      { seed: 5 },
    )
  })
})
