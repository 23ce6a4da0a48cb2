import type { SchemeResult } from '#analysis/results.ts'
import type { Point } from '#geometry/polygon.ts'
import type { Project } from '#project/project.ts'
import type { Command } from '#state/command.ts'
import { deleteCorner, insertCorner } from '#state/commands/outline.ts'
import { cutRoom } from '#state/commands/partitions.ts'
import type { Adding, Thing, ViewState } from '#state/view.ts'
import { duplicate } from '#ui/canvas/duplicate.ts'
import type { Target } from '#ui/canvas/nearest.ts'
import { cuttingLine, openingAt, placeAt, usualColumn, usualCut } from '#ui/canvas/placing.ts'
import { type PlanRoom, takenAway } from '#ui/canvas/planRoom.ts'
import { selectionAfter } from '#ui/canvas/selecting.ts'
import { laid, wholeTurn } from '#ui/canvas/thingDrags.ts'
import { alongWall, turnable, wallRun } from '#ui/canvas/thingShapes.ts'
import { projectThingLabel } from '#ui/canvas/thingWords.ts'
import { cornerLabel } from '#ui/words.ts'

/** What a verb of the menu does. */
export type VerbAct =
  | { readonly kind: 'run'; readonly command: Command; readonly selects: Thing['kind'] | null }
  | { readonly kind: 'view'; readonly change: Partial<ViewState> }
  | { readonly kind: 'move-wall'; readonly wallId: string }
  | { readonly kind: 'fit' }
  | { readonly kind: 'draw' }

export interface ContextVerb {
  readonly label: string
  readonly act: VerbAct
}

export interface ContextInput {
  readonly project: Project
  readonly room: PlanRoom
  readonly result: SchemeResult | null
  readonly view: ViewState
}

/** A menu: what it is for, and its verbs. */
export interface ContextList {
  readonly title: string
  readonly verbs: readonly ContextVerb[]
}

/** What can be done with what lies under the hand, at the place of the hand. */
export function contextVerbs(input: ContextInput, target: Target, at: Point): ContextList {
  const { project, room, view } = input
  switch (target.kind) {
    case 'wall':
      return wallVerbs(input, target, at)
    case 'corner': {
      const command = deleteCorner(room.id, target.id)
      return {
        title: cornerLabel(room, target.id),
        verbs: [run('Delete corner', command), selectVerb(view, target)],
      }
    }
    case 'handle':
    case 'thing':
      return thingVerbs(input, target.thing)
    case 'room':
      return {
        title: project.rooms.find(({ id }) => id === target.id)?.name ?? 'Room',
        verbs: [{ label: 'Go to this room', act: { kind: 'view', change: selectionAfter(view, target, false) } }],
      }
    case 'inside':
      return { title: room.name, verbs: insideVerbs(input, at) }
    default:
      return { title: 'Plan', verbs: [FIT, DRAW] }
  }
}

const FIT: ContextVerb = { label: 'Fit', act: { kind: 'fit' } }
const DRAW: ContextVerb = { label: 'Draw room', act: { kind: 'draw' } }

function run(label: string, command: Command, selects: Thing['kind'] | null = null): ContextVerb {
  return { label, act: { kind: 'run', command, selects } }
}

function selectVerb(view: ViewState, target: Target): ContextVerb {
  return { label: 'Select', act: { kind: 'view', change: selectionAfter(view, target, false) } }
}

function wallVerbs(input: ContextInput, target: Target & { readonly kind: 'wall' }, at: Point): ContextList {
  const { room, view } = input
  const wall = wallRun(room, target.id)
  if (!wall) return { title: 'Ceiling or floor', verbs: [selectVerb(view, target)] }
  const add = (label: string, opening: 'door' | 'window'): ContextVerb[] => {
    const command = openingAt(setting(input), { kind: 'opening', opening }, at, Number.POSITIVE_INFINITY)
    return command ? [run(label, command, 'opening')] : []
  }
  return {
    title: `Wall ${wall.index + 1}`,
    verbs: [
      run('Insert corner here', insertCorner(room.id, target.id, Math.round(alongWall(wall, at)))),
      ...add('Add door here', 'door'),
      ...add('Add window here', 'window'),
      { label: 'Move by typed distance', act: { kind: 'move-wall', wallId: target.id } },
      selectVerb(view, target),
    ],
  }
}

function thingVerbs({ project, room, view }: ContextInput, thing: Thing): ContextList {
  const copy = duplicate(project, room, thing)
  const piece = turnable(room, thing)
  const turned = piece && laid(room, thing, { angleDeg: wholeTurn(piece.angleDeg + 90) })
  const out = thing.kind === 'partition' ? 'Delete and join the rooms' : 'Delete'
  return {
    title: projectThingLabel(project, room, thing),
    verbs: [
      ...(turned ? [run('Rotate 90°', turned)] : []),
      ...(copy ? [run('Duplicate', copy, thing.kind)] : []),
      run(out, takenAway(room, thing)),
      selectVerb(view, { kind: 'thing', thing }),
    ],
  }
}

function insideVerbs(input: ContextInput, at: Point): readonly ContextVerb[] {
  const { room } = input
  const here: Point = [Math.round(at[0]), Math.round(at[1])]
  const put = (label: string, adding: Adding): ContextVerb[] => {
    const command = placeAt(setting(input), adding, here)
    return command ? [run(label, command, adding.kind)] : []
  }
  const cut = cutRoom(room.id, ...cuttingLine(setting(input), here), usualCut(input.project))
  return [
    ...put('Add height here', { kind: 'height' }),
    ...put('Add furniture here', { kind: 'furniture', furniture: 'other' }),
    run('Add column here', usualColumn(room, here), 'obstacle'),
    run('Cut in two here', cut, 'partition'),
    FIT,
  ]
}

function setting({ project, room, result }: ContextInput) {
  return { room, result, units: project.units }
}
