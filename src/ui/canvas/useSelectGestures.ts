import { useRef, useState } from 'react'
import type { Note, SchemeResult } from '#analysis/results.ts'
import type { Point } from '#geometry/polygon.ts'
import type { Command } from '#state/command.ts'
import type { Thing, ViewState } from '#state/view.ts'
import { cornerDrag, type Drag, type DragSetting, wallDrag } from '#ui/canvas/drags.ts'
import type { Measure } from '#ui/canvas/measures.ts'
import { isSameTarget, type Target } from '#ui/canvas/nearest.ts'
import { planTarget, type Touchable } from '#ui/canvas/planTarget.ts'
import type { Gestures, Press } from '#ui/canvas/pointer.ts'
import { NOTHING_SELECTED, selectionAfter } from '#ui/canvas/selecting.ts'
import { handleDrag, thingDrag } from '#ui/canvas/thingDrags.ts'
import { isSameThing } from '#ui/canvas/thingShapes.ts'
import { isTakenUp } from '#ui/canvas/thingWords.ts'
import { useDocument, useSession } from '#ui/session.ts'
import { dragHint, refusedDragHint } from '#ui/words.ts'

/** What the Select tool shows beside the plan. */
export interface SelectState {
  readonly hovered: Target | null
  /** Where in the room the pointer rests on nothing in particular. */
  readonly inside: Point | null
  /** A sentence while something is in the hand, else null. */
  readonly dragged: string | null
  /** What is in the hand was moved past what is possible. */
  readonly isRefused: boolean
  readonly guides: readonly (readonly [Point, Point])[]
  readonly measures: readonly Measure[]
  /** What was already wrong with an opening in the hand when it was taken up, by code. */
  readonly knownProblems: readonly string[]
}

export interface SelectGestures {
  readonly state: SelectState
  readonly gestures: Gestures
}

/** Picks and moves what stands on the plan; every release is one command. */
export function useSelectGestures(input: Touchable, menu: (target: Target, press: Press) => void): SelectGestures {
  const session = useSession()
  const units = useDocument((document) => document.project.units)
  const [state, setState] = useState<SelectState>(REST)
  const drag = useRef<Drag | null>(null)
  /** The last place on this drag's way that works; null: none so far. */
  const good = useRef<Command | null>(null)
  const known = useRef<readonly string[]>([])
  /** The thing in the hand until it moves. */
  const grabbed = useRef<Thing | null>(null)

  /** A thing or one of its handles is in the hand, not a wall or a corner. */
  const isThing = useRef(false)

  const follow = (press: Press) => {
    const step = drag.current?.(press)
    if (!step) return
    const outcome = session.document.show(step.command)
    if (outcome.ok) good.current = step.command
    const shown = outcome.ok ? { guides: step.guides, measures: step.measures ?? [] } : {}
    const words = { isThing: isThing.current, isTouch: press.isTouch }
    const dragged = outcome.ok
      ? dragHint(step.sentence, words)
      : refusedDragHint(outcome.error.message, good.current !== null)
    setState({ ...REST, ...shown, dragged, isRefused: !outcome.ok, knownProblems: known.current })
  }
  const letGo = () => {
    drag.current = null
    good.current = null
    setState(REST)
  }
  const gestures: Gestures = {
    hover: (press) => setState((before) => hoverState(before, press && planTarget(input, press), press)),
    down: (press) => {
      const target = planTarget(input, press)
      const { room, frame, result, project } = input
      const others = project.rooms.filter((other) => other.id !== room.id)
      const setting = { room, units, scale: frame.scale, start: press.at, clear: result?.inset.clear ?? [], others }
      drag.current = dragOf(target, setting, session.view.getState(), press.isTouch)
      grabbed.current = drag.current && target.kind === 'thing' ? target.thing : null
      isThing.current = 'thing' in target
      good.current = null
      known.current =
        'thing' in target && target.thing.kind === 'opening'
          ? problemsOf(result, target.thing).map(({ code }) => code)
          : []
      return drag.current !== null
    },
    drag: (press) => {
      // A hand that moves what it did not select before selects it, so that the bench speaks of it.
      if (grabbed.current) session.view.setState({ ...NOTHING_SELECTED, thing: grabbed.current })
      grabbed.current = null
      follow(press)
    },
    drop: (press) => {
      follow(press)
      if (good.current) session.document.run(good.current)
      letGo()
    },
    cancel: () => {
      session.document.cancelPreview()
      letGo()
    },
    click: (press) => session.view.setState((view) => selectionAfter(view, planTarget(input, press), press.adds)),
    menu: (press) => menu(planTarget(input, press), press),
  }
  return { state, gestures }
}

const REST: SelectState = {
  hovered: null,
  inside: null,
  dragged: null,
  isRefused: false,
  guides: [],
  measures: [],
  knownProblems: [],
}

function hoverState(before: SelectState, hovered: Target | null, press: Press | null): SelectState {
  const inside = hovered?.kind === 'inside' && press ? press.at : null
  const isSame = isSameTarget(before.hovered, hovered) && before.dragged === null && inside === null
  return isSame && before.inside === null ? before : { ...REST, hovered, inside }
}

/** What is wrong with a thing as it stands. */
export function problemsOf(result: SchemeResult | null, { kind, id }: Thing): readonly Note[] {
  const checks = checksOf(result, kind)
  return checks.find((check) => check.id === id)?.problems ?? []
}

type Check = { readonly id: string; readonly problems: readonly Note[] }

function checksOf(result: SchemeResult | null, kind: Thing['kind']): readonly Check[] {
  if (result === null) return []
  if (kind === 'furniture') return result.furniture
  if (kind === 'box') return result.boxes
  return kind === 'opening' ? result.openings : []
}

function dragOf(target: Target, setting: DragSetting, view: ViewState, isTouch: boolean): Drag | null {
  switch (target.kind) {
    case 'corner':
      return cornerDrag(setting, target.id)
    case 'handle':
      return handleDrag(setting, target.thing, target.handle)
    case 'wall':
      return view.surfaceIds.includes(target.id) ? wallDrag(setting, target.id) : null
    case 'thing':
      return isSameThing(target.thing, view.thing) || (!isTouch && isTakenUp(target.thing))
        ? thingDrag(setting, target.thing)
        : null
    default:
      return null
  }
}
