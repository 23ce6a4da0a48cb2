import { useEffect, useRef } from 'react'
import type { Frame } from '#drawing/frame.ts'
import { toTarget } from '#drawing/frame.ts'
import type { Underlay } from '#project/project.ts'
import { changeUnderlay } from '#state/commands/underlays.ts'
import type { Gestures, Press } from '#ui/canvas/pointer.ts'
import { useCoarsePointer } from '#ui/canvas/useCoarsePointer.ts'
import { readLength } from '#ui/fields/readLength.ts'
import { type Session, useSession, useView } from '#ui/session.ts'
import { type Shell, useShell, useTrace } from '#ui/shell.ts'
import { calibrate } from '#ui/trace/placement.ts'
import { type Calibrating, wholePoint } from '#ui/trace/traceStore.ts'
import type { LengthUnit } from '#units/quantity.ts'

/** How near a point set before is taken up again, px. */
const REACH = { mouse: 10, touch: 24 }

/** Begins to calibrate a picture: the next two presses on the plan are its two points. */
export function beginCalibrating(session: Session, shell: Shell, underlayId: string): void {
  shell.state.setState({ notice: null })
  shell.trace.begin(underlayId)
  session.view.setState({ tool: 'calibrate', adding: null, surfaceIds: [], cornerId: null, showsSheet: false })
}

/** Leaves without a change. */
export function leaveCalibrating(session: Session, shell: Shell): void {
  shell.trace.end()
  if (session.view.getState().tool === 'calibrate') session.view.setState({ tool: 'select' })
}

/** Scales the picture so that the distance is true; refused with a sentence, what was pressed and typed then stays. */
export function carryOutCalibration(session: Session, shell: Shell, units: LengthUnit): void {
  const { calibrating } = shell.trace.store.getState()
  const { project } = session.document.store.getState()
  const underlay = project.underlays.find(({ id }) => id === calibrating?.underlayId)
  if (!calibrating || !underlay) return
  const refuse = (refusal: string) => shell.trace.change({ refusal })
  const [from, to] = calibrating.points.map(wholePoint)
  if (!from || !to) {
    refuse('Two points are needed: press them on the picture, or type where they stand in the plan.')
    return
  }
  const distance = readLength(calibrating.distance, units, { leastMm: 0, moreThanLeast: true })
  if (!distance.ok) {
    refuse(`The real distance cannot be read: ${distance.error}`)
    return
  }
  const placed = calibrate(underlay, { from, to, distanceMm: distance.value, squares: calibrating.squares })
  if (!placed.ok) {
    refuse(placed.error)
    return
  }
  const outcome = session.document.run(changeUnderlay(underlay.id, { ...placed.value, isCalibrated: true }))
  if (!outcome.ok) return
  leaveCalibrating(session, shell)
  const text = `"${underlay.name}" is to scale now. Lock it, then Draw room over it; come closer, or hold Alt, to let go of right angles.`
  shell.state.setState({ notice: { kind: 'told', text, details: [] } })
}

/** The two points of a calibration under the pointer. */
export function useCalibrate(frame: Frame): { readonly gestures: Gestures; readonly hint: string } {
  const session = useSession()
  const shell = useShell()
  const calibrating = useTrace((state) => state.calibrating)
  const isTouch = useCoarsePointer()
  useLeaving(session, shell)
  /** The point in the hand. */
  const held = useRef<0 | 1 | null>(null)
  const set = (index: 0 | 1, { at }: Press) => shell.trace.setPoint(index, at)
  return {
    hint: hintOf(calibrating, isTouch),
    gestures: {
      hover: () => undefined,
      down: (press) => {
        held.current = calibrating && pointUnder(calibrating, frame, press)
        return held.current !== null
      },
      drag: (press) => {
        if (held.current !== null) set(held.current, press)
      },
      drop: (press) => {
        if (held.current !== null) set(held.current, press)
        held.current = null
      },
      cancel: () => {
        held.current = null
      },
      click: (press) => {
        if (calibrating) set(nextPoint(calibrating, press), press)
      },
    },
  }
}

/** Escape leaves; so does whatever else takes the tool or the picture away. */
function useLeaving(session: Session, shell: Shell): void {
  const isCalibrating = useView((view) => view.tool === 'calibrate')
  useEffect(() => {
    if (!isCalibrating) return
    const listen = (event: KeyboardEvent) => {
      if (event.key !== 'Escape') return
      event.preventDefault()
      event.stopPropagation()
      leaveCalibrating(session, shell)
    }
    const stop = session.document.store.subscribe(({ project }) => {
      const id = shell.trace.store.getState().calibrating?.underlayId
      if (!project.underlays.some((underlay: Underlay) => underlay.id === id)) leaveCalibrating(session, shell)
    })
    window.addEventListener('keydown', listen, { capture: true })
    return () => {
      stop()
      window.removeEventListener('keydown', listen, { capture: true })
      shell.trace.end()
    }
  }, [isCalibrating, session, shell])
}

function pointUnder({ points }: Calibrating, frame: Frame, press: Press): 0 | 1 | null {
  const reach = press.isTouch ? REACH.touch : REACH.mouse
  const near = points.map((point) => {
    const whole = wholePoint(point)
    if (!whole) return false
    const [x, y] = toTarget(frame, whole)
    return Math.hypot(x - press.place[0], y - press.place[1]) <= reach
  })
  return near[0] ? 0 : near[1] ? 1 : null
}

/** The first that is missing; once both stand, the nearer one moves. */
function nextPoint({ points }: Calibrating, { at }: Press): 0 | 1 {
  const [from, to] = points.map(wholePoint)
  if (!from) return 0
  if (!to) return 1
  const away = ([x, y]: readonly [number, number]) => Math.hypot(x - at[0], y - at[1])
  return away(from) <= away(to) ? 0 : 1
}

function hintOf(calibrating: Calibrating | null, isTouch: boolean): string {
  const [from, to] = calibrating?.points.map(wholePoint) ?? []
  if (from && to) return 'Type its real length above and press Set the scale. Drag a point to move it.'
  // A finger has neither a wheel nor Escape; Leave stands above.
  if (isTouch) return from ? TOUCH_HINTS.other : TOUCH_HINTS.first
  if (!from) return 'Press one end of something whose length you measured. The wheel brings it closer. Escape: leave.'
  return 'Press its other end, the further away the truer. Escape: leave.'
}

const TOUCH_HINTS = {
  first: 'Touch one end of something whose length you measured. Two fingers bring it closer.',
  other: 'Touch its other end, the further away the truer.',
}
