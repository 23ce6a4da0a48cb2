import { expect, test } from 'vitest'
import type { NextStep } from '#analysis/paths/nextSteps.ts'
import { sharedSentences, stepCosts, stepShort } from '#ui/panels/stepWords.ts'

const STEP: NextStep = {
  pathId: 'door-1',
  label: 'Hang a second sealed door in the lining',
  change: {},
  gainDb: 4.31,
  gainLow95Db: 3.08,
  areaLostM2: 0,
  heightLostMm: 0,
  addedMassKg: 0,
  cautions: [],
  minds: [],
}

test('a step says what it gains and takes in one line', () => {
  expect(stepShort(STEP, 'ft-in')).toBe('Hang a second sealed door in the lining: +4.3 dB, takes no floor')
  expect(stepShort({ ...STEP, areaLostM2: 0.54, heightLostMm: 36 }, 'mm')).toMatch(
    /: \+4\.3 dB, takes 0\.54 m² of floor, takes 36 mm of height$/,
  )
  expect(stepShort({ ...STEP, gainDb: 0.02, gainLow95Db: 3.9 }, 'mm')).toContain(
    ': under 0.1 dB, +3.9 dB at the lower end, takes no floor',
  )
  expect(stepShort({ ...STEP, areaLostM2: -0.76 }, 'mm')).toContain('gives back 0.76 m² of floor')
})

test('what it costs is told in both units, with the lower end of what it gains', () => {
  const costs = stepCosts({ ...STEP, areaLostM2: 0.54, heightLostMm: 36, addedMassKg: 54 }, 'ft-in')
  expect(costs).toContain('at the lower end of the range +3.1 dB')
  expect(costs).toContain('takes 5.8 ft² · 0.54 m² of floor')
  expect(costs).toContain('takes 1 7/16" · 36 mm of height')
  expect(costs).toContain('adds 119 lb · 54 kg')
})

test('a sentence of several steps stands once, and none is lost', () => {
  const first = { ...STEP, cautions: ['Fresh air.', 'Its own.'] }
  const second = { ...STEP, cautions: ['Fresh air.', 'Another.'] }
  const { shared, own } = sharedSentences([first, second], [])
  expect(shared).toEqual(['Fresh air.'])
  expect(own(first)).toEqual(['Its own.'])
  expect(own(second)).toEqual(['Another.'])
})

test('a sentence that stands in full already is not said again, nor the same one with another figure', () => {
  const first = { ...STEP, cautions: ['The floor 5.9 L/s more.', 'Its own.'] }
  const second = { ...STEP, cautions: ['The floor 6.0 L/s more.'] }
  expect(sharedSentences([first, second], []).shared).toEqual(['The floor 6.0 L/s more.'])
  const { shared, own } = sharedSentences([first, second], ['The floor 12 L/s more.'])
  expect(shared).toEqual([])
  expect(own(first)).toEqual(['Its own.'])
  expect(own(second)).toEqual([])
})
