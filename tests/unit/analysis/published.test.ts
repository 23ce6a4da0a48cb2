import { describe, expect, it } from 'vitest'
import { publishedShort, publishedSources, publishedStc, publishedWords } from '#analysis/published.ts'
import type { PublishedValue } from '#assemblies/published/match.ts'

const value = (
  id: string,
  stc: number | null,
  status: 'seen' | 'memory',
  rw: number | null = null,
): PublishedValue => ({
  id,
  description: 'a wall',
  stc,
  rw,
  source: { text: `Table of ${id}`, status },
})

describe('a published value beside a prediction', () => {
  it('is the one that was read, before one from memory', () => {
    const values = [value('A', 50, 'memory'), value('B', 52, 'seen'), value('C', 53, 'seen')]
    expect(publishedStc(values)).toEqual({ stc: 52, source: 'Table of B; seen' })
    expect(publishedShort(values)).toBe('published 52 (B and 2 more)')
  })

  it('is none where the tables print no STC, but its Rw is told', () => {
    const rwOnly = [value('G', null, 'memory', 35)]
    expect(publishedStc(rwOnly)).toBeNull()
    expect(publishedWords(rwOnly)).toBe('published Rw 35 (Table of G; from memory, not read)')
  })

  it('never stands without its source', () => {
    expect(publishedWords([value('B', 52, 'seen')])).toBe('published 52 (Table of B; seen)')
    expect(publishedSources([[value('B', 52, 'seen')], [value('B', 52, 'seen')], []])).toEqual(['B: Table of B; seen'])
  })

  it('is said to be missing where it is', () => {
    expect(publishedStc([])).toBeNull()
    expect(publishedShort([])).toBeNull()
    expect(publishedWords([])).toBe('no published value for this build-up')
  })
})
