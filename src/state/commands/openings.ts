import type { Corner, Opening, Room } from '#analysis/room.ts'
import type { Refusal } from '#state/command.ts'
import type { Millimetres } from '#units/quantity.ts'
import { fail, ok, type Result } from '#units/result.ts'

/** Openings after walls have moved: one that would reach past its wall's end slides back; too wide a one is a refusal. */
export function settleOpenings(room: Room): Result<Room, Refusal> {
  let isSame = true
  const openings: Opening[] = []
  for (const opening of room.openings) {
    const index = room.walls.findIndex((wall) => wall.id === opening.wall)
    const most = wallLength(room.corners, index) - opening.widthMm
    if (most < 0) {
      const message = `Wall ${index + 1} would be shorter than its opening "${opening.name}" is wide; it was kept as it was.`
      return fail({ code: 'opening-too-wide', message })
    }
    isSame &&= opening.fromMm <= most
    openings.push(opening.fromMm <= most ? opening : { ...opening, fromMm: most })
  }
  return ok(isSame ? room : { ...room, openings })
}

function wallLength(corners: readonly Corner[], index: number): Millimetres {
  const from = corners[index]
  const to = corners[(index + 1) % corners.length]
  return from && to ? Math.hypot(to.xMm - from.xMm, to.yMm - from.yMm) : 0
}
