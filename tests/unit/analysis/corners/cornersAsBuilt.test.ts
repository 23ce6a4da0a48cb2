import { describe, expect, it } from 'vitest'
import { analyseScheme } from '#analysis/analyse.ts'
import type { SchemeResult } from '#analysis/results.ts'
import type { Scheme } from '#analysis/scheme.ts'
import { aPlanRoom } from '../../../support/drawing.ts'
import { CATALOGUE } from '../../../support/samples.ts'

const room = aPlanRoom({
  corners: [
    [0, 0],
    [3000, 0],
    [3000, 5000],
    [0, 5000],
  ],
})

function result(walls: Readonly<Record<string, string>>, runsThrough: Scheme['runsThrough'] = {}): SchemeResult {
  const choices = Object.fromEntries(
    Object.entries(walls).map(([id, assembly]) => [id, { assembly, removeLining: false }]),
  )
  const scheme = { id: 's', name: 'S', choices, runsThrough }
  const analysed = analyseScheme({ room, scheme, catalogue: CATALOGUE, quality: 'drag' })
  if (!analysed.ok) throw new Error(analysed.error.message)
  return analysed.value
}

const ALL = { w1: 'W07', w2: 'W07', w3: 'W07', w4: 'W07' }

describe('corners as built', () => {
  it('lets the lining of the longer wall run through, with a sealed gap', () => {
    const { corners } = result(ALL)
    expect(corners.map(({ runsThrough }) => runsThrough)).toEqual(['w4', 'w2', 'w2', 'w4'])
    expect(corners.every(({ gapMm, isChosen }) => gapMm === 6 && !isChosen)).toBe(true)
    expect(corners[1]!.walls).toEqual(['w1', 'w2'])
    expect(corners[1]!.text).toContain('the lining of Wall 2 runs through; that of Wall 1 stops 6 mm (1/4") short')
  })

  it('follows the choice, and ignores one of a wall that is not there', () => {
    const { corners } = result(ALL, { c2: 'w1', c3: 'w4' })
    expect(corners[1]).toMatchObject({ runsThrough: 'w1', isChosen: true })
    expect(corners[2]).toMatchObject({ runsThrough: 'w2', isChosen: false })
  })

  it('warns where a resilient lining or a frame of its own ends against an untreated wall', () => {
    for (const assembly of ['W07', 'W14']) {
      const { corners, cautions } = result({ w1: assembly })
      expect(corners.map(({ touchesUntreated }) => touchesUntreated)).toEqual([true, true, false, false])
      expect(corners.map(({ gapMm }) => gapMm)).toEqual([6, 6, null, null])
      const told = cautions.filter(({ code }) => code === 'corner-untreated')
      expect(told).toHaveLength(1)
      expect(told[0]).toMatchObject({ kind: 'check', surfaces: ['w4', 'w1', 'w2'] })
      expect(told[0]!.text).toContain('Wall 4 / Wall 1 and Wall 1 / Wall 2')
    }
  })

  it('has no warning where the lining is fixed rigidly, or all walls are lined', () => {
    expect(result({ w1: 'W01' }).corners.some(({ touchesUntreated }) => touchesUntreated)).toBe(false)
    expect(result(ALL).cautions.some(({ code }) => code === 'corner-untreated')).toBe(false)
  })

  it('leaves the space account as it is, whichever runs through', () => {
    const [one, other] = [result(ALL), result(ALL, { c1: 'w1', c2: 'w1', c3: 'w3', c4: 'w3' })]
    expect(other.ledger).toEqual(one.ledger)
  })
})
