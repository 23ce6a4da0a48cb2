import { fileURLToPath } from 'node:url'
import { Resvg } from '@resvg/resvg-js'
import { describe, expect, it } from 'vitest'
import type { Caution, SchemeResult } from '#analysis/results.ts'
import { markBox } from '#drawing/bounds.ts'
import type { Drawing, TextMark } from '#drawing/model.ts'
import { boxesMeet, growBox } from '#drawing/place.ts'
import { PAPERS, type PaperName, type SheetInput } from '#drawing/sheet/sheetInput.ts'
import { CAUTION_LINES } from '#drawing/sheet/titleStrip.ts'
import { sheetDrawing } from '#drawing/sheet.ts'
import { drawingToSvg } from '#drawing/svg.ts'
import { missingCharacters } from '#drawing/text.ts'
import { aBasement, aGarage, aPlanResult } from '../../support/drawing.ts'
import { analyse, openSample } from '../../support/samples.ts'

function cautions(count: number): Caution[] {
  return Array.from({ length: count }, (_, index) => ({
    code: `c${index}`,
    kind: index % 3 === 0 ? 'check' : 'life-safety',
    text: `Caution ${index}: the existing lining may be needed for fire separation; find out before it is taken off, and put back what the code asks for.`,
    surfaces: [],
  }))
}

const garage = aGarage()
const base: SheetInput = {
  projectName: 'Larch Lane practice room',
  note: 'Invented demo data.',
  room: garage,
  result: aPlanResult(garage, ['W14'], cautions(4)),
  units: 'ft-in',
  paper: 'letter',
  date: '25 November 2026',
}

function texts({ marks }: Drawing): TextMark[] {
  return marks.filter((mark) => mark.kind === 'text')
}

function said(drawing: Drawing): string {
  return texts(drawing)
    .map(({ text }) => text)
    .join(' ')
}

const FONTS = ['Regular', 'SemiBold'].map((name) =>
  fileURLToPath(new URL(`../../../src/assets/OpenSans-${name}.ttf`, import.meta.url)),
)

describe('the sheet', () => {
  const drawing = sheetDrawing(base)

  it('carries plan, assembly list, ledger, scale and cautions', () => {
    const words = said(drawing)
    for (const text of [
      'Larch Lane practice room',
      'C independent room',
      `3/16" = 1'-0" (1:64)`,
      'Walls 1–4',
      '52, likely 48–56',
      '51 (−2; −8)',
      '240.0 ft²',
      '210.3 ft²',
      'Life safety',
      ...CAUTION_LINES,
    ]) {
      expect(words).toContain(text)
    }
  })

  it('keeps to the paper, with a white edge', () => {
    for (const mark of drawing.marks) {
      const { x, y, width, height } = markBox(mark)
      expect(x).toBeGreaterThan(6)
      expect(y).toBeGreaterThan(6)
      expect(x + width).toBeLessThan(drawing.widthMm - 6)
      expect(y + height).toBeLessThan(drawing.heightMm - 6)
    }
  })

  it('writes only what the font can show', () => {
    expect(missingCharacters(said(drawing))).toEqual([])
  })

  it('uses the standard scales of the reader', () => {
    expect(said(sheetDrawing({ ...base, units: 'mm', paper: 'a3' }))).toMatch(/1:(10|20|25|50|75|100|200)\b/)
  })

  for (const paper of Object.keys(PAPERS) as PaperName[]) {
    for (const landscape of [true, false]) {
      it.each([0, 6, 24, 60])(
        `has room on ${paper}, ${landscape ? 'landscape' : 'portrait'}, for %i cautions in full`,
        (count) => {
          const result = aPlanResult(garage, ['W14'], cautions(count))
          const sheet = sheetDrawing({ ...base, result, paper, landscape })
          const words = said(sheet)
          for (const { text } of result.cautions) expect(words).toContain(text)
          const labels = texts(sheet)
          for (const [index, first] of labels.entries()) {
            for (const second of labels.slice(index + 1)) {
              const meet = boxesMeet(growBox(first.box, -0.02), growBox(second.box, -0.02))
              expect(meet, `${first.text} | ${second.text}`).toBe(false)
            }
          }
        },
      )
    }
  }

  const long = 'Independent double studs with a wide gap, three boards, damping compound and Schwingungsdämmungsplatten'
  const longNamed = (result: SchemeResult): SchemeResult => ({
    ...result,
    name: 'A independent on concrete, as agreed with the owner on the second visit',
    surfaces: result.surfaces.map((surface, index) => (index % 2 === 0 ? { ...surface, assemblyName: long } : surface)),
  })
  const room = openSample('basement')
  const concrete = analyse(room, 'A independent on concrete')
  for (const paper of Object.keys(PAPERS) as PaperName[]) {
    for (const landscape of [true, false]) {
      it(`keeps the assembly list within its width on ${paper}, ${landscape ? 'landscape' : 'portrait'}`, () => {
        for (const result of [concrete, longNamed(concrete)]) {
          const sheet = sheetDrawing({ ...base, room: room.rooms[0]!, result, paper, landscape })
          const rules = sheet.marks.flatMap((mark) => (mark.kind === 'lines' && mark.role === 'table' ? mark.runs : []))
          const right = Math.max(...rules.map((run) => run[2]!))
          const cells = texts(sheet).filter(({ role }) => role === 'table')
          const others = sheet.marks.filter(({ role }) => role === 'caution' || role === 'ledger').map(markBox)
          for (const [index, { box, text }] of cells.entries()) {
            expect(box.x + box.width, text).toBeLessThanOrEqual(right + 1e-6)
            for (const other of others) expect(boxesMeet(box, other), text).toBe(false)
            for (const next of cells.slice(index + 1)) {
              expect(boxesMeet(growBox(box, -0.02), growBox(next.box, -0.02)), `${text} | ${next.text}`).toBe(false)
            }
          }
        }
      })
    }
  }

  it('lists how every opening stands and the corners as built, and leaves them out before a caution', () => {
    const sheet = { ...base, room: room.rooms[0]!, result: concrete, paper: 'a3' } as const
    const words = said(sheetDrawing(sheet))
    for (const text of ['Stair door, Wall 4', `2'-6 1/4"`, `6'-7 1/2"`, 'opens to 90°', 'Corners as built']) {
      expect(words).toContain(text)
    }
    expect(words).toContain('The space account keeps the mitre at every corner.')
    const many = cautions(90)
    const crowded = said(sheetDrawing({ ...sheet, paper: 'letter', result: { ...concrete, cautions: many } }))
    expect(crowded).not.toContain('Corners as built')
    for (const { text } of many) expect(crowded).toContain(text)
  })

  it('tells the height under each drop right after the height away from them', () => {
    const lines = texts(sheetDrawing({ ...base, room: room.rooms[0]!, result: concrete, paper: 'a3' })).filter(
      ({ role }) => role === 'ledger',
    )
    const words = lines.map(({ text }) => text)
    const at = words.indexOf('Clear height, away from drops')
    expect(words.slice(at + 1, at + 7)).toEqual([
      `7'-8"`,
      `7'-6"`,
      'Under Steel beam',
      `6'-9 5/8"`,
      'Under Duct trunk',
      `6'-6 3/4"`,
    ])
    for (const index of [2, 4, 6]) expect(lines[at + index]).toMatchObject({ weight: 600, colour: 'ink' })
    expect(words).not.toContain('Lowest clear height')
  })

  it('claims no height and no volume where nothing is left', () => {
    const words = said(sheetDrawing({ ...base, result: { ...base.result, clear: [] } }))
    expect(words).toContain('none: the linings meet')
    for (const text of ['clear height', 'Volume', 'Clear size', 'Floor kept ']) {
      expect(words.replace('Floor kept as it is', '')).not.toContain(text)
    }
  })

  it('shows ink in every label of the picture', () => {
    const basement = aBasement()
    const result = aPlanResult(basement, ['W20', 'W20', 'W07', 'W07', 'W20', 'W21'], cautions(3))
    const sheet = sheetDrawing({ ...base, room: basement, result, paper: 'tabloid' })
    const width = 2400
    const image = new Resvg(drawingToSvg(sheet), {
      fitTo: { mode: 'width', value: width },
      font: { fontFiles: FONTS, loadSystemFonts: false, defaultFontFamily: 'Open Sans' },
    }).render()
    const perMm = image.width / sheet.widthMm
    const { pixels } = image
    for (const { text, box } of texts(sheet)) {
      let dark = 0
      for (let y = Math.floor(box.y * perMm); y < (box.y + box.height) * perMm; y++) {
        for (let x = Math.floor(box.x * perMm); x < (box.x + box.width) * perMm; x++) {
          const at = 4 * (y * image.width + x)
          if (Math.min(pixels[at]!, pixels[at + 1]!, pixels[at + 2]!) < 140) dark++
        }
      }
      const share = dark / (box.width * box.height * perMm * perMm)
      expect(share, text).toBeGreaterThan(0.03)
      expect(share, text).toBeLessThan(0.6)
    }
  })
})
