import { type RefObject, useState } from 'react'
import { toTarget } from '#drawing/frame.ts'
import type { Place } from '#drawing/model.ts'
import type { Point } from '#geometry/polygon.ts'
import { type ContextList, type ContextVerb, contextVerbs } from '#ui/canvas/contextVerbs.ts'
import type { Target } from '#ui/canvas/nearest.ts'
import { addedThing } from '#ui/canvas/placing.ts'
import type { Touchable } from '#ui/canvas/planTarget.ts'
import type { Press } from '#ui/canvas/pointer.ts'
import { roomMiddle } from '#ui/canvas/roomMiddle.ts'
import { NOTHING_SELECTED } from '#ui/canvas/selecting.ts'
import { placeOnWall, shapeMiddle, thingShape, wallRun } from '#ui/canvas/thingShapes.ts'
import type { OutlineDrawing } from '#ui/canvas/useOutlineDrawing.ts'
import type { PlanFrame } from '#ui/canvas/usePlanFrame.ts'
import { type Session, useSession } from '#ui/session.ts'

interface OpenMenu {
  readonly list: ContextList
  readonly at: Place
}

export interface PlanMenuState {
  readonly menu: OpenMenu | null
  /** Opens at the hand. */
  open(input: Touchable, target: Target, press: Press): void
  /** Opens for what is selected, from the keyboard. */
  openForSelection(input: Touchable): void
  leave(): void
  choose(verb: ContextVerb): void
}

/** The list of verbs for what lies under the hand or is selected. */
export function usePlanMenu(
  host: RefObject<HTMLElement | null>,
  view: PlanFrame,
  outline: OutlineDrawing,
): PlanMenuState {
  const session = useSession()
  const [menu, setMenu] = useState<OpenMenu | null>(null)
  const show = (input: Touchable, target: Target, point: Point, at: Place) => {
    const { project, room, result } = input
    setMenu({ list: contextVerbs({ project, room, result, view: session.view.getState() }, target, point), at })
  }
  const leave = () => {
    setMenu(null)
    host.current?.focus({ preventScroll: true })
  }
  return {
    menu,
    open: (input, target, press) => show(input, target, press.at, press.place),
    openForSelection: (input) => {
      const { target, at } = selectedTarget(session, input)
      show(input, target, at, toTarget(view.frame, at))
    },
    leave,
    choose: (verb) => {
      leave()
      carryOut(session, view, outline, verb)
    },
  }
}

function carryOut(session: Session, view: PlanFrame, outline: OutlineDrawing, { act }: ContextVerb): void {
  switch (act.kind) {
    case 'run': {
      const outcome = session.document.run(act.command)
      const thing = outcome.ok && act.selects ? addedThing(outcome.value, session.view.getState(), act.selects) : null
      if (thing) session.view.setState({ ...NOTHING_SELECTED, thing })
      return
    }
    case 'view':
      session.view.setState(act.change)
      return
    case 'move-wall':
      focusMoveField(session, act.wallId)
      return
    case 'fit':
      view.fit()
      return
    default:
      outline.begin()
  }
}

/** Goes to the table where the distance is typed. */
function focusMoveField(session: Session, wallId: string): void {
  const { roomId } = session.view.getState()
  const { project } = session.document.store.getState()
  const room = project.rooms.find(({ id }) => id === roomId) ?? project.rooms[0]
  const number = (room?.walls.findIndex(({ id }) => id === wallId) ?? -1) + 1
  session.view.setState({ ...NOTHING_SELECTED, roomView: 'outline' })
  // The table is drawn after this: its field is there by the next frame.
  requestAnimationFrame(() =>
    requestAnimationFrame(() => document.querySelector<HTMLElement>(`[name="wall-move-${number}"]`)?.focus()),
  )
}

/** What the menu key speaks of, and where that lies. */
function selectedTarget(session: Session, { room, result }: Touchable): { target: Target; at: Point } {
  const { thing, cornerId, surfaceIds } = session.view.getState()
  const shape = thing && thingShape(room, thing)
  if (thing) return { target: { kind: 'thing', thing }, at: shape ? shapeMiddle(shape) : roomMiddle(room, result) }
  const corner = room.corners.find(({ id }) => id === cornerId)
  if (corner) return { target: { kind: 'corner', id: corner.id }, at: [corner.xMm, corner.yMm] }
  const run = wallRun(room, surfaceIds.at(-1) ?? '')
  if (run) return { target: { kind: 'wall', id: run.id }, at: placeOnWall(run, run.length / 2) }
  return { target: { kind: 'inside' }, at: roomMiddle(room, result) }
}
