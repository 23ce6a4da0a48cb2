import { describe, expect, it } from 'vitest'
import { analyseScheme } from '#analysis/analyse.ts'
import { targetCautions } from '#analysis/cautions/targets.ts'
import { answerReceivers } from '#analysis/paths/answerReceivers.ts'
import { markBox } from '#drawing/bounds.ts'
import type { TextMark } from '#drawing/model.ts'
import type { SheetHeard } from '#drawing/sheet/heard.ts'
import { markedReceiver } from '#drawing/sheet/heard.ts'
import { PAPERS, type PaperName, type SheetInput } from '#drawing/sheet/sheetInput.ts'
import { CAUTION_LINES, MARGINS_LINE } from '#drawing/sheet/titleStrip.ts'
import { sheetDrawing } from '#drawing/sheet.ts'
import { missingCharacters } from '#drawing/text.ts'
import { aReceiver, aSource } from '../../support/paths.ts'
import { CATALOGUE, openSample } from '../../support/samples.ts'

/** The garage with two people named, whatever the sample itself says of targets. */
function garage(through: readonly string[] = ['wall-2', 'ceiling-1']) {
  const project = openSample('garage')
  const [sample] = project.rooms
  const scheme = project.schemes.find(({ id }) => id === project.proposal)!
  const openings = sample!.openings.map((opening) => ({
    ...opening,
    made: { type: opening.kind === 'door' ? 'pair-solid-core' : 'plug', seal: 'good' } as const,
  }))
  const room = { ...sample!, openings, ducts: [] }
  const bare = { ...scheme, openings: {}, ducts: {}, boxes: [], airtightness: 'ordinary' } as const
  const analysed = analyseScheme({ room, scheme: bare, catalogue: CATALOGUE, quality: 'drag' })
  if (!analysed.ok) throw new Error(analysed.error.message)
  const sources = [aSource({ name: 'Drum kit', preset: 'drum-kit-hard', basis: 'memory', sdDb: 3, shakes: true })]
  const receivers = [
    aReceiver({
      id: 'r1',
      name: 'Bedroom window',
      room: room.id,
      place: { kind: 'outdoors', distanceMm: 9000, atFacade: false },
      through: through.map((surface) => ({ surface })),
      limit: { kind: 'dBA', levelDb: 45 },
      limitPreset: 'window-night',
    }),
    aReceiver({ id: 'r2', name: 'Study', room: room.id, through: [{ surface: 'wall-3' }], junction: 'common-slab' }),
  ]
  const answers = answerReceivers({
    room,
    scheme: bare,
    result: analysed.value,
    receivers,
    sources,
    catalogue: CATALOGUE,
  })
  const heard: SheetHeard = {
    scheme: bare,
    catalogue: CATALOGUE,
    receivers: receivers.map((receiver, index) => ({ receiver, source: sources[0]!, answer: answers[index]! })),
    cautions: targetCautions({ room, scheme: bare, sources, receivers, result: analysed.value }),
  }
  const input: SheetInput = {
    projectName: 'Larch Lane practice room',
    note: 'Invented demo data.',
    room,
    result: analysed.value,
    units: 'ft-in',
    paper: 'tabloid',
    heard,
  }
  return { input, heard }
}

const { input, heard } = garage()
const textsOn = (sheet: SheetInput): TextMark[] =>
  sheetDrawing(sheet).marks.filter((mark): mark is TextMark => mark.kind === 'text')
const wordsOn = (sheet: SheetInput): string =>
  textsOn(sheet)
    .map(({ text }) => text)
    .join(' ')

describe('who hears what, on the sheet', () => {
  const words = wordsOn(input)

  it('gives every receiver its margin with range and verdict, and its levels against its limit', () => {
    for (const { answer } of heard.receivers) {
      expect(words).toMatch(
        new RegExp(`${answer.name}: [+−]?\\d+ dB, likely [+−]?\\d+ to [+−]?\\d+ dB; ${answer.verdictWords}`),
      )
      expect(words).toContain(answer.sentence)
    }
    expect(words).toMatch(/Heard there( −?\d+){9}/)
    expect(words).toMatch(/Limit 45 dBA 45/)
    expect(words).toMatch(/Limit NC-25( \d+){7}/)
  })

  it('says by which way, as in a laboratory and on site, what is played and whose limit it is', () => {
    expect(words).toMatch(/Shares in dBA: .+ %/)
    expect(words).toMatch(/STC \d+ as in a laboratory; STC \d+ expected on site/)
    expect(words).toMatch(/What is played: Drum kit, levels assumed, from memory: design assumption/)
    expect(words).toMatch(/WHO Guidelines for Community Noise \(1999\).*Status: seen/)
    expect(words).toMatch(/Structure-borne sound and bass below 50 Hz are not in this figure/)
    expect(words).toMatch(/Study: What goes round is an assumption, not a calculation/)
    expect(words).toMatch(/Airtightness: Ordinary\./)
    expect(words).toMatch(/In it: two solid-core.*seals good; STC \d+, likely \d+–\d+/)
  })

  it('has the cautions of targets in full, and no line that says openings are left out', () => {
    expect(heard.cautions.length).toBeGreaterThan(0)
    for (const { text } of heard.cautions) expect(words).toContain(text)
    expect(words).toContain(MARGINS_LINE)
    expect(words).not.toContain(CAUTION_LINES[1])
  })

  it('marks on its plan the shares of whoever is worst off, or of whom it is asked', () => {
    const ranked = [...heard.receivers].sort((a, b) => a.answer.marginLow95Db! - b.answer.marginLow95Db!)
    expect(markedReceiver(heard)).toBe(ranked[0])
    expect(markedReceiver({ ...heard, marked: 'r1' })?.receiver.id).toBe('r1')
    expect(wordsOn({ ...input, heard: { ...heard, marked: 'r1' } })).toContain(
      'Bedroom window: shares of what is heard there in dBA',
    )
  })

  it('says why where nothing is known, and shows no figure for it', () => {
    const unknown = { ...heard.receivers[0]!.answer, marginDb: null, marginLow95Db: null, marginHigh95Db: null }
    const blank = Array.from({ length: 7 }, () => null)
    const answer = {
      ...unknown,
      paths: [],
      levelsDb: blank,
      levelsHigh95Db: blank,
      levelA: null,
      levelC: null,
      unknown: [{ id: 'x', kind: 'opening', label: 'Side door', element: 'x', why: 'Nobody has said what it is.' }],
    } as const
    const said = wordsOn({ ...input, heard: { ...heard, receivers: [{ ...heard.receivers[0]!, answer }] } })
    expect(said).toContain('Bedroom window: margin not known')
    expect(said).toContain('Nobody has said what it is.')
    expect(said).toMatch(/Heard there( –){9}/)
    expect(said).not.toContain('shares of what is heard')
  })

  it('is left out whole where nobody is named', () => {
    const { heard: _, ...alone } = input
    const nobody = { ...heard, receivers: [], cautions: [] }
    expect(wordsOn(alone)).not.toContain('Who hears what')
    expect(wordsOn({ ...input, heard: nobody })).not.toContain('Who hears what')
  })

  for (const paper of Object.keys(PAPERS) as PaperName[]) {
    it.each([true, false])(`stays on ${paper}, landscape %s, in letters that can be read`, (landscape) => {
      const sheet = { ...input, paper, landscape }
      const { widthMm, heightMm, marks } = sheetDrawing(sheet)
      for (const mark of marks) {
        const { x, y, width, height } = markBox(mark)
        expect(Math.min(x, y)).toBeGreaterThan(5)
        expect(x + width).toBeLessThan(widthMm - 5)
        expect(y + height).toBeLessThan(heightMm - 5)
      }
      const sizes = textsOn(sheet).map(({ size }) => size)
      expect(Math.min(...sizes)).toBeGreaterThan(paper === 'a3' || paper === 'tabloid' ? 2 - 1e-9 : 1.4)
      expect(missingCharacters(wordsOn(sheet))).toEqual([])
    })
  }
})
