import { useId } from 'react'
import type { Underlay } from '#project/project.ts'
import { carryOutCalibration, leaveCalibrating } from '#ui/canvas/useCalibrate.ts'
import { EntryField } from '#ui/dialogs/EntryField.tsx'
import { FieldFrame } from '#ui/fields/FieldFrame.tsx'
import { bothReadings, isSameLength, lengthText, nudge, readLength } from '#ui/fields/readLength.ts'
import { useTyped } from '#ui/fields/useTyped.ts'
import { useDocument, useSession } from '#ui/session.ts'
import { useShell } from '#ui/shell.ts'
import { type Calibrating, wholePoint } from '#ui/trace/traceStore.ts'
import type { LengthUnit, Millimetres } from '#units/quantity.ts'
import { ok } from '#units/result.ts'

interface Props {
  readonly calibrating: Calibrating
  readonly underlay: Underlay
}

/** Two points, the distance between them, and the scale that follows. */
export function CalibrateRow({ calibrating, underlay }: Props) {
  const session = useSession()
  const shell = useShell()
  const units = useDocument((state) => state.project.units)
  const { distance, squares, refusal } = calibrating
  const carryOut = () => carryOutCalibration(session, shell, units)
  const read = readLength(distance, units, { leastMm: 0, moreThanLeast: true })
  return (
    <fieldset className="trace trace-calibrate">
      <legend className="visually-hidden">Calibrate {underlay.name}</legend>
      <EntryField
        label="Real distance between them"
        name="trace-distance"
        text={distance}
        hint={read.ok ? bothReadings(read.value, units) : 'as 12\' 6", 3.81 m or 3810 mm'}
        error={null}
        onText={(text) => shell.trace.change({ distance: text })}
        onKeyDown={(event) => {
          if (event.key === 'Enter') carryOut()
        }}
      />
      <label className="trace-squares">
        <input
          type="checkbox"
          checked={squares}
          onChange={(event) => shell.trace.change({ squares: event.target.checked })}
        />
        Turn the two level or plumb
      </label>
      <div className="verbs">
        <button type="button" className="action" onClick={carryOut}>
          Set the scale
        </button>
        <button type="button" className="verb" onClick={shell.trace.startAgain}>
          Other points
        </button>
        <button type="button" className="verb" onClick={() => leaveCalibrating(session, shell)}>
          Leave
        </button>
      </div>
      <p className="quiet trace-said" role="status">
        {pointsSaid(calibrating, units)}
      </p>
      <details className="trace-points">
        <summary>Points by numbers</summary>
        <PointFields index={0} calibrating={calibrating} units={units} />
        <PointFields index={1} calibrating={calibrating} units={units} />
      </details>
      <div role="alert" className="trace-refusal">
        {refusal !== null && (
          <p className="field-error">
            <span className="warn-sign" aria-hidden="true" />
            {refusal}
          </p>
        )}
      </div>
    </fieldset>
  )
}

function pointsSaid({ points }: Calibrating, units: LengthUnit): string {
  const [from, to] = points.map(wholePoint)
  if (!from || !to) return from ? 'one point of two' : 'no point yet'
  return `${lengthText(Math.hypot(to[0] - from[0], to[1] - from[1]), units)} apart as it lies now`
}

interface PointProps {
  readonly index: 0 | 1
  readonly calibrating: Calibrating
  readonly units: LengthUnit
}

function PointFields({ index, calibrating, units }: PointProps) {
  const { trace } = useShell()
  const [x, y] = calibrating.points[index]
  const name = index === 0 ? 'First point' : 'Second point'
  return (
    <div className="trace-point">
      <CoordinateField
        label={`${name}, right`}
        value={x}
        units={units}
        onSet={(to) => trace.setPoint(index, [to, y])}
      />
      <CoordinateField label={`${name}, up`} value={y} units={units} onSet={(to) => trace.setPoint(index, [x, to])} />
    </div>
  )
}

interface CoordinateProps {
  readonly label: string
  readonly value: Millimetres | null
  readonly units: LengthUnit
  readonly onSet: (value: Millimetres | null) => void
}

/** Where a point stands in the plan; empty until it is pressed or typed. */
function CoordinateField({ label, value, units, onSet }: CoordinateProps) {
  const id = useId()
  const typed = useTyped<Millimetres | null>({
    value,
    show: (length) => (length === null ? '' : lengthText(length, units)),
    read: (text) => (text.trim() === '' ? ok(null) : readLength(text, units)),
    isSame: (a, b) => a === b || (a !== null && b !== null && isSameLength(a, b)),
    commit: (length) => {
      onSet(length)
      return null
    },
    step: (length, up, big) => (length ?? 0) + (up ? 1 : -1) * nudge(units, big),
  })
  return (
    <FieldFrame id={id} name={id} label={label} hint={null} error={typed.error}>
      <input
        id={id}
        type="text"
        className="field-input"
        autoComplete="off"
        spellCheck={false}
        value={typed.text}
        aria-invalid={typed.error !== null}
        aria-describedby={typed.error === null ? undefined : `${id}-says`}
        onChange={(event) => typed.change(event.target.value)}
        onFocus={(event) => event.target.select()}
        onBlur={typed.leave}
        onKeyDown={typed.press}
      />
    </FieldFrame>
  )
}
