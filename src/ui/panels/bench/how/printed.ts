import { sourceWords } from '#analysis/published.ts'
import { type PublishedRow, publishedRows, sourceOf, type TabledBuild } from '#assemblies/published/rows.ts'

/** A published row a prediction leans on, as the reader should know it. */
export interface PrintedRow {
  /** The build-up as the table tells it; null: it does not. */
  readonly description: string | null
  /** Place in its table; null: not told. */
  readonly where: string | null
  /** The table, and whether it was read. */
  readonly table: string
}

let byId: ReadonlyMap<string, PublishedRow> | undefined

/** What stands in print under an id; null: the row is not at hand. */
export function printedRow(id: string): PrintedRow | null {
  byId ??= new Map(publishedRows().map((row) => [row.id, row]))
  const row = byId.get(id)
  if (row === undefined) return null
  return {
    description: row.description ?? (row.build ? buildWords(row.build) : null),
    where: row.where ?? null,
    table: sourceWords({ source: sourceOf({ ...row, where: undefined }) }),
  }
}

/** Leaf, framing, how they are tied, wool, leaf: in the table's order. */
function buildWords({ leaf1, framing, connection, leaf2, studSpacingMm, absorberMm }: TabledBuild): string {
  const spacing = studSpacingMm.length > 0 ? ` at ${orWords(studSpacingMm)} mm` : ''
  const ties = connection.split('+').filter((part) => part !== 'direct' && !framing.includes(part))
  const tie = ties.length > 0 ? `, ${ties.join(' and ')}` : ''
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
