import { publishedStc } from '#analysis/published.ts'
import type { SurfaceResult } from '#analysis/results.ts'
import { AS_IS } from '#assemblies/assembly.ts'
import type { Mark } from '#drawing/model.ts'
import { LINE_HEIGHT, minusSign, textMark, textWidth, wrapText } from '#drawing/text.ts'
import { formatLength } from '#units/format.ts'
import type { LengthUnit } from '#units/quantity.ts'

/** Surfaces that are built alike, as one line of the list. */
interface Entry {
  readonly surfaces: string
  readonly built: string
  /** Each in one line, or in the two or three it may be broken into. */
  readonly cells: readonly (readonly string[])[]
}

/** Where the columns of a table stand, and what stands in them. */
interface Columns {
  readonly cellsOf: (entry: Entry) => readonly (readonly string[])[]
  readonly first: number
  readonly built: number
  /** Right edges of the columns of figures; the last is the table's own. */
  readonly rights: readonly number[]
}

/** A table ready to be put anywhere. */
export interface Table {
  readonly height: number
  readonly marks: (x: number, y: number) => Mark[]
}

/** Heads of the columns of figures, in two lines: a head must not make its column wider than its figures need. */
const HEADS = [
  ['From finished', 'face'],
  ['From', 'structure'],
  ['', 'STC'],
  ['Rw', '(C; Ctr)'],
] as const
const NAME_SHARE = 0.2
/** Below this share of the width for the words, the figures are set in two lines. */
const WORDS_SHARE = 0.36

/** The assembly list: which surfaces, what is built, its depths and its predicted ratings. */
export function scheduleTable(
  surfaces: readonly SurfaceResult[],
  units: LengthUnit,
  width: number,
  size: number,
): Table {
  const entries = entriesOf(surfaces, units)
  const gap = size * GAP
  const { cellsOf, first, built, rights } = columnsOf(entries, width, size)
  const rows = entries.map((entry) => ({
    names: wrapText(entry.surfaces, first - gap + 1e-6, size, 600),
    lines: wrapText(entry.built, built, size, 400),
    cells: cellsOf(entry),
  }))
  const line = size * LINE_HEIGHT
  const padding = size * 0.7
  const heights = rows.map(
    ({ names, lines, cells }) =>
      Math.max(names.length, lines.length, ...cells.map((cell) => cell.length)) * line + padding,
  )
  const headHeight = 2 * line + padding
  const height = headHeight + heights.reduce((sum, row) => sum + row, 0)
  return {
    height,
    marks: (x, y) => {
      const common = { size, role: 'table' } as const
      const marks = headMarks(x, y + size, first, rights, size)
      marks.push(rule(x, y + headHeight - padding * 0.75, width, size, 'ink'))
      let top = y + headHeight
      rows.forEach(({ names, lines, cells }, index) => {
        const at = (row: number): number => top + size * 0.75 + row * line
        marks.push(
          ...names.map((text, row) => textMark(text, x, at(row), { ...common, weight: 600 })),
          ...lines.map((text, row) => textMark(text, x + first, at(row), common)),
          ...cells.flatMap((cell, column) =>
            cell.map((text, row) => textMark(text, x + rights[column]!, at(row), { ...common, anchor: 'end' })),
          ),
        )
        top += heights[index]!
        marks.push(rule(x, top - padding * 0.75, width, size, 'line'))
      })
      return marks
    },
  }
}

/** Free space before each column of figures, over the font size. */
const GAP = 1.6

function columnsOf(entries: readonly Entry[], width: number, size: number): Columns {
  const gap = size * GAP
  const names = Math.max(...entries.map((entry) => textWidth(entry.surfaces, size, 600)))
  const first = Math.min(width * NAME_SHARE, names + gap)
  const inOne = ({ cells }: Entry): string[][] => cells.map((parts) => [parts.join(' ')])
  const inTwo = ({ cells }: Entry): Entry['cells'] => cells
  const widthsOf = (cellsOf: Columns['cellsOf']): number[] => {
    const cells = entries.map(cellsOf)
    return HEADS.map((head, index) =>
      Math.max(...[head, ...cells.map((row) => row[index]!)].flat().map((text) => textWidth(text, size, 400) + gap)),
    )
  }
  const whole = widthsOf(inOne)
  const fits = width - first - sum(whole) >= width * WORDS_SHARE
  const widths = fits ? whole : widthsOf(inTwo)
  return {
    cellsOf: fits ? inOne : inTwo,
    first,
    built: Math.max(0, width - first - sum(widths)),
    rights: widths.map((_, index) => width - sum(widths.slice(index + 1))),
  }
}

function sum(values: readonly number[]): number {
  return values.reduce((total, value) => total + value, 0)
}

/** The heads, those of one line level with the second line of the others. */
function headMarks(x: number, baseline: number, first: number, rights: readonly number[], size: number): Mark[] {
  const style = { size, role: 'table', colour: 'soft' } as const
  const second = baseline + size * LINE_HEIGHT
  return [
    textMark('Surface', x, second, style),
    textMark('What is built', x + first, second, style),
    ...HEADS.flatMap((lines, column) =>
      lines.map((text, row) =>
        textMark(text, x + rights[column]!, row === 0 ? baseline : second, { ...style, anchor: 'end' }),
      ),
    ).filter(({ text }) => text !== ''),
  ]
}

/** A thin line across a table. */
export function rule(x: number, y: number, width: number, size: number, colour: 'ink' | 'line'): Mark {
  return { kind: 'lines', role: 'table', runs: [[x, y, x + width, y]], stroke: { colour, width: size * 0.06 } }
}

function entriesOf(surfaces: readonly SurfaceResult[], units: LengthUnit): Entry[] {
  const groups = new Map<string, { labels: SurfaceResult[]; built: string; cells: string[][] }>()
  for (const surface of surfaces) {
    const built = builtText(surface)
    const cells = [
      [minusSign(formatLength(surface.depthFromFaceMm, units))],
      [minusSign(formatLength(surface.depthFromStructureMm, units))],
      ...ratingCells(surface),
    ]
    const key = [surface.kind, built, ...cells].join('\n')
    const group = groups.get(key)
    if (group) group.labels.push(surface)
    else groups.set(key, { labels: [surface], built, cells })
  }
  return [...groups.values()].map(({ labels, built, cells }) => ({ surfaces: joinLabels(labels), built, cells }))
}

function builtText({ assembly, assemblyName, removeLining, hasLining }: SurfaceResult): string {
  if (assembly === AS_IS) return removeLining ? 'Existing lining removed, nothing built' : 'As it stands'
  if (removeLining) return `${assemblyName}; existing lining removed`
  return hasLining ? `${assemblyName}; over the existing lining` : assemblyName
}

function ratingCells({ rating }: SurfaceResult): [string[], string[]] {
  if (rating === null) return [['not rated'], ['not rated']]
  const published = publishedStc(rating.published)
  // Its source stands in full among the sentences of the sheet.
  const printed = published ? [`published ${published.stc}`] : []
  const terms = `(${minusSign(String(rating.c))}; ${minusSign(String(rating.ctr))})`
  return [
    [`${rating.stc},`, `likely ${rating.likely[0]}–${rating.likely[1]}${published ? ';' : ''}`, ...printed],
    [String(rating.rw), terms],
  ]
}

/** Wall 1, Wall 2, Wall 3 and the floor: Walls 1–3, Floor. */
export function joinLabels(surfaces: readonly SurfaceResult[]): string {
  const walls = surfaces.filter(({ kind }) => kind === 'wall')
  const others = surfaces.filter(({ kind }) => kind !== 'wall').map(({ label }) => label)
  if (walls.length < 2) return [...walls.map(({ label }) => label), ...others].join(', ')
  const runs: [number, number][] = []
  for (const value of walls.map(({ label }) => Number(label.replace(/\D/g, '')))) {
    const last = runs[runs.length - 1]
    if (last && value === last[1] + 1) last[1] = value
    else runs.push([value, value])
  }
  const numbers = runs.flatMap(([from, to]) => {
    if (to - from > 1) return [`${from}–${to}`]
    return from === to ? [`${from}`] : [`${from}`, `${to}`]
  })
  return [`Walls ${numbers.join(', ')}`, ...others].join(', ')
}
