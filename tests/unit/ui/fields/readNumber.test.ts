import { expect, test } from 'vitest'
import { readNumber } from '#ui/fields/NumberField.tsx'

test('a number is read with point or comma, and anything else is refused with a sentence', () => {
  expect(readNumber('12,5', 0)).toEqual({ ok: true, value: 12.5 })
  expect(readNumber('', undefined)).toEqual({ ok: false, error: '"" is not a number: write it like 12 or 12.5.' })
  expect(readNumber('-1', 0)).toEqual({ ok: false, error: 'It cannot be less than 0.' })
})
