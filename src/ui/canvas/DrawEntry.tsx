import { type KeyboardEvent, type RefObject, useEffect, useRef, useState } from 'react'
import { arrowDirection, directionName, parseDirection, stepFrom } from '#ui/canvas/direction.ts'
import type { OutlineDrawing } from '#ui/canvas/useOutlineDrawing.ts'
import type { PlanFrame } from '#ui/canvas/usePlanFrame.ts'
import { EntryField } from '#ui/dialogs/EntryField.tsx'
import { bothReadings, readLength } from '#ui/fields/readLength.ts'
import { useDocument } from '#ui/session.ts'
import { useDraw, useShell } from '#ui/shell.ts'

interface Props {
  readonly outline: OutlineDrawing
  readonly view: PlanFrame
}

/** The outline typed wall by wall: a length, a direction, and the next corner stands. */
export function DrawEntry({ outline, view }: Props) {
  const { draw } = useShell()
  const lengthField = useRef<HTMLInputElement>(null)
  const points = useDraw((state) => state.points)
  const entry = useEntry(view)
  useFocusOnFineScreens(lengthField)

  const add = () => {
    if (entry.add()) lengthField.current?.focus()
  }
  const press = (event: KeyboardEvent<HTMLInputElement>, isEmpty: boolean) => {
    const nativeEvent = event.nativeEvent
    if (event.key === 'Enter' && isEmpty && points.length > 0) outline.close()
    else if (event.key === 'Enter') add()
    else if (event.key === 'Backspace' && isEmpty) draw.takeBack()
    else if (event.key === 'Escape') outline.leave()
    else return
    nativeEvent.stopPropagation()
    event.preventDefault()
  }
  return (
    <fieldset className="draw-entry">
      <legend className="visually-hidden">The next wall, typed</legend>
      <EntryField
        label={`Length of wall ${Math.max(points.length, 1)}`}
        name="draw-length"
        text={entry.length}
        hint={entry.lengthReading}
        error={entry.problem?.field === 'length' ? entry.problem.text : null}
        inputRef={lengthField}
        onText={entry.setLength}
        onKeyDown={(event) => press(event, entry.length.trim() === '')}
      />
      <EntryField
        label="Direction"
        name="draw-direction"
        text={entry.direction}
        hint={entry.directionReading}
        error={entry.problem?.field === 'direction' ? entry.problem.text : null}
        onText={entry.setDirection}
        onKeyDown={(event) => {
          const word = arrowDirection(event.key)
          if (word !== null) {
            event.preventDefault()
            entry.setDirection(word)
          } else press(event, false)
        }}
      />
      <div className="verbs">
        <button type="button" className="action" onClick={add}>
          Add corner
        </button>
        <button type="button" className="verb" disabled={points.length < 3} onClick={outline.close}>
          Close outline
        </button>
        <button type="button" className="verb" disabled={points.length === 0} onClick={draw.takeBack}>
          Take back
        </button>
        <button type="button" className="verb" onClick={outline.leave}>
          Leave
        </button>
        <span className="quiet" role="status">
          {points.length === 1 ? '1 corner' : `${points.length} corners`}
        </span>
      </div>
    </fieldset>
  )
}

type Problem = { readonly field: 'length' | 'direction'; readonly text: string }

/** What is typed, how it is read, and the corner it adds. */
function useEntry(view: PlanFrame) {
  const { draw } = useShell()
  const projectUnits = useDocument((state) => state.project.units)
  const units = useDraw((state) => state.newProject?.units) ?? projectUnits
  const [length, setLength] = useState('')
  const [direction, setDirection] = useState('right')
  const [problem, setProblem] = useState<Problem | null>(null)
  const readLengthNow = () => readLength(length, units, { leastMm: 0, moreThanLeast: true })
  const lengthRead = readLengthNow()
  const directionRead = parseDirection(direction)
  return {
    length,
    direction,
    problem,
    lengthReading: lengthRead.ok ? bothReadings(lengthRead.value, units) : 'as 12\' 6", 3.81 m or 3810 mm',
    directionReading: directionRead.ok ? directionName(directionRead.value) : 'right, up, left, down, degrees',
    setLength: (text: string) => {
      setLength(text)
      setProblem(null)
    },
    setDirection: (text: string) => {
      setDirection(text)
      setProblem(null)
    },
    /** True when a corner was added. */
    add: (): boolean => {
      const typed = readLengthNow()
      if (!typed.ok) setProblem({ field: 'length', text: typed.error })
      else if (!directionRead.ok) setProblem({ field: 'direction', text: directionRead.error })
      if (!typed.ok || !directionRead.ok) return false
      const { points } = draw.store.getState()
      const from = points.at(-1) ?? ([0, 0] as const)
      if (points.length === 0) draw.add(from)
      draw.add(stepFrom(from, typed.value, directionRead.value))
      view.reveal(draw.store.getState().points)
      setLength('')
      setProblem(null)
      return true
    },
  }
}

/** With a mouse at hand the length can be typed at once; on a phone the keyboard would cover the plan unasked. */
function useFocusOnFineScreens(field: RefObject<HTMLInputElement | null>): void {
  useEffect(() => {
    if (window.matchMedia('(pointer: fine)').matches) field.current?.focus()
  }, [field])
}
