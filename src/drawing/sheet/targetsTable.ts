import { OCTAVES_HZ } from '#acoustics/bands.ts'
import { decidingWords, limitWords, marginInTable, notInMargin } from '#analysis/paths/answerWords.ts'
import { BEAT_DB } from '#analysis/paths/limits.ts'
import type { Mark } from '#drawing/model.ts'
import type { SheetReceiver } from '#drawing/sheet/heard.ts'
import { rule, type Table } from '#drawing/sheet/schedule.ts'
import { LINE_HEIGHT, textMark, textWidth, wrapText } from '#drawing/text.ts'
import { fixed } from '#units/format.ts'
import type { Decibels } from '#units/quantity.ts'

/** Octaves, then both weighted sums. */
const HEADS = [...OCTAVES_HZ.map((hz) => `${hz} Hz`), 'dBA', 'dBC']
/** Free space before each column of figures, over the font size. */
const GAP = 1.4
const UNKNOWN = '–'

/** One line of the table: words over its whole width, or a name with its figures. */
interface Line {
  readonly texts: readonly string[]
  readonly figures: readonly string[]
  readonly weight: 400 | 600
  readonly colour: 'ink' | 'soft'
  /** A rule stands under it: the last of a receiver. */
  readonly isLast: boolean
}

/** Who hears what: margin and verdict of every receiver, and its levels by octave against its limit; null: nobody. */
export function targetsTable(receivers: readonly SheetReceiver[], width: number, size: number): Table | null {
  if (receivers.length === 0) return null
  const column = Math.max(...HEADS.map((head) => textWidth(head, size, 400))) + size * GAP
  const rights = HEADS.map((_, index) => width - (HEADS.length - 1 - index) * column)
  const names = width - HEADS.length * column
  const lines = receivers.flatMap((one) => receiverLines(one, { width, names, size }))
  const line = size * LINE_HEIGHT
  const padding = size * 0.7
  const headHeight = line + padding
  const heightOf = ({ texts, isLast }: Line): number => texts.length * line + (isLast ? padding : size * 0.1)
  return {
    height: headHeight + lines.reduce((sum, one) => sum + heightOf(one), 0),
    marks: (x, y) => {
      const marks: Mark[] = [
        ...headMarks(x, y + size, rights, size),
        rule(x, y + line + size * 0.2, width, size, 'ink'),
      ]
      let top = y + headHeight
      for (const one of lines) {
        marks.push(...lineMarks(one, x, top + size * 0.75, rights, size))
        top += heightOf(one)
        if (one.isLast) marks.push(rule(x, top - padding * 0.75, width, size, 'line'))
      }
      return marks
    },
  }
}

function headMarks(x: number, baseline: number, rights: readonly number[], size: number): Mark[] {
  const style = { size, role: 'table', colour: 'soft' } as const
  return [
    textMark('Who hears what', x, baseline, { ...style, colour: 'ink', weight: 600 }),
    ...HEADS.map((head, index) => textMark(head, x + rights[index]!, baseline, { ...style, anchor: 'end' })),
  ]
}

function lineMarks(
  { texts, figures, weight, colour }: Line,
  x: number,
  top: number,
  rights: readonly number[],
  size: number,
): Mark[] {
  const common = { size, role: 'table', weight, colour } as const
  const last = top + (texts.length - 1) * size * LINE_HEIGHT
  return [
    ...texts.map((text, down) => textMark(text, x, top + down * size * LINE_HEIGHT, common)),
    ...figures
      .map((text, index) => textMark(text, x + rights[index]!, last, { ...common, anchor: 'end' }))
      .filter(({ text }) => text !== ''),
  ]
}

interface Space {
  readonly width: number
  /** What the names beside figures may cover. */
  readonly names: number
  readonly size: number
}

function receiverLines({ receiver, source, answer }: SheetReceiver, { width, names, size }: Space): readonly Line[] {
  const wide = (text: string, weight: 400 | 600): Line => ({
    texts: wrapText(text, width, size, weight),
    figures: [],
    weight,
    colour: 'ink',
    isLast: false,
  })
  const row = (text: string, figures: readonly string[], colour: 'ink' | 'soft'): Line => ({
    texts: wrapText(text, names - size, size, 400),
    figures,
    weight: 400,
    colour,
    isLast: false,
  })
  const beat = receiver.hasBeat ? `, less ${BEAT_DB} dB for beat or tone` : ''
  const notIn = notInMargin(answer)
  const lines = [
    wide(marginLine({ receiver, source, answer }), 600),
    row(source === null ? 'No source is chosen' : source.name, [...figures(answer.sourceDb), '', ''], 'soft'),
    row('Heard there', [...figures(answer.levelsDb), figure(answer.levelA), figure(answer.levelC)], 'ink'),
    row('at most, 95 % likely', [...figures(answer.levelsHigh95Db), '', ''], 'soft'),
    row(`Limit ${limitWords(receiver.limit)}${beat}`, limitFigures({ receiver, source, answer }), 'ink'),
    ...(notIn === null ? [] : [wide(notIn, 400)]),
  ]
  return lines.map((line, index) => ({ ...line, isLast: index === lines.length - 1 }))
}

function marginLine({ receiver, answer }: SheetReceiver): string {
  if (answer.marginDb === null) return `${receiver.name}: margin not known`
  const words = [marginInTable(answer), answer.verdictWords, decidingWords(answer)].filter((text) => text !== null)
  return `${receiver.name}: ${words.join('; ')}`
}

function limitFigures({ receiver: { limit }, answer: { limitDb, limitOverallDb } }: SheetReceiver): readonly string[] {
  if (limitDb) return [...figures(limitDb), '', '']
  const overall = figure(limitOverallDb)
  return [...OCTAVES_HZ.map(() => ''), limit.kind === 'dBA' ? overall : '', limit.kind === 'dBC' ? overall : '']
}

function figures(values: readonly (Decibels | null)[]): readonly string[] {
  return OCTAVES_HZ.map((_, octave) => figure(values[octave] ?? null))
}

/** Whole: levels at a receiver are not known to tenths. */
function figure(value: Decibels | null): string {
  return value === null ? UNKNOWN : fixed(value, 0).replace('-', '−')
}
