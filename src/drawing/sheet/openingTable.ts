import type { OpeningCheck } from '#analysis/results.ts'
import type { Opening, Room } from '#analysis/room.ts'
import type { Mark } from '#drawing/model.ts'
import { rule, type Table } from '#drawing/sheet/schedule.ts'
import { LINE_HEIGHT, minusSign, textMark, textWidth, wrapText } from '#drawing/text.ts'
import { formatLength } from '#units/format.ts'
import type { LengthUnit } from '#units/quantity.ts'

interface Row {
  readonly name: string
  readonly hangs: string
  readonly figures: readonly string[]
}

/** Heads of the figures, in two lines. */
const HEADS = [
  ['Reveal', 'depth'],
  ['Clear', 'width'],
  ['Head over', 'new floor'],
  ['Step at', 'threshold'],
] as const
/** Free space before each column, over the font size. */
const GAP = 1.6
const NAME_SHARE = 0.24

/**
 * The openings: where each leaf hangs, and what linings and floor leave; null where there are none.
 * @param fills  what fills an opening and how it is rated; null: nothing is said
 */
export function openingTable(
  room: Room,
  checks: readonly OpeningCheck[],
  units: LengthUnit,
  width: number,
  size: number,
  fills: (opening: Opening) => string | null = () => null,
): Table | null {
  const rows = rowsOf(room, checks, units, fills)
  if (rows.length === 0) return null
  const gap = size * GAP
  const widths = HEADS.map((head, column) =>
    Math.max(
      ...[...head, ...rows.map(({ figures }) => figures[column]!)].map((text) => textWidth(text, size, 400) + gap),
    ),
  )
  const rights = widths.map((_, index) => width - widths.slice(index + 1).reduce((sum, wide) => sum + wide, 0))
  const names = Math.min(width * NAME_SHARE, Math.max(...rows.map(({ name }) => textWidth(name, size, 600))) + gap)
  const words = Math.max(size * 4, width - names - widths.reduce((sum, wide) => sum + wide, 0))
  const set = rows.map(({ name, hangs, figures }) => ({
    names: wrapText(name, names - gap + 1e-6, size, 600),
    lines: wrapText(hangs, words, size, 400),
    figures,
  }))
  const line = size * LINE_HEIGHT
  const padding = size * 0.7
  const heights = set.map((row) => Math.max(1, row.names.length, row.lines.length) * line + padding)
  const headHeight = 2 * line + padding
  return {
    height: headHeight + heights.reduce((sum, height) => sum + height, 0),
    marks: (x, y) => {
      const common = { size, role: 'table' } as const
      const marks: Mark[] = [...headMarks(x, y + size, names, rights, size)]
      marks.push(rule(x, y + headHeight - padding * 0.75, width, size, 'ink'))
      let top = y + headHeight
      for (const [index, row] of set.entries()) {
        const at = (down: number): number => top + size * 0.75 + down * line
        marks.push(
          ...row.names.map((text, down) => textMark(text, x, at(down), { ...common, weight: 600 })),
          ...row.lines.map((text, down) => textMark(text, x + names, at(down), common)),
          ...row.figures.map((text, column) =>
            textMark(text, x + rights[column]!, at(0), { ...common, anchor: 'end' }),
          ),
        )
        top += heights[index]!
        marks.push(rule(x, top - padding * 0.75, width, size, 'line'))
      }
      return marks
    },
  }
}

function headMarks(x: number, baseline: number, names: number, rights: readonly number[], size: number): Mark[] {
  const style = { size, role: 'table', colour: 'soft' } as const
  const second = baseline + size * LINE_HEIGHT
  return [
    textMark('Opening', x, second, style),
    textMark('How it stands', x + names, second, style),
    ...HEADS.flatMap((lines, column) =>
      lines.map((text, row) =>
        textMark(text, x + rights[column]!, row === 0 ? baseline : second, { ...style, anchor: 'end' }),
      ),
    ),
  ]
}

function rowsOf(
  room: Room,
  checks: readonly OpeningCheck[],
  units: LengthUnit,
  fills: (opening: Opening) => string | null,
): readonly Row[] {
  return checks.flatMap((check): Row[] => {
    const opening = room.openings.find(({ id }) => id === check.id)
    if (!opening) return []
    const wall = room.walls.findIndex(({ id }) => id === opening.wall) + 1
    const { revealDepthMm, clearWidthMm, clearHeightMm, thresholdStepMm } = check
    const filled = fills(opening)
    const step = opening.sillMm === 0 ? minusSign(formatLength(thresholdStepMm, units)) : '–'
    const lengths = [revealDepthMm, clearWidthMm, clearHeightMm].map((length) => formatLength(length, units))
    return [
      {
        name: `${opening.name}, Wall ${wall}`,
        hangs: `${formatLength(opening.fromMm, units)} from corner ${wall}; ${stands(opening, check, units)}${filled === null ? '' : `. ${filled}`}`,
        figures: [...lengths, step],
      },
    ]
  })
}

function stands(opening: Opening, { door }: OpeningCheck, units: LengthUnit): string {
  if (!door) {
    return opening.sillMm > 0 ? `sill ${formatLength(opening.sillMm, units)} over the old floor` : 'no leaf is checked'
  }
  const each = door.leaves.map(({ hangs, opensDeg }) => `${hangs}; opens to ${Math.floor(opensDeg + 1e-6)}°`)
  const said = [...new Set(each)]
  return said.length === 1 ? said[0]! : said.map((words, index) => `${index + 1}: ${words}`).join('. ')
}
