import { clearHeightAt } from '#analysis/heights/field.ts'
import type { SchemeResult } from '#analysis/results.ts'
import type { Point } from '#geometry/polygon.ts'
import type { Thing } from '#state/view.ts'
import type { Target } from '#ui/canvas/nearest.ts'
import type { PlanRoom } from '#ui/canvas/planRoom.ts'
import type { Touchable } from '#ui/canvas/planTarget.ts'
import type { Gestures, Press } from '#ui/canvas/pointer.ts'
import { type AddGestures, type AddState, useAddGestures } from '#ui/canvas/useAddGestures.ts'
import { useCutGestures } from '#ui/canvas/useCutGestures.ts'
import { problemsOf, type SelectState, useSelectGestures } from '#ui/canvas/useSelectGestures.ts'
import { useView } from '#ui/session.ts'
import { selectHint } from '#ui/words.ts'
import { formatLength } from '#units/format.ts'
import type { LengthUnit } from '#units/quantity.ts'

/** The hand of the tool in use, outlines and pictures aside: what it shows and says. */
export interface PlanTool {
  readonly gestures: Gestures
  readonly hint: string
  readonly warns: boolean
  readonly cursor: string
  readonly select: SelectState
  /** null: nothing is being put down or cut. */
  readonly add: AddState | null
  putInMiddle(): void
}

/** Hands that put new things down or cut the room, while their tool is in use. */
export function useAdding(input: Touchable, isTouch: boolean): AddGestures | null {
  const tool = useView((view) => view.tool)
  const add = useAddGestures(input, isTouch)
  const cut = useCutGestures(input, isTouch)
  if (tool === 'add') return add
  return tool === 'cut' ? cut : null
}

/** Gestures, sentence and pointer of the tool in use. */
export function usePlanTools(
  input: Touchable,
  shown: PlanRoom,
  adding: AddGestures | null,
  menu: (target: Target, press: Press) => void,
): PlanTool {
  const surfaceIds = useView((view) => view.surfaceIds)
  const cornerId = useView((view) => view.cornerId)
  const { project, result, thing } = input
  const { state, gestures } = useSelectGestures(input, menu)
  const putInMiddle = () => adding?.placeByKey()
  if (adding) {
    const { sentence, isRefused } = adding.state
    return {
      gestures: adding.gestures,
      hint: sentence,
      warns: isRefused,
      cursor: 'draw',
      select: state,
      add: adding.state,
      putInMiddle,
    }
  }
  const problem = newProblem(result, thing, state)
  const clearHeight = state.inside && clearHeightWords(result, state.inside, project.units)
  const hint = selectHint({ project, room: shown, target: state.hovered, surfaceIds, cornerId, thing, clearHeight })
  return {
    gestures,
    hint: problem ?? state.dragged ?? hint,
    warns: state.isRefused || problem !== null,
    cursor: cursorOver(state.hovered, surfaceIds, thing),
    select: state,
    add: null,
    putInMiddle,
  }
}

/** What the thing in the hand meets where it is held, and did not meet where it stood; null: nothing. */
function newProblem(result: SchemeResult | null, thing: Thing | null, state: SelectState): string | null {
  if (thing === null || state.dragged === null || state.isRefused) return null
  return problemsOf(result, thing).find(({ code }) => !state.knownProblems.includes(code))?.text ?? null
}

function clearHeightWords(result: SchemeResult | null, at: Point, units: LengthUnit): string | null {
  const height = result && clearHeightAt(result.heights, at)
  return height === null ? null : `Clear height here: ${formatLength(height, units)}.`
}

function cursorOver(hovered: Target | null, selection: readonly string[], thing: Thing | null): string {
  if (hovered === null) return 'rest'
  switch (hovered.kind) {
    case 'wall':
      return selection.includes(hovered.id) ? 'move' : 'pick'
    case 'thing':
      return thing && thing.id === hovered.thing.id && thing.kind === hovered.thing.kind ? 'move' : 'pick'
    case 'handle':
    case 'corner':
      return 'move'
    case 'room':
      return 'pick'
    default:
      return hovered.kind
  }
}
