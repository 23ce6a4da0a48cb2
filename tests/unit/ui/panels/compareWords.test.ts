import { expect, test } from 'vitest'
import { compareSchemes } from '#analysis/compare.ts'
import { costIndex } from '#analysis/cost.ts'
import { builtInCatalogue } from '#assemblies/catalogue.ts'
import { createResultsMemo } from '#state/results.ts'
import { differenceSentence, shareCautions } from '#ui/panels/bench/compareWords.ts'
import { invariant } from '#units/result.ts'
import { sampleProject } from './samples.ts'

const project = sampleProject('garage')
const results = createResultsMemo()

function resultOf(name: string) {
  const scheme = project.schemes.find((candidate) => candidate.name === name)
  invariant(scheme, `there is a scheme called ${name}`)
  const outcome = results(project, project.rooms[0]!, scheme)
  invariant(outcome.ok, 'a sample scheme can be computed')
  return { scheme, result: outcome.value }
}

const clips = resultOf('B clips')
const independent = resultOf('C independent room')

test('a difference is a sentence with both names', () => {
  const [diff] = compareSchemes(independent.result, [clips.result])
  expect(differenceSentence(independent.result, clips.result, diff!, 'ft-in')).toMatch(
    /^B clips keeps 14\.[67] ft² more than C independent room, and \d+ \d\/\d+" more height\.$/,
  )
})

test('no difference is said as such', () => {
  const [diff] = compareSchemes(clips.result, [clips.result])
  expect(differenceSentence(clips.result, clips.result, diff!, 'mm')).toBe(
    'B clips keeps as much floor and height as B clips.',
  )
})

test('cautions shared by all schemes are said once and none is lost', () => {
  const both = [clips.result, independent.result]
  const { all, own } = shareCautions(both)
  const said = new Set([...all, ...own.flatMap(({ cautions }) => cautions)].map(({ text }) => text))
  for (const { cautions } of both) for (const { text } of cautions) expect(said).toContain(text)
  expect(all.length).toBeGreaterThan(0)
})

test('a scheme that builds nothing has no cost', () => {
  const nothing = resultOf('A do nothing but close the door')
  expect(costIndex(nothing.result, nothing.scheme, builtInCatalogue())).toBe(0)
  expect(costIndex(clips.result, clips.scheme, builtInCatalogue())).toBeGreaterThan(0)
})
