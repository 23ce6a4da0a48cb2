import { sourceWords } from '#analysis/published.ts'
import { rowWords } from '#assemblies/published/describe.ts'
import { type PublishedRow, publishedRows, sourceOf } from '#assemblies/published/rows.ts'

/** A published row a prediction leans on, as the reader should know it. */
export interface PrintedRow {
  /** The build-up as the table tells it. */
  readonly description: string
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
    description: rowWords(row),
    where: row.where ?? null,
    table: sourceWords({ source: sourceOf({ ...row, where: undefined }) }),
  }
}
