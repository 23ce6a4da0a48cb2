import { type RefObject, useEffect, useRef } from 'react'
import { misclosureOf } from '#geometry/survey.ts'
import { type ClosingRow, type ClosingWay, closingRows } from '#ui/canvas/closing.ts'
import { misclosureWords } from '#ui/canvas/drawWords.ts'
import type { OutlineDrawing } from '#ui/canvas/useOutlineDrawing.ts'
import { useDrawingUnits } from '#ui/canvas/useWallEntry.ts'
import { useDraw, useShell } from '#ui/shell.ts'
import { formatLength, formatThickness } from '#units/format.ts'
import type { LengthUnit } from '#units/quantity.ts'

const WAYS: readonly { readonly way: ClosingWay; readonly words: string; readonly means: string }[] = [
  { way: 'spread', words: 'Spread it over all walls', means: 'Each wall gives way in proportion to its length.' },
  { way: 'move', words: 'Move the last corner onto the first', means: 'Only the last wall changes.' },
  { way: 'keep', words: 'Keep it as a short wall', means: 'Nothing measured changes; one wall more closes the room.' },
]

/** A survey that does not quite meet: by how much, what can be done, and what that does to every wall before it is taken. */
export function SurveyClosing({ outline }: { readonly outline: OutlineDrawing }) {
  const { draw } = useShell()
  const units = useDrawingUnits()
  const points = useDraw((state) => state.points)
  const way = useDraw((state) => state.closing) ?? 'spread'
  const chosen = useRef<HTMLInputElement>(null)
  useFocusOnce(chosen)
  return (
    <fieldset
      className="survey-closing"
      onKeyDown={(event) => {
        if (event.key === 'Escape') draw.askToClose(null)
        else if (event.key === 'Enter' && event.target === chosen.current) outline.close()
        else return
        event.nativeEvent.stopPropagation()
        event.preventDefault()
      }}
    >
      <legend className="visually-hidden">How the survey closes</legend>
      <h2>The survey does not quite meet</h2>
      <p>{misclosureWords(misclosureOf(points), units)}</p>
      <div className="survey-ways">
        {WAYS.map((one) => (
          <label key={one.way} className="survey-way">
            <input
              ref={one.way === way ? chosen : undefined}
              type="radio"
              name="survey-closing"
              value={one.way}
              checked={one.way === way}
              onChange={() => draw.askToClose(one.way)}
            />
            <span>
              {one.words}
              <span className="quiet">{one.means}</span>
            </span>
          </label>
        ))}
      </div>
      <ClosingTable rows={closingRows(points, way)} units={units} />
      <div className="verbs survey-verbs">
        <button type="button" className="action" onClick={outline.close}>
          Close it this way
        </button>
        <button type="button" className="verb" onClick={() => draw.askToClose(null)}>
          Back to the walls
        </button>
      </div>
    </fieldset>
  )
}

interface TableProps {
  readonly rows: readonly ClosingRow[]
  readonly units: LengthUnit
}

function ClosingTable({ rows, units }: TableProps) {
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a table that scrolls has to be reached by keyboard
    <section className="survey-table" aria-label="Every wall as measured and as closed" tabIndex={0}>
      <table>
        <thead>
          <tr>
            <th scope="col">Wall</th>
            <th scope="col">As measured</th>
            <th scope="col">As closed</th>
            <th scope="col">Longer by</th>
            <th scope="col">Turned by</th>
          </tr>
        </thead>
        <tbody>
          {rows.map(({ wall, measuredMm, closedMm, turn }) => (
            <tr key={wall}>
              <th scope="row">{wall}</th>
              <td>{measuredMm === null ? 'not measured' : lengthIn(measuredMm, units)}</td>
              <td>{lengthIn(closedMm, units)}</td>
              <td>{measuredMm === null ? 'new' : signed(closedMm - measuredMm, units)}</td>
              <td>{turnText(turn)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  )
}

/** Thirty-seconds of an inch, tenths of a millimetre: finer than a tape, coarser than the sum. */
function lengthIn(mm: number, units: LengthUnit): string {
  return units === 'mm' ? formatThickness(mm, units) : formatLength(mm, units, 32)
}

function signed(mm: number, units: LengthUnit): string {
  const text = lengthIn(Math.abs(mm), units)
  if (text === lengthIn(0, units)) return '0'
  return `${mm > 0 ? '+' : '−'}${text}`
}

function turnText(turn: number): string {
  const rounded = Math.round(turn * 100) / 100
  if (rounded === 0) return '0°'
  return `${Math.abs(rounded)}° ${rounded > 0 ? 'left' : 'right'}`
}

function useFocusOnce(field: RefObject<HTMLInputElement | null>): void {
  useEffect(() => field.current?.focus(), [field])
}
