import type { PlanPoint, Room } from '#analysis/room.ts'
import { intersection } from '#geometry/clip.ts'
import { validateOutline } from '#geometry/inset/validate.ts'
import { contains } from '#geometry/outline.ts'
import type { Point, Ring } from '#geometry/polygon.ts'
import type { Refusal } from '#state/command.ts'
import { onThePlan } from '#state/commands/check.ts'

/** Corners as a ring of points. */
export function ringOf(corners: readonly PlanPoint[]): Ring {
  return corners.map((corner): Point => [corner.xMm, corner.yMm])
}

/** Why a footprint cannot stand in, or hang over, a room: too few corners, sides that cross, nothing of it in the room. */
export function footprintRefusal(room: Room, name: string, corners: readonly PlanPoint[]): Refusal | null {
  const ring = ringOf(corners)
  return (
    onThePlan(`"${name}"`, ...ring.flat()) ??
    crossing(name, ring) ??
    (meetsRoom(room, ring) ? null : outside(room, name))
  )
}

function crossing(name: string, ring: Ring): Refusal | null {
  if (ring.length < 3) return { code: 'too-few-corners', message: `"${name}" needs at least three corners.` }
  if (!validateOutline(ring)) return null
  const message = `The sides of "${name}" would cross, touch or enclose nothing; move its corners so that they keep apart.`
  return { code: 'crossing', message }
}

function outside(room: Room, name: string): Refusal {
  const message = `"${name}" would lie outside ${room.name}; put it inside its walls.`
  return { code: 'outside', message }
}

/** Whether anything of a ring lies in the room. */
export function meetsRoom(room: Room, ring: Ring): boolean {
  const outline = ringOf(room.corners)
  if (outline.length < 3) return false
  if (ring.some((point) => contains(outline, point))) return true
  return intersection([{ outline: ring, holes: [] }], [{ outline, holes: [] }]).length > 0
}
