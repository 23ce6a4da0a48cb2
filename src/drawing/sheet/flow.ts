import type { Box, Mark, Role, Weight } from '#drawing/model.ts'
import type { ColourToken } from '#drawing/palette.ts'
import { LINE_HEIGHT, textMark, wrapText } from '#drawing/text.ts'
import { warningSign } from '#drawing/warningSign.ts'

/** A piece of running text that is never split between columns. */
export interface Paragraph {
  readonly text: string
  readonly weight: Weight
  readonly colour: ColourToken
  readonly role: Role
  /** A heading stays with what follows it. */
  readonly heading: boolean
  /** A warning sign, drawn as a shape, stands before it. */
  readonly sign: boolean
}

/** A paragraph with its lines broken for a column. */
interface Broken {
  readonly paragraph: Paragraph
  readonly lines: readonly string[]
  readonly height: number
}

/**
 * Sets paragraphs into columns one after the other.
 * @returns null when they do not all fit
 */
export function flowText(paragraphs: readonly Paragraph[], columns: readonly Box[], size: number): Mark[] | null {
  const marks: Mark[] = []
  let column = 0
  let used = 0
  for (const group of groupHeadings(paragraphs)) {
    const before = used > 0 && group[0]?.heading ? size * 0.8 : 0
    const here = columns[column]
    if (here && used + before + groupHeight(group, here.width, size) > here.height + size * 0.5) {
      column++
      used = 0
    } else {
      used += before
    }
    const area = columns[column]
    if (!area || groupHeight(group, area.width, size) > area.height - used + size * 0.5) return null
    for (const paragraph of group) {
      const broken = breakLines(paragraph, area.width, size)
      marks.push(...setParagraph(broken, area.x, area.y + used, size))
      used += broken.height
    }
  }
  return marks
}

function groupHeight(group: readonly Paragraph[], width: number, size: number): number {
  return group.reduce((sum, paragraph) => sum + breakLines(paragraph, width, size).height, 0)
}

function groupHeadings(paragraphs: readonly Paragraph[]): Paragraph[][] {
  const groups: Paragraph[][] = []
  let open = false
  for (const paragraph of paragraphs) {
    const last = groups[groups.length - 1]
    if (open && last) last.push(paragraph)
    else groups.push([paragraph])
    open = paragraph.heading
  }
  return groups
}

const INDENT = 1.5

function breakLines(paragraph: Paragraph, width: number, size: number): Broken {
  const indent = paragraph.heading ? 0 : INDENT * size
  const lines = wrapText(paragraph.text, width - indent, size, paragraph.weight)
  const after = paragraph.heading ? 0.35 : 0.6
  return { paragraph, lines, height: size * (lines.length * LINE_HEIGHT + after) }
}

function setParagraph({ paragraph, lines }: Broken, x: number, top: number, size: number): Mark[] {
  const { weight, colour, role, heading } = paragraph
  const left = heading ? x : x + INDENT * size
  const marks: Mark[] = lines.map((line, index) =>
    textMark(line, left, top + size * (1 + index * LINE_HEIGHT), { size, weight, colour, role }),
  )
  if (paragraph.sign) marks.push(...warningSign(x, top + size, size, role))
  else if (!heading) {
    const y = top + size * 0.66
    const stroke = { colour: 'soft', width: size * 0.07 } as const
    marks.push({ kind: 'lines', role, runs: [[x, y, x + size * 0.7, y]], stroke })
  }
  return marks
}
