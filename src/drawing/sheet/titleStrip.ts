import type { Box, Mark } from '#drawing/model.ts'
import type { SheetInput } from '#drawing/sheet/sheetInput.ts'
import { fitText, textMark, textWidth } from '#drawing/text.ts'
import { warningSign } from '#drawing/warningSign.ts'

/** Stands on every sheet, whatever is drawn. */
export const CAUTION_LINES = [
  'Preliminary design. Local codes govern; structure and fire separation need licensed professionals.',
  'Predicted, each with its 95 % likely range; doors, windows, leaks, ventilation and flanking are not in these figures.',
] as const

/** The second of them where margins stand on the sheet, which count what a surface's rating does not. */
export const MARGINS_LINE =
  'Predicted, each with its 95 % likely range; a rating is of one surface alone, a margin counts openings, leaks, ducts and flanking too.'

/** Height of the strip at the foot of a sheet, mm. */
export const TITLE_HEIGHT = 24

/** The foot of the sheet: the two standing cautions, then the title block in one row. */
export function titleStrip(input: SheetInput, scale: string, area: Box): Mark[] {
  const { x, y, width } = area
  const size = 2.5
  const line = (top: number, colour: 'ink' | 'line', pen: number): Mark => ({
    kind: 'lines',
    role: 'frame',
    runs: [[x, top, x + width, top]],
    stroke: { colour, width: pen },
  })
  const marks: Mark[] = [...cautionLines(linesOn(input), x, y + size * 1.5, width, size), line(y + 9.6, 'ink', 0.35)]
  const cells = cellsOf(input, scale)
  const wide = cells.map(({ label, value }) =>
    Math.min(Math.max(textWidth(label, 2, 400), textWidth(value, size, 600)) + 7, width * 0.2),
  )
  let right = x + width
  for (let index = cells.length - 1; index >= 0; index--) {
    const cell = cells[index]!
    const left = right - wide[index]!
    const value = fitText(cell.value, wide[index]! - 3, size, 600)
    marks.push(
      textMark(cell.label, left + 3, y + 13.6, { size: 2, colour: 'soft', role: 'title' }),
      textMark(value, left + 3, y + 17.8, { size, weight: 600, role: 'title' }),
      {
        kind: 'lines',
        role: 'frame',
        runs: [[left, y + 11.2, left, y + 19.4]],
        stroke: { colour: 'line', width: 0.18 },
      },
    )
    right = left
  }
  const room = right - x - 4
  const name = fitText(input.projectName, room, 5, 600)
  marks.push(textMark(name, x, y + 15.4, { size: 5, weight: 600, role: 'title' }))
  if (input.note !== '') {
    marks.push(textMark(fitText(input.note, room, size, 400), x, y + 20, { size, colour: 'soft', role: 'title' }))
  }
  return marks
}

function linesOn({ heard }: SheetInput): readonly [string, string] {
  return heard && heard.receivers.length > 0 ? [CAUTION_LINES[0], MARGINS_LINE] : CAUTION_LINES
}

/** Side by side where both fit, else one under the other. */
function cautionLines(
  lines: readonly [string, string],
  x: number,
  baseline: number,
  width: number,
  size: number,
): Mark[] {
  const gap = size * 1.5
  const widths = lines.map((text) => textWidth(text, size, 600) + gap)
  const beside = widths[0]! + widths[1]! + 2 * gap <= width
  return lines.flatMap((text, index) => {
    const left = x + (beside && index === 1 ? widths[0]! + 2 * gap : 0)
    const down = baseline + (!beside && index === 1 ? size * 1.4 : 0)
    const style = { size, weight: 600, colour: 'warn', role: 'caution' } as const
    return [...warningSign(left, down, size * 0.95, 'caution'), textMark(text, left + gap, down, style)]
  })
}

function cellsOf({ room, result, date }: SheetInput, scale: string): { label: string; value: string }[] {
  return [
    { label: 'Room', value: room.name },
    { label: 'Scheme', value: result.name },
    { label: 'Scale', value: scale },
    ...(date ? [{ label: 'Date', value: date }] : []),
  ].filter(({ value }) => value !== '')
}
