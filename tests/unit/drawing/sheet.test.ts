import { fileURLToPath } from 'node:url'
import { Resvg } from '@resvg/resvg-js'
import { describe, expect, it } from 'vitest'
import type { Caution } from '#analysis/results.ts'
import { markBox } from '#drawing/bounds.ts'
import type { Drawing, TextMark } from '#drawing/model.ts'
import { boxesMeet, growBox } from '#drawing/place.ts'
import { PAPERS, type PaperName, type SheetInput } from '#drawing/sheet/sheetInput.ts'
import { CAUTION_LINES } from '#drawing/sheet/titleStrip.ts'
import { sheetDrawing } from '#drawing/sheet.ts'
import { drawingToSvg } from '#drawing/svg.ts'
import { missingCharacters } from '#drawing/text.ts'
import { aBasement, aGarage, aPlanResult } from '../../support/drawing.ts'

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
