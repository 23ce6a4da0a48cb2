import { analyseScheme } from '#analysis/analyse.ts'
import type { AnswerInput } from '#analysis/paths/answerReceivers.ts'
import { marginWith } from '#analysis/paths/next/margins.ts'
import { nextSteps } from '#analysis/paths/nextSteps.ts'
import { assembliesFor } from '#assemblies/catalogue.ts'
import { CATALOGUE, openSample } from '../support/samples.ts'
import { type BenchRow, median } from './scheme.bench.ts'

const RUNS = 21

/** What could be done next in the garage, and one wall's marks on the ruler by the margin. */
export function benchSteps(): readonly BenchRow[] {
  const bare = inputFor('scheme-1')
  const [receiver] = bare.receivers
  if (!receiver) throw new Error('no receiver')
  const first = timed(() => nextSteps(bare, receiver.id))
  const again = Array.from({ length: RUNS }, () => timed(() => nextSteps(bare, receiver.id)))
  const ids = assembliesFor('wall', 'wood-frame', CATALOGUE).map(({ id }) => id)
  const marks = () => {
    for (const assembly of ids) marginWith(bare, receiver, { choices: { 'wall-2': { assembly, removeLining: false } } })
  }
  return [
    { name: 'next steps in the bare garage, the first time', medianMs: first, goalMs: 150, note: 'one run' },
    { name: 'the same again', medianMs: median(again), goalMs: null },
    {
      name: 'margins of all assemblies on one wall, once described',
      medianMs: median(Array.from({ length: RUNS }, () => timed(marks))),
      goalMs: 30,
      note: `${ids.length} assemblies`,
    },
  ]
}

function inputFor(schemeId: string): AnswerInput {
  const project = openSample('garage')
  const room = project.rooms[0]
  const scheme = project.schemes.find(({ id }) => id === schemeId)
  if (!room || !scheme) throw new Error(`no scheme ${schemeId}`)
  const analysed = analyseScheme({ room, scheme, catalogue: CATALOGUE, quality: 'plot' })
  if (!analysed.ok) throw new Error(analysed.error.message)
  const { sources, receivers } = project
  return { room, scheme, result: analysed.value, sources, receivers, catalogue: CATALOGUE }
}

function timed(work: () => unknown): number {
  const started = performance.now()
  work()
  return performance.now() - started
}
