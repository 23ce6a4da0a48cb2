import type { ViewState } from '#state/view.ts'
import type { Target } from '#ui/canvas/nearest.ts'

type Selection = Pick<ViewState, 'roomId' | 'surfaceIds' | 'cornerId' | 'thing'>

export const NOTHING_SELECTED = { surfaceIds: [], cornerId: null, thing: null }

/** What is selected after a press; walls are added to each other while a key is held. */
export function selectionAfter(view: Selection, target: Target, adds: boolean): Partial<Selection> {
  switch (target.kind) {
    case 'corner':
      return { cornerId: target.id, thing: null }
    case 'handle':
      return {}
    case 'thing':
      return { ...NOTHING_SELECTED, thing: target.thing }
    case 'room':
      return { ...NOTHING_SELECTED, roomId: target.id }
    case 'wall':
      return { cornerId: null, thing: null, surfaceIds: adds ? toggled(view.surfaceIds, target.id) : [target.id] }
    default:
      return adds ? {} : NOTHING_SELECTED
  }
}

function toggled(ids: readonly string[], id: string): readonly string[] {
  return ids.includes(id) ? ids.filter((other) => other !== id) : [...ids, id]
}
