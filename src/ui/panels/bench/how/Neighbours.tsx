import type { Anchor } from '#acoustics/anchor/anchor.ts'
import { printedRow } from '#ui/panels/bench/how/printed.ts'

/** The published rows a prediction leans on, most alike first, each with its source. */
export function Neighbours({ anchor }: { readonly anchor: Anchor }) {
  const { isNear, neighbours } = anchor
  if (neighbours.length === 0) return null
  return (
    <>
      <p>
        {isNear
          ? 'It leans most on these published rows. Likeness: 1 the same build-up, 0 nothing in common.'
          : 'The least unlike of what is in print, too far to lean on. Likeness: 1 the same build-up, 0 nothing in common.'}
      </p>
      <ul className="how-rows">
        {neighbours.map(({ id, stc, likeness }) => {
          const { description, source } = printedRow(id)
          return (
            <li key={id}>
              <strong>
                {id}: published {stc}
              </strong>
              , likeness {likeness.toFixed(2)}
              {description && <span className="how-under">{description}</span>}
              {source && <span className="how-under">{source}</span>}
            </li>
          )
        })}
      </ul>
    </>
  )
}
