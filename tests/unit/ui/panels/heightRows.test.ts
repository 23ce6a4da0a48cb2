import { describe, expect, it } from 'vitest'
import type { SchemeResult } from '#analysis/results.ts'
import { heightRows } from '#ui/panels/ledger/heightRows.ts'
import { clashesOf } from '#ui/panels/ledger/quietLines.tsx'
import { projectResult } from '#ui/panels/ledger/useLedger.ts'
import { sampleProject, sessionOn } from './samples.ts'

function basementA(): SchemeResult {
  const project = sampleProject('basement')
  const session = sessionOn(project, 'A independent on concrete')
  const { roomId, schemeId } = session.view.getState()
  const result = projectResult(session.results, project, roomId, schemeId)
  if (result === null) throw new Error('the basement can be worked out')
  return result
}

describe('where the height goes', () => {
  it('names the lowest, every drop, the mean, and the floor with head room', () => {
    // SCENARIOS: 90 in away from drops, 81 5/8 in under the beam, 78 3/4 in under the duct.
    const rows = new Map(heightRows(basementA(), 'mm'))
    expect(rows.get('Lowest, away from drops')).toBe(`2286 mm · 7'-6"`)
    expect(rows.get('Under Steel beam')).toBe(`2073 mm · 6'-9 5/8"`)
    expect(rows.get('Under Duct trunk')).toBe(`2000 mm · 6'-6 3/4"`)
    expect(rows.get(`Floor with 1524 mm · 5'-0" or more`)).toBe('all of it')
    expect(rows.get(`Floor with 2134 mm · 7'-0" or more`)).toMatch(/^30\.\d\d m²/)
    // Clear volume of the scenario over its clear area: 79.86 m3 / 35.474 m2.
    expect(Number(rows.get('Mean, drops included')?.split(' ')[0])).toBeCloseTo((79.86 / 35.474) * 1000, -1)
  })

  it('says how much a slope rises behind the linings, so that the heights add up', () => {
    const { ledger } = basementA()
    const clearHeightMm = { existing: 2297, ceilingTakes: 73, floorTakes: 89, lowest: 2142, mean: 2236 }
    const row = 'Rise of the slope from there to the lowest place inside the linings'
    expect(new Map(heightRows({ ledger: { ...ledger, clearHeightMm } }, 'mm')).get(row)).toBe(`7 mm · 1/4"`)
    expect(new Map(heightRows({ ledger }, 'mm')).has(row)).toBe(false)
  })

  it('says none where the linings leave no floor', () => {
    const result = basementA()
    const rows = new Map(heightRows({ ledger: { ...result.ledger, parts: 0 } }, 'mm'))
    expect(rows.get('Lowest, away from drops')).toBe('none')
  })
})

describe('cautions that stand in full', () => {
  it('are those of openings and furniture as drawn', () => {
    const result = basementA()
    const clashes = clashesOf(result)
    expect([...clashes].some((text) => /^Duct trunk: .*overlap by 19 mm/.test(text))).toBe(true)
    for (const text of clashes) expect(result.cautions.map((caution) => caution.text)).toContain(text)
  })
})
