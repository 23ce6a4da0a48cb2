/** What stands in one cell of a table; null: empty. */
export type Cell = string | number | null

/** Rows as CSV for a spreadsheet, numbers unrounded. */
export function toCsv(rows: readonly (readonly Cell[])[]): string {
  return `${rows.map((row) => row.map(cellText).join(',')).join('\r\n')}\r\n`
}

/** Quotes where needed; a leading = + - @ in text is quoted away so that no spreadsheet runs it. */
function cellText(cell: Cell): string {
  if (cell === null) return ''
  if (typeof cell === 'number') return String(cell)
  const safe = /^[=+\-@\t]/.test(cell) ? `'${cell}` : cell
  return /[",\r\n]/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe
}
