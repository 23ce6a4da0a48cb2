import type { Room } from '#analysis/room.ts'
import { surfaceLabel } from '#state/commands/edit.ts'
import type { Target } from '#ui/canvas/nearest.ts'
import { formatLength } from '#units/format.ts'
import type { LengthUnit, Millimetres } from '#units/quantity.ts'
import { unreachable } from '#units/result.ts'

/** Stands under every plan. */
export const CAUTION_LINE =
  'Preliminary design. Local codes govern; structure and fire separation need licensed professionals.'

/** Corner 1, Corner 2 ... */
export function cornerLabel(room: Room, cornerId: string): string {
  return `Corner ${room.corners.findIndex((corner) => corner.id === cornerId) + 1}`
}

/** What a press will do where the pointer is, with the Select tool. */
export function selectHint(
  room: Room,
  target: Target | null,
  selected: readonly string[],
  cornerId: string | null,
): string {
  if (target === null) {
    return cornerId === null
      ? restingHint(selected.length > 0)
      : 'Arrow keys move the corner 10 mm, with Shift 100, with Alt 1. Enter goes back to its wall.'
  }
  switch (target.kind) {
    case 'corner':
      return `Drag: move ${cornerLabel(room, target.id)}. Hold Alt to release right angles and the grid.`
    case 'wall': {
      const label = surfaceLabel(room, target.id)
      return selected.includes(target.id)
        ? `Drag: move ${label} parallel to itself. Press with Shift: take it out of the selection.`
        : `Press: select ${label}. Press with Shift: add it to the selection.`
    }
    case 'inside':
      return selected.length > 0 ? 'Press: select nothing and see the whole room.' : restingHint(false)
    case 'outside':
      return 'Drag: move the paper. Wheel: closer or further away.'
    default:
      return unreachable(target)
  }
}

function restingHint(hasSelection: boolean): string {
  return hasSelection
    ? 'Arrow keys walk the walls; Enter goes to a corner, which arrow keys move.'
    : 'Press a wall, Ceiling or Floor: what it is, and what else it could be.'
}

/** What the next press adds to an outline being drawn. */
export function drawHint(count: number, closes: boolean, isTouch: boolean): string {
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

/** Said while a wall or corner is in the hand. */
export function dragHint(what: string): string {
  return `${what} Release to keep it, Escape to put it back. Alt releases right angles and the grid.`
}

/** Said while a wall or corner is held where it cannot be. */
export function refusedDragHint(refusal: string, hasGoodPlace: boolean): string {
  const why = refusal.replace(/; (it|the drawing) was kept [a-z ]+\.$/, '.')
  return `${why} Release: it stays ${hasGoodPlace ? 'at the last place that works' : 'where it was'}.`
}

/** What a keyboard reader hears when the selection changes. */
export function selectionSpoken(
  room: Room,
  surfaceIds: readonly string[],
  cornerId: string | null,
  unit: LengthUnit,
): string {
  if (cornerId !== null) return `${cornerLabel(room, cornerId)} selected. Arrow keys move it.`
  const [only] = surfaceIds
  if (only === undefined) return 'Nothing selected: the whole room.'
  if (surfaceIds.length > 1) return `${surfaceIds.map((id) => surfaceLabel(room, id)).join(', ')} selected.`
  const length = wallLength(room, only)
  const size = length === null ? '' : `, ${formatLength(length, unit)} long`
  return `${surfaceLabel(room, only)}${size}, selected.`
}

/** Length of a wall as drawn; null for the ceiling and the floor. */
export function wallLength(room: Room, wallId: string): Millimetres | null {
  const index = room.walls.findIndex((wall) => wall.id === wallId)
  const from = room.corners[index]
  const to = room.corners[(index + 1) % room.corners.length]
  return from && to ? Math.hypot(to.xMm - from.xMm, to.yMm - from.yMm) : null
}
