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
  readonly cells: readonly string[]
}

/** A table ready to be put anywhere. */
export interface Table {
  readonly height: number
  readonly marks: (x: number, y: number) => Mark[]
}

const HEADS = ['From finished face', 'From structure', 'STC', 'Rw (C; Ctr)']

/** The assembly list: which surfaces, what is built, its depths and its predicted ratings. */
export function scheduleTable(
  surfaces: readonly SurfaceResult[],
  units: LengthUnit,
  width: number,
  size: number,
): Table {
  const entries = entriesOf(surfaces, units)
  const gap = size * 1.6
  const columns = HEADS.map((head, index) =>
    Math.max(textWidth(head, size, 400), ...entries.map(({ cells }) => textWidth(cells[index]!, size, 400))),
  )
  const fixed = columns.reduce((sum, column) => sum + column + gap, 0)
  const first = Math.min(width * 0.24, Math.max(...entries.map((entry) => textWidth(entry.surfaces, size, 600))) + gap)
  const built = Math.max(width - fixed - first, width * 0.2)
  const rows = entries.map((entry) => ({
    entry,
    names: wrapText(entry.surfaces, first - gap + 1e-6, size, 600),
    lines: wrapText(entry.built, built - gap * 0.3, size, 400),
  }))
  const line = size * LINE_HEIGHT
  const padding = size * 0.7
  const heights = rows.map(({ names, lines }) => Math.max(names.length, lines.length) * line + padding)
  const height = line + padding + heights.reduce((sum, row) => sum + row, 0)
  const rights = columns.map(
    (_, index) => first + built + columns.slice(0, index + 1).reduce((sum, column) => sum + column + gap, 0),
  )
  return {
    height,
    marks: (x, y) => {
      const common = { size, role: 'table' } as const
      const head = { ...common, colour: 'soft' } as const
      const baseline = y + size
      const marks: Mark[] = [
        textMark('Surface', x, baseline, head),
        textMark('What is built', x + first, baseline, head),
        ...HEADS.map((text, index) => textMark(text, x + rights[index]!, baseline, { ...head, anchor: 'end' })),
        rule(x, y + line + padding * 0.25, width, size, 'ink'),
      ]
      let top = y + line + padding
      rows.forEach(({ entry, names, lines }, index) => {
        const at = (row: number): number => top + size * 0.75 + row * line
        marks.push(
          ...names.map((text, row) => textMark(text, x, at(row), { ...common, weight: 600 })),
          ...lines.map((text, row) => textMark(text, x + first, at(row), common)),
          ...entry.cells.map((text, cell) => textMark(text, x + rights[cell]!, at(0), { ...common, anchor: 'end' })),
        )
        top += heights[index]!
        marks.push(rule(x, top - padding * 0.75, width, size, 'line'))
      })
      return marks
    },
  }
}

/** A thin line across a table. */
export function rule(x: number, y: number, width: number, size: number, colour: 'ink' | 'line'): Mark {
  return { kind: 'lines', role: 'table', runs: [[x, y, x + width, y]], stroke: { colour, width: size * 0.06 } }
}

function entriesOf(surfaces: readonly SurfaceResult[], units: LengthUnit): Entry[] {
  const groups = new Map<string, { labels: SurfaceResult[]; built: string; cells: string[] }>()
  for (const surface of surfaces) {
    const built = builtText(surface)
    const cells = [
      minusSign(formatLength(surface.depthFromFaceMm, units)),
      minusSign(formatLength(surface.depthFromStructureMm, units)),
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

function ratingCells({ rating }: SurfaceResult): [string, string] {
  if (rating === null) return ['not rated', 'not rated']
  const stc = `${rating.stc}, likely ${rating.likely[0]}–${rating.likely[1]}`
  return [stc, `${rating.rw} (${minusSign(String(rating.c))}; ${minusSign(String(rating.ctr))})`]
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
