import { describe, expect, it } from 'vitest'
import { beforeVerb, headed, listed, named } from '#analysis/paths/names.ts'
import { aCurve, answerTo } from '../../../support/paths.ts'

describe('a name within a sentence', () => {
  it.each([
    ['Side door', 'the side door'],
    ['Vehicle door, infilled', 'the vehicle door, infilled'],
    ['Ceiling', 'the ceiling'],
    ['Wall 2', 'Wall 2'],
    ['Child’s bedroom', 'the child’s bedroom'],
    ["Neighbours' garden", "the neighbours' garden"],
    ['Anna’s room', 'Anna’s room'],
    ['The shed', 'the shed'],
    ['Door 3', 'Door 3'],
    ['What runs along the ceiling', 'what runs along the ceiling'],
    ['Laundry', 'the laundry'],
  ])('%s: %s', (name, text) => {
    expect(named(name)).toBe(text)
  })

  it('begins a sentence with a capital', () => {
    expect(headed('Side door')).toBe('The side door')
    expect(listed(['a', 'b', 'c'])).toBe('a, b and c')
    expect(beforeVerb('Bedroom window, not noticed')).toBe('the bedroom window, not noticed,')
    expect(beforeVerb('Bedroom')).toBe('the bedroom')
  })
})

describe('the weakest path', () => {
  const through = ['wall-1', 'wall-2', 'ceiling-1'].map((surface) => ({ surface }))
  const gap = { leaks: { 'wall-1': { gapMm: 5, holes: [] } } }
  const asked = (lossDb: number) =>
    answerTo({
      scheme: { id: 's', name: 'A', choices: {}, airtightness: 'sealed', ...gap },
      given: Object.fromEntries(through.map(({ surface }) => [surface, { lossDb: aCurve(lossDb) }])),
      receiver: { through },
    }).sentence

  it('lets all surfaces be lighter only where together they carry under a tenth', () => {
    expect(asked(60)).toBe(
      'The gap round Wall 1 carries over 99 % of what the bedroom hears at 4000 Hz; the walls and the ceiling could all be lighter.',
    )
    expect(asked(35)).toMatch(/^The gap round Wall 1 carries 8\d % of what the bedroom hears at 4000 Hz\.$/)
  })

  it('never says so where another octave would decide if the surfaces let through twice as much', () => {
    const bass = (lossDb: number) =>
      answerTo({
        scheme: {
          id: 's',
          name: 'A',
          choices: {},
          airtightness: 'sealed',
          leaks: { 'wall-1': { gapMm: 0.5, holes: [] } },
        },
        given: Object.fromEntries(
          through.map(({ surface }) => [surface, { lossDb: aCurve([lossDb, 60, 60, 60, 60, 60, 60]) }]),
        ),
        receiver: { through },
      }).sentence
    expect(bass(9)).toMatch(/carries 99 % .* at 4000 Hz; the walls and the ceiling could all be lighter\.$/)
    expect(bass(6)).toMatch(/carries 99 % .* at 4000 Hz\.$/)
  })

  it('never says so of surfaces that are the weakest themselves', () => {
    expect(asked(10)).toMatch(/^The ceiling carries/)
    expect(asked(10)).not.toMatch(/lighter/)
  })
})
