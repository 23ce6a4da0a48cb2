import { describe, expect, it } from 'vitest'
import { ledgerCsv } from '#reports/csv.ts'
import { projectReport, schemeReport } from '#reports/json.ts'
import { textSummary } from '#reports/summary.ts'
import { aHeight, aRoom, aScheme, box, resultsOf } from '../../support/rooms.ts'
import { analyse, openSample } from '../../support/samples.ts'

const sloped = aRoom(box(0, 0, 4000, 3000), { heights: [aHeight(0, 0, 1000), aHeight(4000, 0, 3000)] })
const one = { room: sloped, results: [resultsOf(sloped)] }
const plain = aRoom(box(0, 0, 2000, 2000), { id: 'room-2', name: 'Booth' })
const other = { room: plain, results: [resultsOf(plain, aScheme({ 'wall-1': 'W07' }))] }

describe('one room', () => {
  it('is told with its mean height and the floor that has 5 ft and 7 ft over it', () => {
    const [scheme] = projectReport([one]).schemes
    expect(scheme?.clearHeightMm.mean).toBeCloseTo(2000, 6)
    expect(scheme?.areaAbove).toEqual([
      { heightMm: 1524, areaM2: expect.closeTo(12 * (1 - 524 / 2000), 6) },
      { heightMm: 2133.6, areaM2: expect.closeTo(12 * (1 - 1133.6 / 2000), 6) },
    ])
    const summary = textSummary('Project', [one], 'mm')
    expect(summary).toContain('height  1000 mm -> 1000 mm, 2000 mm in the mean')
    expect(summary).toContain('1524 mm and more over 8.86 m² of the floor')
    expect(ledgerCsv([one])).toMatch(/A,,floor area with 2133\.6 mm over it,5\.198\d*,m2/)
  })

  it('is the only list of schemes, without a word of rooms', () => {
    expect(Object.keys(projectReport([one]))).toEqual(['schemes'])
    expect(ledgerCsv([one])).toMatch(/^scheme,surface,item,value,unit\r\n/)
  })

  it('says where its ceiling is read as level though it was measured otherwise', () => {
    const level = { ...sloped, ceilingShape: 'level' as const }
    const codes = (room: typeof sloped) => schemeReport(resultsOf(room), room).notes.map(({ code }) => code)
    expect(codes(level)).toContain('ceiling-read-as-level')
    expect(codes(sloped)).not.toContain('ceiling-read-as-level')
  })
})

describe('several rooms', () => {
  it('keep the first one’s schemes where they were and stand in a list of their own', () => {
    const report = projectReport([one, other])
    expect(report.schemes).toEqual(projectReport([one]).schemes)
    expect(report.rooms?.map(({ id, name, schemes }) => [id, name, schemes.length])).toEqual([
      [sloped.id, sloped.name, 1],
      ['room-2', 'Booth', 1],
    ])
  })

  it('stand before every line of the ledger and over their schemes in the summary', () => {
    const lines = ledgerCsv([one, other]).split('\r\n')
    expect(lines[0]).toBe('room,scheme,surface,item,value,unit')
    expect(lines.filter((line) => line.startsWith('Booth,'))).not.toHaveLength(0)
    expect(textSummary('Project', [one, other], 'mm')).toMatch(/\n\nBooth\n\nA\n {2}floor/)
  })
})

describe('openings, furniture and corners', () => {
  const basement = openSample('basement')
  const room = basement.rooms[0]!
  const result = analyse(basement, 'A independent on concrete')

  it('stand in report.json by their names', () => {
    const { openings, corners, furniture } = schemeReport(result, room)
    expect(openings.map(({ name, kind, wall }) => [name, kind, wall])).toEqual([
      ['Stair door', 'door', 'wall-4'],
      ['Escape window', 'window', 'wall-1'],
    ])
    expect(openings[0]?.problems.map(({ text }) => text).join(' ')).toMatch(/overlap by 19 mm \(3\/4"\)/)
    expect(corners).toHaveLength(6)
    expect(furniture).toEqual([])
    const outbuilding = openSample('outbuilding')
    const piano = schemeReport(analyse(outbuilding, outbuilding.schemes[0]!.name), outbuilding.rooms[0]!).furniture[0]
    expect(piano).toMatchObject({ name: 'Upright piano', fits: true, problems: [] })
  })

  it('stand in ledger.csv, what is wrong with them in words', () => {
    const csv = ledgerCsv([{ room, results: [result] }])
    expect(csv).toMatch(/A independent on concrete,Stair door,clear width,[\d.]+,mm/)
    expect(csv).toMatch(/Stair door,problem,"Duct trunk: .*overlap by 19 mm/)
    expect(csv).toMatch(/Wall 6 and Wall 1,corner as built,/)
  })
})
