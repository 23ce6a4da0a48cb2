import type { Anchor } from '#acoustics/anchor/anchor.ts'
import { printedRow } from '#ui/panels/bench/how/printed.ts'

/** The published rows a prediction leans on, most alike first, and the tables they stand in. */
export function Neighbours({ anchor }: { readonly anchor: Anchor }) {
  const { isNear, neighbours } = anchor
  if (neighbours.length === 0) return null
  const rows = neighbours.map((neighbour) => ({ ...neighbour, printed: printedRow(neighbour.id) }))
  const tables = [...new Set(rows.flatMap(({ printed }) => printed?.table ?? []))]
  const lead = isNear
    ? 'It leans most on these published rows.'
    : 'The least unlike of what is in print, too far to lean on.'
  return (
    <>
      <p>{lead} Likeness: 1 the same build-up, 0 nothing in common.</p>
      <ul className="how-rows">
        {rows.map(({ id, stc, likeness, printed }) => (
          <li key={id}>
            <strong>
              {id}: published {stc}
            </strong>
            , likeness {likeness.toFixed(2)}
            {printed?.description && <span className="how-under">{printed.description}</span>}
            {tables.length > 1 && printed && (
              <span className="how-under">
                Table {tables.indexOf(printed.table) + 1}
                {printed.where && `, ${printed.where}`}
              </span>
            )}
          </li>
        ))}
      </ul>
      {tables.map((table, index) => (
        <p key={table} className="how-under">
          {tables.length > 1 ? `Table ${index + 1}: ` : 'From: '}
          {table}
        </p>
      ))}
    </>
  )
}
