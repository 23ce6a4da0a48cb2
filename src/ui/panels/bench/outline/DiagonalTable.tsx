import { useState } from 'react'
import type { Diagonal } from '#analysis/room.ts'
import { deleteDiagonal, setDiagonal, squareToDiagonal } from '#state/commands/diagonals.ts'
import { ChoiceField } from '#ui/fields/ChoiceField.tsx'
import { LengthField } from '#ui/fields/LengthField.tsx'
import { diagonalFacts, spannedWords } from '#ui/panels/bench/outline/spanned.ts'
import { Heads, LengthCell } from '#ui/panels/bench/tables/rows.tsx'
import { useRun } from '#ui/panels/bench/useBench.ts'
import { signed } from '#ui/panels/words.ts'
import { useRoom, useSession, useShownProject } from '#ui/session.ts'
import { cornerLabel } from '#ui/words.ts'
import { formatThickness } from '#units/format.ts'

/** Diagonals measured across the room, and how far the plan is out of square. */
export function DiagonalTable() {
  const room = useRoom()
  return (
    <div className="outline-diagonals">
      {room.diagonals.length > 0 && (
        <table className="figures cards">
          <caption>Diagonals, measured against the plan</caption>
          <Heads heads={['Between corners', 'Measured', 'Drawn', 'Difference', 'Out of square']} />
          <tbody>
            {room.diagonals.map((diagonal) => (
              <DiagonalRow key={diagonal.id} diagonal={diagonal} />
            ))}
          </tbody>
        </table>
      )}
      <AddDiagonal />
    </div>
  )
}

function DiagonalRow({ diagonal }: { readonly diagonal: Diagonal }) {
  const room = useRoom()
  const { units } = useShownProject()
  const { document } = useSession()
  const run = useRun()
  const facts = diagonalFacts(room, diagonal)
  const between = [diagonal.from, diagonal.to].map((id) => cornerLabel(room, id).replace('Corner ', '')).join(' and ')
  const length = (mm: number) => formatThickness(mm, units)
  return (
    <tr>
      <th scope="row">{between}</th>
      <LengthCell
        head="Measured"
        name={`diagonal-${diagonal.id}`}
        label={`Measured between corners ${between}`}
        value={diagonal.measuredMm}
        leastMm={0}
        moreThanLeast
        onCommit={(measured) => run(setDiagonal(room.id, diagonal.from, diagonal.to, measured))}
      />
      <td className="number" data-label="Drawn">
        {facts && length(facts.drawnMm)}
      </td>
      <td className="number" data-label="Difference">
        {facts && (signed(facts.differenceMm, length) ?? 'none')}
      </td>
      <td className="words" data-label="Out of square">
        {facts?.corners.map(({ number, is }) => (
          <span key={number} className="line">
            {spannedWords(number, is, units)}{' '}
          </span>
        ))}
        {facts?.corners.length === 0 && 'It spans more than two walls.'}
      </td>
      <td data-label="" className="row-verbs">
        {room.corners.length === 4 && (
          <button
            type="button"
            className="row-button"
            disabled={facts !== null && Math.abs(facts.differenceMm) < SAME_MM}
            onClick={() => document.run(squareToDiagonal(room.id, diagonal.id))}
          >
            Square the room to it
          </button>
        )}
        <button type="button" className="row-button" onClick={() => document.run(deleteDiagonal(room.id, diagonal.id))}>
          Delete<span className="visually-hidden"> the diagonal between corners {between}</span>
        </button>
      </td>
    </tr>
  )
}

/** A plan this near to what was measured agrees with it, mm. */
const SAME_MM = 0.01

function AddDiagonal() {
  const room = useRoom()
  const { units } = useShownProject()
  const run = useRun()
  const [ends, setEnds] = useState<readonly [string | null, string | null]>([null, null])
  const has = (id: string | null) => room.corners.some((corner) => corner.id === id)
  const from = has(ends[0]) ? ends[0] : (room.corners[0]?.id ?? null)
  const to = has(ends[1]) ? ends[1] : (room.corners[2]?.id ?? null)
  if (from === null || to === null) return null
  const drawn = diagonalFacts(room, { from, to, measuredMm: 0 })?.drawnMm ?? 0
  const options = room.corners.map(({ id }) => ({ value: id, text: cornerLabel(room, id) }))
  return (
    <fieldset className="table-verbs" aria-label="Measure a diagonal">
      <ChoiceField
        name="diagonal-from"
        label="From"
        value={from}
        options={options}
        onChoose={(id) => setEnds([id, to])}
      />
      <ChoiceField name="diagonal-to" label="to" value={to} options={options} onChoose={(id) => setEnds([from, id])} />
      <LengthField
        key={`${from} ${to}`}
        name="diagonal-measured"
        label="measured across"
        compact
        value={drawn}
        unit={units}
        leastMm={0}
        moreThanLeast
        onCommit={(measured) =>
          from === to
            ? 'A diagonal runs between two different corners; choose another one.'
            : run(setDiagonal(room.id, from, to, measured))
        }
      />
      <button
        type="button"
        className="row-button"
        disabled={from === to}
        onClick={() => run(setDiagonal(room.id, from, to, drawn))}
      >
        Add as drawn
      </button>
    </fieldset>
  )
}
