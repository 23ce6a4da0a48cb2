import type { ReactNode } from 'react'
import type { PlanPoint } from '#analysis/room.ts'
import type { Command } from '#state/command.ts'
import { moveThingCorner } from '#state/commands/things.ts'
import type { Thing } from '#state/view.ts'
import { LengthField } from '#ui/fields/LengthField.tsx'
import { TextField } from '#ui/fields/TextField.tsx'
import type { LengthEntry } from '#ui/panels/bench/tables/entries.ts'
import { LengthCell, Problems } from '#ui/panels/bench/tables/rows.tsx'
import { useRun } from '#ui/panels/bench/useBench.ts'
import { DetailRows } from '#ui/panels/ledger/LedgerLine.tsx'
import { useRoom, useShownProject } from '#ui/session.ts'

interface ThingFormProps {
  readonly name: string
  /** The fields. */
  readonly children: ReactNode
  /** Beside them: what the numbers lead to. */
  readonly beside?: ReactNode
}

/** All numbers of one thing, and beside them what they lead to. */
export function ThingForm({ name, children, beside }: ThingFormProps) {
  return (
    <div className="thing-form">
      <form className="stands" aria-label={name} onSubmit={(event) => event.preventDefault()}>
        {children}
      </form>
      {beside !== undefined && <div className="thing-beside">{beside}</div>}
    </div>
  )
}

interface NameProps {
  readonly id: string
  readonly value: string
  readonly command: (name: string) => Command
}

export function NameField({ id, value, command }: NameProps) {
  const run = useRun()
  return <TextField name={`${id}-name`} label="Name" value={value} onCommit={(name) => run(command(name))} />
}

interface EntriesProps {
  readonly id: string
  readonly entries: readonly LengthEntry[]
}

/** Lengths of the thing, each with its reading in both units. */
export function EntryFields({ id, entries }: EntriesProps) {
  const { units } = useShownProject()
  const run = useRun()
  return (
    <>
      {entries.map(({ key, label, command, value, leastMm, moreThanLeast }) => (
        <LengthField
          key={key}
          name={`${id}-${key}`}
          label={label}
          value={value}
          unit={units}
          leastMm={leastMm}
          moreThanLeast={moreThanLeast}
          onCommit={(typed) => run(command(typed))}
        />
      ))}
    </>
  )
}

interface FactsProps {
  readonly title: string
  readonly rows: readonly (readonly [string, string])[]
  readonly problems: readonly string[]
  /** What must be settled whatever the numbers say. */
  readonly caution?: string | undefined
}

/** What the numbers lead to: what is wrong, figures, and what must be settled with whom. */
export function Facts({ title, rows, problems, caution }: FactsProps) {
  return (
    <>
      <Problems texts={problems} />
      {rows.length > 0 && (
        <>
          <h3 className="curve-title">{title}</h3>
          <DetailRows caption={title} rows={rows} />
        </>
      )}
      {caution !== undefined && <Problems texts={[caution]} />}
    </>
  )
}

interface CornersProps {
  readonly thing: Thing
  readonly corners: readonly PlanPoint[]
}

/** The corners of a shape, each by number. */
export function ShapeCorners({ thing, corners }: CornersProps) {
  const room = useRoom()
  const run = useRun()
  return (
    <table className="figures shape-corners">
      <caption>Corners, from the plan's origin: x to the right, y up</caption>
      <thead>
        <tr>
          <th scope="col">Corner</th>
          <th scope="col">x</th>
          <th scope="col">y</th>
        </tr>
      </thead>
      <tbody>
        {corners.map(({ xMm, yMm }, index) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: a corner of a thing is its place in the list
          <tr key={index}>
            <th scope="row">{index + 1}</th>
            <LengthCell
              head="x"
              name={`${thing.id}-corner-${index + 1}-x`}
              label={`Corner ${index + 1} of it, x`}
              value={xMm}
              onCommit={(x) => run(moveThingCorner(room.id, thing, index, x, yMm))}
            />
            <LengthCell
              head="y"
              name={`${thing.id}-corner-${index + 1}-y`}
              label={`Corner ${index + 1} of it, y`}
              value={yMm}
              onCommit={(y) => run(moveThingCorner(room.id, thing, index, xMm, y))}
            />
          </tr>
        ))}
      </tbody>
    </table>
  )
}
