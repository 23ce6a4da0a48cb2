import { describe, expect, it } from 'vitest'
import type { SchemeResult } from '#analysis/results.ts'
import type { PublishedValue } from '#assemblies/published/match.ts'
import { sheetDrawing } from '#drawing/sheet.ts'
import { ledgerCsv } from '#reports/csv.ts'
import { schemeReport } from '#reports/json.ts'
import { textSummary } from '#reports/summary.ts'
import { analyse, openSample } from '../../support/samples.ts'

const garage = openSample('garage')
const room = garage.rooms[0]!
const PRINTED: PublishedValue = {
  id: 'X-1',
  description: 'a wall like this one',
  stc: 61,
  rw: null,
  source: { text: 'Table of walls, row 1', status: 'seen' },
}

/** The first scheme, as if the tables had a value for its first wall and for no other surface. */
function withPrint(published: readonly PublishedValue[]): SchemeResult {
  const analysed = analyse(garage, garage.schemes[0]!.name)
  const surfaces = analysed.surfaces.map((surface, index) => ({
    ...surface,
    rating: surface.rating && { ...surface.rating, published: index === 0 ? published : [] },
  }))
  return { ...analysed, surfaces }
}

describe('a published value', () => {
  const result = withPrint([PRINTED])

  it('stands in report.json as {stc, source}, and null where there is none', () => {
    const { surfaces } = schemeReport(result, room)
    expect(surfaces[0]?.published).toEqual({ stc: 61, source: 'Table of walls, row 1; seen' })
    expect(surfaces[1]?.published).toBeNull()
    expect(surfaces.at(-1)).toMatchObject({ id: 'floor-1', stc: null, published: null })
  })

  it('stands in ledger.csv with its source', () => {
    const csv = ledgerCsv([{ room, results: [result] }])
    expect(csv).toContain('Wall 1,STC published,61,dB')
    expect(csv).toContain('Wall 1,"STC published, source","Table of walls, row 1; seen",')
    expect(csv).toContain('Wall 2,STC published,,dB')
  })

  it('stands in the summary with its source, and its absence is told', () => {
    const lines = textSummary(garage.name, [{ room, results: [result] }], 'mm').split('\n')
    expect(lines.find((line) => line.includes('Wall 1'))).toContain('; published 61 (Table of walls, row 1; seen)')
    expect(lines.find((line) => line.includes('Wall 2'))).toContain('; no published value for this build-up')
  })

  it('stands on the sheet: in the list, and with its source among the sentences', () => {
    const said = sheetDrawing({
      projectName: garage.name,
      note: '',
      room,
      result,
      units: 'mm',
      paper: 'a3',
    })
      .marks.flatMap((mark) => (mark.kind === 'text' ? [mark.text] : []))
      .join(' ')
    expect(said).toMatch(/published 61/)
    expect(said).toContain('Wall 1: Published 61 (Table of walls, row 1; seen).')
    expect(said).toContain('No published value for this build-up.')
  })
})
