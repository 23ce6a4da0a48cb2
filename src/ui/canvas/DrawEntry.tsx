import { type FocusEvent, type KeyboardEvent, type RefObject, useEffect, useRef } from 'react'
import { returnsToFirst } from '#geometry/survey.ts'
import { DrawTargetChoice } from '#ui/canvas/DrawTargetChoice.tsx'
import { arrowDirection, DIRECTION_WORDS, parseDirection } from '#ui/canvas/direction.ts'
import { SurveyClosing } from '#ui/canvas/SurveyClosing.tsx'
import type { OutlineDrawing } from '#ui/canvas/useOutlineDrawing.ts'
import type { PlanFrame } from '#ui/canvas/usePlanFrame.ts'
import { useWallEntry } from '#ui/canvas/useWallEntry.ts'
import { EntryField } from '#ui/dialogs/EntryField.tsx'
import { useDraw, useShell } from '#ui/shell.ts'

interface Props {
  readonly outline: OutlineDrawing
  readonly view: PlanFrame
}

/** The outline typed wall by wall, and how it is closed where its lengths do not quite meet. */
export function DrawEntry({ outline, view }: Props) {
  const isAsked = useDraw((state) => state.closing !== null)
  useKeptInSight(view)
  useFocusHandedBack()
  return isAsked ? <SurveyClosing outline={outline} /> : <WallEntry outline={outline} view={view} />
}

/** A length, a direction, and the next corner stands. */
function WallEntry({ outline, view }: Props) {
  const { draw } = useShell()
  const lengthField = useRef<HTMLInputElement>(null)
  const points = useDraw((state) => state.points)
  const entry = useWallEntry(view)
  useFocusOnFineScreens(lengthField)

  const add = () => {
    if (entry.add()) lengthField.current?.focus()
  }
  const press = (event: KeyboardEvent<HTMLInputElement>, isEmpty: boolean) => {
    if (event.key === 'Enter' && isEmpty && points.length > 0) outline.close()
    else if (event.key === 'Enter') add()
    else if (event.key === 'Backspace' && isEmpty) draw.takeBack()
    else if (event.key === 'Escape') outline.leave()
    else return
    event.nativeEvent.stopPropagation()
    event.preventDefault()
  }
  /** Arrow keys aim the wall, where they have no text to walk in. */
  const aim = (event: KeyboardEvent<HTMLInputElement>, isEmpty: boolean) => {
    const word = arrowDirection(event.key)
    const isUpright = word === 'up' || word === 'down'
    if (word === null || !(isEmpty || isUpright)) return press(event, isEmpty)
    event.preventDefault()
    entry.setDirection(word)
  }
  return (
    <fieldset className="draw-entry" onFocus={bringPlanUp}>
      <legend className="visually-hidden">The next wall, typed</legend>
      <DrawTargetChoice />
      <EntryField
        label={`Length of wall ${Math.max(points.length, 1)}`}
        name="draw-length"
        text={entry.length}
        hint={entry.lengthReading}
        error={entry.problem?.field === 'length' ? entry.problem.text : null}
        inputRef={lengthField}
        onText={entry.setLength}
        onKeyDown={(event) => aim(event, entry.length.trim() === '')}
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
          if (word === null) return press(event, false)
          event.preventDefault()
          entry.setDirection(word)
        }}
      />
      <DirectionVerbs degrees={entry.degrees} onAim={entry.setDirection} />
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
        <StartAnew />
        <button type="button" className="verb draw-leave" onClick={outline.leave}>
          Leave
        </button>
        <CornerCount />
      </div>
    </fieldset>
  )
}

interface AimProps {
  readonly degrees: number | null
  onAim(word: string): void
}

/** The four square directions, one press each: nothing to type on a phone. */
function DirectionVerbs({ degrees, onAim }: AimProps) {
  return (
    <fieldset className="verbs draw-aim">
      <legend className="visually-hidden">Direction of the next wall</legend>
      {DIRECTION_WORDS.map((word) => {
        const stands = parseDirection(word)
        return (
          <button
            key={word}
            type="button"
            className="verb"
            aria-pressed={stands.ok && stands.value === degrees}
            onClick={() => onAim(word)}
          >
            {word.charAt(0).toUpperCase() + word.slice(1)}
          </button>
        )
      })}
    </fieldset>
  )
}

/** Takes every corner away at once, for the same use. */
function StartAnew() {
  const { draw } = useShell()
  const isEmpty = useDraw((state) => state.points.length === 0)
  const target = useDraw((state) => state.target)
  return (
    <button type="button" className="verb" disabled={isEmpty} onClick={() => draw.begin(target)}>
      Start anew
    </button>
  )
}

function CornerCount() {
  const points = useDraw((state) => state.points)
  const count = points.length === 1 ? '1 corner' : `${points.length} corners`
  return (
    <span className="quiet" role="status">
      {returnsToFirst(points) ? 'Back on the first corner: close the outline' : count}
    </span>
  )
}

/** Stacked on a phone the keyboard takes the lower half: the plan goes to the top of the page while a wall is typed. */
function bringPlanUp({ target, currentTarget }: FocusEvent<HTMLElement>): void {
  if (!target.matches('input') || !window.matchMedia('(max-width: 859px)').matches) return
  currentTarget.closest('main')?.scrollIntoView({ block: 'start' })
}

/** The corners stay in sight when the paper changes its size: a keyboard slides in, the closing is asked for. */
function useKeptInSight({ size, reveal }: PlanFrame): void {
  const { draw } = useShell()
  const { width, height } = size
  // biome-ignore lint/correctness/useExhaustiveDependencies: only a change of size may move the paper under the hand
  useEffect(() => {
    const { points } = draw.store.getState()
    if (width > 0 && height > 0 && points.length > 0) reveal(points)
  }, [width, height])
}

/** Leaving takes the fields away: the keyboard goes on from the plan, not from the top of the page. */
function useFocusHandedBack(): void {
  useEffect(() => {
    const plan = document.querySelector<HTMLElement>('[role="application"]')
    return () => {
      requestAnimationFrame(() => {
        if (document.activeElement === document.body) plan?.focus({ preventScroll: true })
      })
    }
  }, [])
}

/** With a mouse at hand the length can be typed at once; on a phone the keyboard would cover the plan unasked. */
function useFocusOnFineScreens(field: RefObject<HTMLInputElement | null>): void {
  useEffect(() => {
    if (window.matchMedia('(pointer: fine)').matches) field.current?.focus()
  }, [field])
}
