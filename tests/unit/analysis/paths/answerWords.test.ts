import { expect, test } from 'vitest'
import {
  gainWords,
  heldWords,
  limitWords,
  marginInTable,
  marginWords,
  shareWords,
} from '#analysis/paths/answerWords.ts'

test('a margin is never rounded up, and its range never inward', () => {
  expect(marginWords(5.9)).toBe('+5 dB')
  expect(marginWords(-0.2)).toBe('−1 dB')
  expect(marginWords(0.4)).toBe('0 dB')
  expect(marginInTable({ marginDb: 5.2, marginLow95Db: -2.1, marginHigh95Db: 12.4 })).toBe('+5 dB, likely −3 to +13 dB')
})

test('what is not known is said, never told as 0', () => {
  expect(marginWords(null)).toBe('Not known')
  expect(marginInTable({ marginDb: null, marginLow95Db: null, marginHigh95Db: null })).toBe('Not known')
  expect(gainWords(null)).toBe('not known')
})

test('a share that is there is never nothing, and one that is not all never all', () => {
  expect(shareWords(0.0004)).toBe('under 0.1 %')
  expect(shareWords(0)).toBe('0.0 %')
  expect(shareWords(0.034)).toBe('3.4 %')
  expect(shareWords(0.712)).toBe('71 %')
  expect(shareWords(0.9996)).toBe('over 99 %')
  expect(shareWords(1)).toBe('100 %')
})

test('limits and gains read as the trade writes them', () => {
  expect(limitWords({ kind: 'NC', index: 25 })).toBe('NC-25')
  expect(limitWords({ kind: 'dBA', levelDb: 35.5 })).toBe('35.5 dBA')
  expect(heldWords({ limit: { kind: 'NC', index: 25 }, hasBeat: true })).toBe('NC-25 less 5 dB for beat')
  expect(heldWords({ limit: { kind: 'NC', index: 25 }, hasBeat: false })).toBe('NC-25')
  expect(gainWords(4.31)).toBe('+4.3 dB')
  expect(gainWords(-1)).toBe('−1 dB')
  expect(gainWords(0.01)).toBe('under 0.1 dB')
})
