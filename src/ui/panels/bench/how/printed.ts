import { sourceWords } from '#analysis/published.ts'
import { type PublishedRow, publishedRows, sourceOf, type TabledBuild } from '#assemblies/published/rows.ts'

/** A published row a prediction leans on, as the reader should know it. */
export interface PrintedRow {
  /** The build-up as the table tells it; null: the row is not at hand. */
  readonly description: string | null
  readonly source: string | null
}

let byId: ReadonlyMap<string, PublishedRow> | undefined

/** What stands in print under an id. */
export function printedRow(id: string): PrintedRow {
  byId ??= new Map(publishedRows().map((row) => [row.id, row]))
  const row = byId.get(id)
  if (row === undefined) return { description: null, source: null }
  return { description: descriptionOf(row), source: sourceWords({ source: sourceOf(row) }) }
}

function descriptionOf({ description, build }: PublishedRow): string | null {
  return description ?? (build ? buildWords(build) : null)
}

/** Leaf, framing, how they are tied, wool, leaf: in the table's order. */
function buildWords({ leaf1, framing, connection, leaf2, studSpacingMm, absorberMm }: TabledBuild): string {
  const spacing = studSpacingMm.length > 0 ? ` at ${orWords(studSpacingMm)} mm` : ''
  const tie = connection === 'direct' ? '' : `, ${connection.replace('+', ' and ')}`
  const wool = absorberMm.some((mm) => mm > 0) ? `, ${orWords(absorberMm)} mm of wool` : ', no wool'
  return `${leafWords(leaf1)}, ${framing}${spacing}${tie}${wool}, ${leafWords(leaf2)}`
}

/** 2x15.9gypX: 2 x 15.9 mm gypsum board X; anything else as printed. */
function leafWords(text: string): string {
  const [, count, thickness, kind] = /^(\d)x([\d.]+)gyp([XR])$/.exec(text) ?? []
  if (count === undefined) return text
  return `${count} x ${thickness} mm gypsum board${kind === 'X' ? ' X' : ''}`
}

function orWords(values: readonly number[]): string {
  return values.join(' or ')
}
