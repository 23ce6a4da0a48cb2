import { useState } from 'react'
import type { Point } from '#geometry/polygon.ts'
import type { Command } from '#state/command.ts'
import type { Adding, Thing } from '#state/view.ts'
import { addSentence } from '#ui/canvas/addWords.ts'
import { cornerPoints } from '#ui/canvas/nearest.ts'
import {
  addedThing,
  firstPossible,
  isRectangular,
  openingAt,
  placeAt,
  placesInMiddle,
  rectangleOf,
  whereOf,
} from '#ui/canvas/placing.ts'
import type { Touchable } from '#ui/canvas/planTarget.ts'
import type { Gestures, Press } from '#ui/canvas/pointer.ts'
import { NOTHING_SELECTED } from '#ui/canvas/selecting.ts'
import { drawingLines, finestStep, gridStep, ringPlaces, type Snapped, snapPoint } from '#ui/canvas/snap.ts'
import { useSession, useView } from '#ui/session.ts'

/** What the Add and Cut tools show beside the plan. */
export interface AddState {
  readonly sentence: string
  readonly isRefused: boolean
  /** First of two presses; null: not made yet. */
  readonly anchor: Point | null
  readonly pointer: Snapped | null
  /** What a press would put down, drawn as if it stood there. */
  readonly ghost: Thing | null
}

export interface AddGestures {
  readonly state: AddState
  readonly gestures: Gestures
  /** Enter on the plan: puts the thing at a sensible place. */
  placeByKey(): void
}

/** How far from a wall a press still means that wall, px. */
const WALL_REACH = { mouse: 60, touch: 90 }
/** How near a line must pass to hold a corner, px. */
const HOLD = 9

interface Tried {
  readonly after: Adding | null
  readonly anchor: Point | null
  readonly pointer: Snapped | null
  readonly refusal: string | null
  readonly ghost: Thing | null
}

/** Puts a new thing down: the page shows it under the pointer before anything is recorded. */
export function useAddGestures(input: Touchable, isTouch: boolean): AddGestures {
  const session = useSession()
  const adding = useView((view) => view.adding)
  const selected = useView((view) => view.surfaceIds)
  const [kept, setTried] = useState<Tried>(NOTHING)
  // What was tried for another verb says nothing about this one.
  const tried = kept.after === adding ? kept : { ...NOTHING, after: adding }
  const { project, room, result, frame } = input
  const setting = { room, result, units: project.units }

  const commandAt = (press: Press, pointer: Snapped, anchor: Point | null): Command | null => {
    if (adding === null) return null
    if (adding.kind === 'opening') {
      return openingAt(setting, adding, press.at, (press.isTouch ? WALL_REACH.touch : WALL_REACH.mouse) / frame.scale)
    }
    if (!isRectangular(adding)) return placeAt(setting, adding, pointer.point)
    return anchor && rectangleOf(setting, adding.kind, anchor, pointer.point)
  }
  const attempt = (press: Press, anchor: Point | null): void => {
    const pointer = snapped(input, press, anchor)
    const command = commandAt(press, pointer, anchor)
    const outcome = command && session.document.show(command)
    if (!outcome?.ok) session.document.cancelPreview()
    const ghost = outcome?.ok && adding ? addedThing(outcome.value, whereOf(room), adding.kind) : null
    const refusal = outcome && !outcome.ok ? outcome.error.message : null
    setTried({ after: adding, anchor, pointer, refusal, ghost })
  }
  const put = (command: Command | null): void => {
    setTried(NOTHING)
    if (!command || !adding) return
    const outcome = session.document.run(command)
    if (!outcome.ok) return
    const thing = addedThing(outcome.value, whereOf(room), adding.kind)
    session.view.setState({ ...NOTHING_SELECTED, thing, adding: null, tool: 'select' })
  }
  const press = (now: Press): void => {
    const pointer = snapped(input, now, tried.anchor)
    if (adding && isRectangular(adding) && tried.anchor === null) attempt(now, pointer.point)
    else {
      const command = commandAt(now, pointer, tried.anchor)
      if (command) put(command)
      else attempt(now, tried.anchor)
    }
  }
  return {
    state: {
      sentence: tried.refusal ?? addSentence(adding, tried.anchor !== null, isTouch),
      isRefused: tried.refusal !== null,
      anchor: tried.anchor,
      pointer: tried.pointer,
      ghost: tried.ghost,
    },
    gestures: {
      hover: (now) => {
        if (now) attempt(now, tried.anchor)
        else {
          session.document.cancelPreview()
          setTried({ ...tried, pointer: null, ghost: null, refusal: null })
        }
      },
      down: (now) => {
        if (!adding || !isRectangular(adding)) return now.isTouch
        if (tried.anchor === null) attempt(now, snapped(input, now, null).point)
        return true
      },
      drag: (now) => attempt(now, tried.anchor),
      drop: press,
      cancel: () => {
        session.document.cancelPreview()
        setTried(NOTHING)
      },
      click: press,
    },
    placeByKey: () => put(adding && firstPossible(project, placesInMiddle(setting, adding, selected))),
  }
}

const NOTHING: Tried = { after: null, anchor: null, pointer: null, refusal: null, ghost: null }

/** Where a press falls: level or plumb with the first corner, on the room's walls and places, or on the grid. */
export function snapped({ project, room, frame }: Touchable, press: Press, anchor: Point | null): Snapped {
  const rings = [cornerPoints(room)]
  return snapPoint({
    at: press.at,
    lines: drawingLines(anchor ? [anchor] : [], rings),
    places: ringPlaces(rings, anchor),
    tolerance: HOLD / frame.scale,
    step: gridStep(project.units),
    finest: finestStep(project.units),
    free: press.free,
  })
}
