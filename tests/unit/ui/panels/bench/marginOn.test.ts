import { describe, expect, test } from 'vitest'
import { analyseScheme } from '#analysis/analyse.ts'
import { type AnswerInput, answerReceivers } from '#analysis/paths/answerReceivers.ts'
import { withChange } from '#analysis/scheme.ts'
import { benchSurfaces, candidatesFor, sharedAssemblies } from '#ui/panels/bench/candidates.ts'
import { marginOn } from '#ui/panels/bench/marginOn.ts'
import { type Asked, anInput, HALL } from '../../../../support/paths.ts'
import { CATALOGUE } from '../../../../support/samples.ts'

const surfaces = benchSurfaces(HALL)

function plotted(asked: Asked): AnswerInput {
  const input = anInput(asked)
  const analysed = analyseScheme({ ...input, quality: 'plot' })
  if (!analysed.ok) throw new Error(analysed.error.message)
  return { ...input, result: analysed.value }
}

function marginsOn(id: string, asked: Asked = {}) {
  const input = plotted(asked)
  const [answer] = answerReceivers(input)
  const shown = surfaces.filter(({ facts }) => facts.id === id)
  const candidates = candidatesFor(shown[0]!, sharedAssemblies(shown, CATALOGUE), false, CATALOGUE)
  return { input, candidates, on: marginOn(input, answer ?? null, shown, candidates) }
}

describe('the margin on a surface', () => {
  test('is told for every candidate, each as building it would give', () => {
    const { input, candidates, on } = marginsOn('wall-1')
    if (on.kind !== 'known') throw new Error('the margin is known')
    expect([...on.margins.byCandidate.keys()]).toEqual(candidates.map(({ id }) => id))
    for (const [assembly, { value, low, high }] of on.margins.byCandidate) {
      const scheme = withChange(input.scheme, { choices: { 'wall-1': { assembly, removeLining: false } } })
      const analysed = analyseScheme({ ...input, scheme, quality: 'plot' })
      if (!analysed.ok) throw new Error(analysed.error.message)
      const [answer] = answerReceivers({ ...input, scheme, result: analysed.value })
      expect([value, low, high]).toEqual(
        [answer!.marginDb, answer!.marginLow95Db, answer!.marginHigh95Db].map((end) => expect.closeTo(end!, 9)),
      )
    }
  })

  test('always has beside it what no airborne figure holds, where the source shakes the building', () => {
    const quiet = marginsOn('wall-1').on
    const drums = marginsOn('wall-1', { source: { shakes: true } }).on
    expect(quiet.kind === 'known' && quiet.beside).toBeNull()
    expect(drums.kind === 'known' && drums.beside).toContain('Structure-borne sound')
  })

  test('is not there without a receiver', () => {
    const { input, candidates } = marginsOn('wall-1')
    expect(marginOn({ ...input, receivers: [] }, null, surfaces.slice(0, 1), candidates).kind).toBe('none')
  })

  test('says in a sentence that nothing is heard by way of a surface, unless sound runs along it', () => {
    const far = marginsOn('wall-3').on
    expect(far).toEqual({
      kind: 'not-known',
      why: expect.stringMatching(/^The bedroom hears nothing by way of Wall 3,/),
    })
    expect(marginsOn('wall-2', { receiver: { junction: 'continuous-joists' } }).on.kind).toBe('known')
  })

  test('says in a sentence what is missing where the margin is not known', () => {
    const { on } = marginsOn('wall-1', { receiver: { source: null } })
    expect(on).toEqual({
      kind: 'not-known',
      why: expect.stringMatching(
        /^The margin at Bedroom is not known, so the ruler shows STC\. .*nobody has said what is played/,
      ),
    })
  })
})
