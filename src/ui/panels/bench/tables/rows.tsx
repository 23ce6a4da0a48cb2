import { type ReactNode, useEffect, useRef } from 'react'
import type { Thing } from '#state/view.ts'
import { LengthField } from '#ui/fields/LengthField.tsx'
import type { LengthEntry } from '#ui/panels/bench/tables/entries.ts'
import { useThingVerbs } from '#ui/panels/bench/tables/useThings.ts'
import { useRun } from '#ui/panels/bench/useBench.ts'
import { useShownProject, useView } from '#ui/session.ts'
import type { Millimetres } from '#units/quantity.ts'

interface LengthCellProps {
  /** The column's head: beside the figure on a phone. */
  readonly head: string
  readonly name: string
  readonly label: string
  readonly value: Millimetres
  readonly leastMm?: number
  readonly moreThanLeast?: boolean
  readonly onCommit: (value: Millimetres) => string | null
}

/** A length in a row, editable by number. */
export function LengthCell({ head, ...field }: LengthCellProps) {
  const { units } = useShownProject()
  return (
    <td data-label={head}>
      <LengthField quiet compact unit={units} {...field} />
    </td>
  )
}

interface EntryCellsProps {
  /** Id of the thing: names its fields. */
  readonly id: string
  /** The thing as it is called, for who hears the label. */
  readonly of: string
  readonly entries: readonly LengthEntry[]
}

/** The lengths of one thing, a cell each. */
export function EntryCells({ id, of, entries }: EntryCellsProps) {
  const run = useRun()
  return (
    <>
      {entries.map(({ key, head, label, command, ...limits }) => (
        <LengthCell
          key={key}
          head={head}
          name={`${id}-${key}`}
          label={`${label}, ${of}`}
          onCommit={(value) => run(command(value))}
          {...limits}
        />
      ))}
    </>
  )
}

interface PlaceCellsProps extends Omit<EntryCellsProps, 'entries'> {
  readonly corners: number
  /** null: only its corners describe its place. */
  readonly place: readonly LengthEntry[] | null
}

/** Place and size of a shape; of one that is no rectangle along the page, how many corners its form holds. */
export function PlaceCells({ corners, place, ...of }: PlaceCellsProps) {
  if (place !== null) return <EntryCells {...of} entries={place} />
  return (
    <td className="words" data-label="Corners" colSpan={4}>
      {corners} corners, written under "All of it"
    </td>
  )
}

interface ThingRowProps {
  readonly thing: Thing
  readonly name: string
  /** How many columns the sentences below it span. */
  readonly columns: number
  /** Under the row: what the numbers lead to, or more of them. */
  readonly under?: ReactNode
  /** Full sentences under the row that warn; empty: none. */
  readonly says: readonly string[]
  readonly canDelete?: boolean
  readonly children: ReactNode
}

/** One thing of the plan as a row: marked and in sight while it is the selected one. */
export function ThingRow({ thing, name, columns, under, says, canDelete = true, children }: ThingRowProps) {
  const verbs = useThingVerbs()
  const isPicked = useView((view) => view.thing?.kind === thing.kind && view.thing.id === thing.id)
  const hasMore = under !== undefined || says.length > 0
  const row = useRef<HTMLTableRowElement>(null)
  useEffect(() => {
    if (isPicked) row.current?.scrollIntoView({ block: 'nearest', inline: 'nearest' })
  }, [isPicked])
  useEffect(() => {
    const place = row.current?.closest('section')
    // A deleted row takes its verb with it: the keyboard goes on from what can be added.
    return () => {
      if (document.activeElement === document.body) place?.querySelector<HTMLElement>('.table-verbs button')?.focus()
    }
  }, [])
  return (
    <>
      <tr ref={row} aria-current={isPicked ? 'true' : undefined} className={hasMore ? 'has-says' : undefined}>
        <th scope="row">
          <button type="button" className="row-button" onClick={() => verbs.pick(thing)}>
            {name}
          </button>
        </th>
        {children}
        <td data-label="" className="row-verbs">
          <button type="button" className="row-button" onClick={() => verbs.open(thing)}>
            All of it<span className="visually-hidden"> for {name}</span>
          </button>
          <button type="button" className="row-button" disabled={!canDelete} onClick={() => verbs.remove(thing)}>
            Delete<span className="visually-hidden"> {name}</span>
          </button>
        </td>
      </tr>
      {hasMore && (
        <tr className="row-says" aria-current={isPicked ? 'true' : undefined}>
          <td colSpan={columns}>
            {under}
            <Problems texts={says} />
          </td>
        </tr>
      )}
    </>
  )
}

/** Sentences that warn, one under another, each with its sign. */
export function Problems({ texts }: { readonly texts: readonly string[] }) {
  if (texts.length === 0) return null
  return (
    <ul className="cautions">
      {texts.map((text) => (
        <li key={text}>
          <span aria-hidden="true" className="warn-sign" />
          <span>{text}</span>
        </li>
      ))}
    </ul>
  )
}

/** The heads of a table; the last column holds its verbs. */
export function Heads({ heads }: { readonly heads: readonly string[] }) {
  return (
    <thead>
      <tr>
        {heads.map((head) => (
          <th key={head} scope="col">
            {head}
          </th>
        ))}
        <th scope="col">
          <span className="visually-hidden">Change</span>
        </th>
      </tr>
    </thead>
  )
}

interface TableVerbsProps {
  readonly label: string
  readonly children: ReactNode
}

/** What can be added to a table, in words, above it. */
export function TableVerbs({ label, children }: TableVerbsProps) {
  return (
    <fieldset className="table-verbs" aria-label={label}>
      {children}
    </fieldset>
  )
}

/** Said in place of a table that has no rows yet. */
export function NothingYet({ text }: { readonly text: string }) {
  return <p className="table-note">{text}</p>
}
