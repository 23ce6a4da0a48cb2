import { describe, expect, test } from 'vitest'
import { listOf, schemeTitle, signed, stcWords } from '#ui/panels/words.ts'
import { formatArea } from '#units/format.ts'

describe('words about ratings', () => {
  test('an STC never stands without its likely range, and an unknown one is said to be', () => {
    expect(stcWords({ stc: 52, likely: [47, 57] })).toBe('STC 52, likely 47-57')
    expect(stcWords(null)).toBe('not rated')
  })
})

describe('words about surfaces and changes', () => {
  test('runs of walls are closed up', () => {
    expect(listOf(['Wall 1', 'Wall 2', 'Wall 3', 'Ceiling'])).toBe('Walls 1-3 and Ceiling')
    expect(listOf(['Wall 1', 'Wall 3', 'Floor'])).toBe('Wall 1, Wall 3 and Floor')
    expect(listOf(['Wall 2', 'Wall 3'])).toBe('Wall 2 and Wall 3')
    expect(listOf([])).toBe('')
  })

  test('a change too small to show is none', () => {
    const text = (size: number) => formatArea(size, 'mm')
    expect(signed(0.0001, text)).toBeNull()
    expect(signed(-1.5, text)).toBe('−1.50 m²')
    expect(signed(1.5, text)).toBe('+1.50 m²')
  })

  test('a scheme whose name begins with a letter keeps that one', () => {
    expect(schemeTitle('B2 clips, low-profile ceiling', 'C')).toBe('B2 clips, low-profile ceiling')
    expect(schemeTitle('as it stands', 'A')).toBe('A as it stands')
  })
})
