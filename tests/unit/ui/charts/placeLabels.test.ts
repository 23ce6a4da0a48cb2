import fc from 'fast-check'
import { expect, test } from 'vitest'
import { textWidth } from '#drawing/text.ts'
import { type LabelWish, placeLabels } from '#ui/charts/placeLabels.ts'

const WITHIN = { x: 0, y: 0, width: 600, height: 200 }
const wish = fc.record({
  text: fc.constantFrom('one board', 'clips + 2 boards', 'own 2x4 studs, small gap'),
  x: fc.integer({ min: 0, max: 600 }),
  y: fc.integer({ min: 0, max: 200 }),
})

test('labels keep off each other and off what is taken', () => {
  fc.assert(
    fc.property(fc.array(wish, { maxLength: 25 }), (wishes) => {
      const named: LabelWish[] = wishes.map((entry, index) => ({ ...entry, id: String(index), radius: 5 }))
      const taken = [{ x: 250, y: 80, width: 60, height: 30 }]
      const boxes = placeLabels(named, { size: 13, within: WITHIN, taken }).map(({ text, x, y, anchor }) => {
        const width = textWidth(text, 13, 400)
        const left = anchor === 'start' ? x : anchor === 'end' ? x - width : x - width / 2
        return { left, right: left + width, top: y - 10, bottom: y + 3 }
      })
      const all = [...boxes, { left: 250, right: 310, top: 80, bottom: 110 }]
      for (const [i, a] of all.entries()) {
        for (const b of all.slice(i + 1)) {
          const apart = a.right <= b.left || b.right <= a.left || a.bottom <= b.top || b.bottom <= a.top
          expect(apart).toBe(true)
        }
      }
    }),
  )
})

test('who comes first is placed first', () => {
  const same = { text: 'clips + 2 boards', x: 300, y: 100, radius: 5 }
  const tight = { ...WITHIN, x: 290, width: 140, y: 92, height: 18 }
  const placed = placeLabels(
    [
      { ...same, id: 'chosen' },
      { ...same, id: 'other' },
    ],
    {
      size: 13,
      within: tight,
      taken: [],
    },
  )
  expect(placed.map(({ id }) => id)).toEqual(['chosen'])
})
