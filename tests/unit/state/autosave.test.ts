import { describe, expect, it } from 'vitest'
import { newestReadable } from '#state/autosave.ts'
import { fail, ok } from '#units/result.ts'

const read = (text: string) => (text.startsWith('good') ? ok(text) : fail({ message: `${text} is no project` }))

describe('versions kept on this machine', () => {
  it('the newest that can be read is opened, and those that cannot are told', () => {
    const versions = ['too new', 'broken', 'good 2', 'good 1'].map((text, i) => ({ text, savedAt: 4000 - i }))
    const found = newestReadable(versions, read)
    expect(found).toEqual({
      value: 'good 2',
      at: new Date(3998),
      refused: ['too new is no project', 'broken is no project'],
    })
  })

  it('none at all is no obstacle', () => {
    expect(newestReadable([], read)).toEqual({ refused: [] })
    expect(newestReadable([{ text: 'broken', savedAt: 1 }], read)).toEqual({ refused: ['broken is no project'] })
  })
})
