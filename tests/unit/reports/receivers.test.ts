import { describe, expect, it } from 'vitest'
import { analyseScheme } from '#analysis/analyse.ts'
import { projectCatalogue } from '#project/catalogue.ts'
import type { Project } from '#project/project.ts'
import { ledgerCsv } from '#reports/csv.ts'
import { heardUnder } from '#reports/heard.ts'
import { projectReport, SURFACES_BESIDE_RECEIVERS, SURFACES_ONLY, schemeNotes, schemeReport } from '#reports/json.ts'
import { pathsCsv } from '#reports/pathsCsv.ts'
import { receiverReport } from '#reports/receivers.ts'
import type { RoomResults } from '#reports/roomResults.ts'
import { textSummary } from '#reports/summary.ts'
import { openSample } from '../../support/samples.ts'

/** One scheme of a sample's first room, as reports are given it. */
function told(project: Project, index: number, steps = 0): RoomResults {
  const [room, scheme] = [project.rooms[0], project.schemes[index]]
  if (!room || !scheme) throw new Error('no scheme')
  const catalogue = projectCatalogue(project)
  const analysed = analyseScheme({ room, scheme, catalogue, quality: 'drag' })
  if (!analysed.ok) throw new Error(analysed.error.message)
  const { receivers, sources } = project
  const result = analysed.value
  return {
    room,
    results: [result],
    heard: [heardUnder({ room, scheme, result, receivers, sources, catalogue }, steps)],
  }
}

const garage = openSample('garage')
const basement = openSample('basement')
const asItStands = told(garage, 0)
const heard = (one: RoomResults) => one.heard?.[0]?.receivers ?? []

describe('a receiver in reports', () => {
  it('has every number of its answer, unrounded', () => {
    const [first] = heard(asItStands)
    if (!first) throw new Error('no receiver')
    const report = receiverReport(first)
    expect(report.marginDb).toBe(first.answer.marginDb)
    expect(Object.values(report.levelsDb)).toEqual(first.answer.levelsDb)
    expect(report.limitDb).toEqual({ A: 50 })
    expect(report.source).toMatchObject({ name: 'Drum kit, hard sticks', basis: 'memory' })
    expect(report.paths.map(({ id }) => id)).toEqual(first.answer.paths.map(({ path }) => path.id))
    expect(report.nextSteps).toBeNull()
    expect(Object.keys(report.noiseReductionDb ?? {})).toHaveLength(21)
  })

  it('is told with its next steps where they are asked for, each with what it costs and its cautions', () => {
    const [first] = heard(told(garage, 0, 2))
    const steps = first && receiverReport(first).nextSteps
    expect(steps).toHaveLength(2)
    for (const step of steps ?? []) {
      expect(step.gainDb).toBeGreaterThan(0)
      expect(step.areaLostM2).toBeTypeOf('number')
      expect(Object.keys(step.change).length).toBeGreaterThan(0)
    }
  })

  it('has what was measured beside what is predicted, and what that says of the junction', () => {
    const [bedroom] = heard(told(basement, 2))
    const measured = bedroom && receiverReport(bedroom).measured
    expect(measured).toMatchObject([{ id: 'measured-1', when: 'before', against: 'as-it-stands' }])
    expect(measured?.[0]?.octaves).toHaveLength(7)
    expect(measured?.[0]?.sentences.length).toBeGreaterThan(0)
    expect(textSummary('Basement', [told(basement, 2)], 'ft-in')).toContain('    measured, Bare joists')
  })

  it('brings the cautions of whoever plays there before those of the scheme', () => {
    const { results, room } = asItStands
    const report = schemeReport(results[0]!, room, asItStands.heard?.[0])
    expect(report.cautions.filter(({ code }) => code.startsWith('hearing:'))).toHaveLength(2)
    expect(report.cautions.length).toBeGreaterThan(results[0]!.cautions.length)
    expect(report.openings.map(({ made }) => made?.type)).toEqual([
      'vehicle-roll-up',
      'door-solid-core',
      'window-sash-4',
    ])
  })

  it('changes what is said of ratings: openings and leaks are in its margin', () => {
    const [room, one] = [asItStands.room, asItStands.heard?.[0] ?? null]
    expect(schemeNotes(room, one)[0]?.text).toBe(SURFACES_BESIDE_RECEIVERS)
    expect(schemeNotes(room)[0]?.text).toBe(SURFACES_ONLY)
    expect(textSummary('Garage', [asItStands], 'mm')).toContain(SURFACES_BESIDE_RECEIVERS)
    expect(projectReport([{ room, results: asItStands.results }]).schemes[0]?.receivers).toEqual([])
  })

  it('has a line a path in paths.csv, the room first where there are several', () => {
    const count = heard(asItStands).reduce((sum, { answer }) => sum + answer.paths.length, 0)
    const lines = pathsCsv([asItStands]).trim().split('\r\n')
    expect(lines).toHaveLength(count + 1)
    expect(lines[1]).toMatch(/^A do nothing but close the door,Bedroom window at night,/)
    const both = pathsCsv([asItStands, { ...asItStands, room: { ...asItStands.room, name: 'Booth' } }])
    expect(both).toMatch(/^room,scheme,receiver/)
    expect(both).toContain('\r\nBooth,A do nothing but close the door,')
    expect(ledgerCsv([asItStands])).toMatch(/Bedroom window at night,limit,50 dBA,/)
  })

  it('says each note once a scheme, and what is not known in full, never as a number', () => {
    const openings = garage.rooms[0]!.openings.map(({ made: _, ...opening }) => opening)
    const bare = told({ ...garage, rooms: [{ ...garage.rooms[0]!, openings }] }, 0)
    const text = textSummary('Garage', [bare], 'mm')
    expect(text).toContain('receiver Bedroom window at night (Drum kit, hard sticks, limit 50 dBA): not known')
    expect(text).toContain('    not known, Vehicle door: ')
    expect(text).toMatch(/ {4}level, dB( +-){7}/)
    const csv = pathsCsv([bare])
    expect(csv).toMatch(/opening-1,opening,Vehicle door,{12}not known,/)
    const notes = textSummary('Garage', [asItStands], 'mm').match(/^ {2}note: .*$/gm) ?? []
    expect(new Set(notes).size).toBe(notes.length)
  })
})
