import { useRef, useState } from 'react'
import type { SchemeResult } from '#analysis/results.ts'
import type { Room } from '#analysis/room.ts'
import type { Frame } from '#drawing/frame.ts'
import type { Mark } from '#drawing/model.ts'
import type { Point } from '#geometry/polygon.ts'
import type { Command } from '#state/command.ts'
import { cornerDrag, type Drag, type DragSetting, wallDrag } from '#ui/canvas/drags.ts'
import { type Target, targetAt } from '#ui/canvas/nearest.ts'
import type { Gestures, Press } from '#ui/canvas/pointer.ts'
import { useDocument, useSession, useView } from '#ui/session.ts'
import { refusedDragHint } from '#ui/words.ts'

/** What the Select tool shows beside the plan. */
export interface SelectState {
  readonly hovered: Target | null
  /** A sentence while something is in the hand, else null. */
  readonly dragged: string | null
  /** What is in the hand was moved past what is possible. */
  readonly isRefused: boolean
  readonly guides: readonly (readonly [Point, Point])[]
}

interface Input {
  readonly frame: Frame
  readonly result: SchemeResult | null
  readonly marks: readonly Mark[]
  /** Corners that show a handle. */
  readonly handles: ReadonlySet<string>
}

/** How near is near enough, px. */
const REACH = { mouse: { corner: 11, wall: 9 }, touch: { corner: 24, wall: 20 } }

/** Picks walls and corners and moves what is selected; every release is one command. */
export function useSelectGestures(
  room: Room,
  input: Input,
): { readonly state: SelectState; readonly gestures: Gestures } {
  const session = useSession()
  const units = useDocument((document) => document.project.units)
  const surfaceIds = useView((view) => view.surfaceIds)
  const [state, setState] = useState<SelectState>(REST)
  const drag = useRef<Drag | null>(null)
  /** The last place on this drag's way that works; null: none so far. */
  const good = useRef<Command | null>(null)

  const targetOf = (press: Press) => tagAt(input.marks, press) ?? targetUnder(room, input, press)
  const show = (hovered: Target | null) =>
    setState((before) => (isSame(before.hovered, hovered) && before.dragged === null ? before : { ...REST, hovered }))
  const follow = (press: Press) => {
    const step = drag.current?.(press)
    if (!step) return
    const outcome = session.document.show(step.command)
    if (outcome.ok) good.current = step.command
    const dragged = outcome.ok ? step.sentence : refusedDragHint(outcome.error.message, good.current !== null)
    setState({ hovered: null, dragged, isRefused: !outcome.ok, guides: outcome.ok ? step.guides : [] })
  }
  const letGo = () => {
    drag.current = null
    good.current = null
    setState(REST)
  }
  const gestures: Gestures = {
    hover: (press) => show(press ? targetOf(press) : null),
    down: (press) => {
      const target = targetOf(press)
      const setting: DragSetting = { room, units, scale: input.frame.scale, start: press.at }
      drag.current = dragOf(target, setting, surfaceIds)
      good.current = null
      return drag.current !== null
    },
    drag: follow,
    drop: (press) => {
      follow(press)
      if (good.current) session.document.run(good.current)
      letGo()
    },
    cancel: () => {
      session.document.cancelPreview()
      letGo()
    },
    click: (press) => session.view.setState((view) => selectionAfter(view, targetOf(press), press.adds)),
  }
  return { state, gestures }
}

const REST: SelectState = { hovered: null, dragged: null, isRefused: false, guides: [] }

function targetUnder(room: Room, input: Input, press: Press): Target {
  const reach = press.isTouch ? REACH.touch : REACH.mouse
  const { scale } = input.frame
  const depths = input.result?.surfaces.map((surface) => surface.netDepthMm) ?? []
  return targetAt(room, press.at, { corner: reach.corner / scale, wall: reach.wall / scale }, input.handles, depths)
}

/** A wall's tag stands for the wall. */
function tagAt(marks: readonly Mark[], { place, isTouch }: Press): Target | null {
  for (const mark of marks) {
    if (mark.kind !== 'circle' || mark.role !== 'tag' || mark.surfaceId === undefined) continue
    const away = Math.hypot(place[0] - mark.x, place[1] - mark.y)
    if (away <= mark.radius + (isTouch ? 8 : 0)) return { kind: 'wall', id: mark.surfaceId }
  }
  return null
}

function dragOf(target: Target, setting: DragSetting, surfaceIds: readonly string[]): Drag | null {
  if (target.kind === 'corner') return cornerDrag(setting, target.id)
  if (target.kind === 'wall' && surfaceIds.includes(target.id)) return wallDrag(setting, target.id)
  return null
}

interface Selection {
  readonly surfaceIds: readonly string[]
  readonly cornerId: string | null
}

function selectionAfter(view: Selection, target: Target, adds: boolean): Selection {
  if (target.kind === 'corner') return { surfaceIds: view.surfaceIds, cornerId: target.id }
  if (target.kind !== 'wall') return adds ? view : { surfaceIds: [], cornerId: null }
  if (!adds) return { surfaceIds: [target.id], cornerId: null }
  const without = view.surfaceIds.filter((id) => id !== target.id)
  const isAdded = without.length === view.surfaceIds.length
  return { surfaceIds: isAdded ? [...without, target.id] : without, cornerId: null }
}

function isSame(a: Target | null, b: Target | null): boolean {
  if (a === null || b === null) return a === b
  return a.kind === b.kind && ('id' in a ? a.id : '') === ('id' in b ? b.id : '')
}
