import type { ReactNode } from 'react'
import { useKeepsKeyboard } from '#ui/useKeepsKeyboard.ts'

interface Props {
  readonly name: string
  /** To the right of the name: a share or a place. */
  readonly aside?: string | undefined
  readonly figure: string
  /** The same in the other unit, smaller. */
  readonly second?: ReactNode
  /** What it was before, and what took it. */
  readonly from: string
  /** Since the last command, with its sign; null: unchanged. */
  readonly change: string | null
  readonly cause: string
  /** Always in sight beneath the line: what can be pressed, and what must not be folded away. */
  readonly below?: ReactNode
  readonly children: ReactNode
}

/** One number a client asks first; it opens downward into where it comes from. */
export function LedgerLine({ below, ...line }: Props) {
  return (
    <>
      <FoldedLine {...line} />
      {below && <Below>{below}</Below>}
    </>
  )
}

/** A verb that goes when it is pressed leaves the keyboard here. */
function Below({ children }: { readonly children: ReactNode }) {
  const place = useKeepsKeyboard<HTMLDivElement>()
  return (
    <div ref={place} tabIndex={-1} className="ledger-below">
      {children}
    </div>
  )
}

function FoldedLine({ name, aside, figure, second, from, change, cause, children }: Omit<Props, 'below'>) {
  return (
    <details className="ledger-line" data-line={name}>
      <summary>
        <span className="ledger-name">{name}</span>
        <span className="ledger-aside">{aside}</span>
        <span className="ledger-figure">
          {figure} {second !== undefined && <span className="ledger-second">{second}</span>}
        </span>
        <span className="ledger-from">
          {from}
          {change !== null && (
            <>
              {' '}
              <span className="ledger-change">
                ({change} {cause})
              </span>
            </>
          )}
        </span>
      </summary>
      <div className="ledger-detail">{children}</div>
    </details>
  )
}

interface RowsProps {
  readonly caption: string
  readonly rows: readonly (readonly [string, string])[]
}

/** Names and figures, one under another. */
export function DetailRows({ caption, rows }: RowsProps) {
  return (
    <table className="detail-rows">
      <caption className="visually-hidden">{caption}</caption>
      <tbody>
        {rows.map(([name, figure]) => (
          <tr key={name}>
            <th scope="row">{name}</th>
            <td>{figure}</td>
          </tr>
        ))}
      </tbody>
    </table>
  )
}
