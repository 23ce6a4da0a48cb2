import type { Room } from '#analysis/room.ts'
import type { Project } from '#project/project.ts'
import { surfaceLabel } from '#state/commands/edit.ts'
import type { Thing } from '#state/view.ts'
import type { DrawState } from '#ui/canvas/drawStore.ts'
import type { Handle, Target } from '#ui/canvas/nearest.ts'
import { isSameThing } from '#ui/canvas/thingShapes.ts'
import { isTakenUp, projectThingLabel, thingSpoken } from '#ui/canvas/thingWords.ts'
import { formatLength } from '#units/format.ts'
import type { Millimetres } from '#units/quantity.ts'
import { unreachable } from '#units/result.ts'

/** Stands under every plan. */
export const CAUTION_LINE =
  'Preliminary design. Local codes govern; structure and fire separation need licensed professionals.'

/** Corner 1, Corner 2 ... */
export function cornerLabel(room: Room, cornerId: string): string {
  return `Corner ${room.corners.findIndex((corner) => corner.id === cornerId) + 1}`
}

/** What the plan's sentence is made from. */
export interface HintInput {
  readonly project: Project
  readonly room: Room
  readonly target: Target | null
  readonly surfaceIds: readonly string[]
  readonly cornerId: string | null
  readonly thing: Thing | null
  /** Clear height where the pointer rests inside the room; null: not known. */
  readonly clearHeight: string | null
}

/** What a press will do where the pointer is, with the Select tool. */
export function selectHint({ project, room, target, surfaceIds, cornerId, thing, clearHeight }: HintInput): string {
  if (target === null) {
    if (cornerId !== null) {
      return 'Arrow keys move the corner 10 mm, with Shift 100, with Alt 1. Enter goes back to its wall.'
    }
    return thing ? thingRestingHint(project, room, thing) : restingHint(surfaceIds.length > 0)
  }
  switch (target.kind) {
    case 'corner':
      return `Drag: move ${cornerLabel(room, target.id)}. Hold Alt to release right angles and the grid.`
    case 'handle':
      return handleHint(projectThingLabel(project, room, target.thing), target.handle)
    case 'thing':
      return thingHint(projectThingLabel(project, room, target.thing), target.thing, isSameThing(thing, target.thing))
    case 'wall': {
      const label = surfaceLabel(room, target.id)
      return surfaceIds.includes(target.id)
        ? `Drag: move ${label} parallel to itself. Press with Shift: take it out of the selection.`
        : `Press: select ${label}. Press with Shift: add it to the selection.`
    }
    case 'room':
      return `Press: go to ${project.rooms.find(({ id }) => id === target.id)?.name ?? 'the other room'}.`
    case 'inside':
      return insideHint(surfaceIds.length > 0 || thing !== null, clearHeight)
    case 'outside':
      return 'Drag: move the paper. Wheel: closer or further away.'
    default:
      return unreachable(target)
  }
}

function insideHint(hasSelection: boolean, clearHeight: string | null): string {
  if (hasSelection) return 'Press: select nothing and see the whole room.'
  return clearHeight === null ? restingHint(false) : `${clearHeight} ${restingHint(false)}`
}

function thingHint(label: string, thing: Thing, isSelected: boolean): string {
  if (thing.kind === 'partition')
    return isSelected ? `${label} moves with its walls, or by arrow keys.` : `Press: select ${label}.`
  const way = thing.kind === 'opening' ? ' along its wall' : ''
  if (isSelected) return `Drag: move ${label}${way}. Hold Alt to release edges and the grid.`
  return `Press: select ${label}.${isTakenUp(thing) ? ` Drag: move it${way}.` : ''}`
}

function handleHint(label: string, handle: Handle): string {
  switch (handle.kind) {
    case 'end':
      return `Drag: make ${label} wider or narrower. Hold Alt to release the grid.`
    case 'turn':
      return `Drag: turn ${label} by 15 degrees, with Alt by single ones.`
    default:
      return `Drag: move this corner of ${label}. Hold Alt to release lines and the grid.`
  }
}

/** The selected thing, while the pointer is elsewhere. */
function thingRestingHint(project: Project, room: Room, thing: Thing): string {
  const label = projectThingLabel(project, room, thing)
  const along = thing.kind === 'opening' ? ' along its wall' : thing.kind === 'partition' ? ' across its line' : ''
  const turns = thing.kind === 'furniture' || thing.kind === 'box' ? ' R turns it by 15°.' : ''
  const out = thing.kind === 'partition' ? 'Delete joins its two rooms.' : 'Delete takes it out.'
  return `${label}: arrow keys move it${along} by 10 mm, with Shift 100, with Alt 1.${turns} ${out}`
}

function restingHint(hasSelection: boolean): string {
  return hasSelection
    ? 'Arrow keys walk the walls; Enter goes to a corner, which arrow keys move.'
    : 'Press a wall, Ceiling or Floor: what it is, and what else it could be.'
}

/** What the next press adds to an outline being drawn. */
export function drawHint(
  { points, closing }: Pick<DrawState, 'points' | 'closing'>,
  closes: boolean,
  isTouch: boolean,
): string {
  const count = points.length
  if (closing !== null)
    return 'Drawn in the accent colour: the room as it would close. Nothing is changed before you say so.'
  if (isTouch) return touchDrawHint(count)
  if (closes) return 'Press: close the outline on its first corner.'
  if (count === 0) return 'Press where the first corner stands, or type a length and a direction above. Escape: leave.'
  const end = count < 3 ? '' : ' Press the first corner, or Enter, to close.'
  return `Press: next corner. Hold Alt to release right angles and the grid.${end} Backspace: take the last back. Escape: leave.`
}

/** The same for a finger, which has no keys. */
function touchDrawHint(count: number): string {
  if (count === 0) return 'Touch where the first corner stands.'
  return count < 3 ? 'Touch where the next corner stands.' : 'Touch the next corner, or the first one to close.'
}

/** Said while something is in the hand; a finger has no keys to be told of. */
export function dragHint(
  what: string,
  { isThing, isTouch }: { readonly isThing: boolean; readonly isTouch: boolean },
): string {
  if (isTouch) return what
  if (isThing) return `${what} Escape puts it back, Alt releases edges and the grid.`
  return `${what} Release to keep it, Escape to put it back. Alt releases right angles and the grid.`
}

/** Said while a wall or corner is held where it cannot be. */
export function refusedDragHint(refusal: string, hasGoodPlace: boolean): string {
  const why = refusal.replace(/; (it|the drawing) was kept [a-z ]+\.$/, '.')
  return `${why} Release: it stays ${hasGoodPlace ? 'at the last place that works' : 'where it was'}.`
}

/** What a keyboard reader hears when the selection changes. */
export function selectionSpoken(
  project: Project,
  room: Room,
  { surfaceIds, cornerId, thing }: Pick<HintInput, 'surfaceIds' | 'cornerId' | 'thing'>,
): string {
  if (thing !== null) return thingSpoken(project, room, thing)
  if (cornerId !== null) return `${cornerLabel(room, cornerId)} selected. Arrow keys move it.`
  const [only] = surfaceIds
  if (only === undefined) return `Nothing selected: the whole ${project.rooms.length > 1 ? `of ${room.name}` : 'room'}.`
  if (surfaceIds.length > 1) return `${surfaceIds.map((id) => surfaceLabel(room, id)).join(', ')} selected.`
  const length = wallLength(room, only)
  const size = length === null ? '' : `, ${formatLength(length, project.units)} long`
  return `${surfaceLabel(room, only)}${size}, selected.`
}

/** Length of a wall as drawn; null for the ceiling and the floor. */
export function wallLength(room: Room, wallId: string): Millimetres | null {
  const index = room.walls.findIndex((wall) => wall.id === wallId)
  const from = room.corners[index]
  const to = room.corners[(index + 1) % room.corners.length]
  return from && to ? Math.hypot(to.xMm - from.xMm, to.yMm - from.yMm) : null
}
