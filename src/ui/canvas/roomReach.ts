import type { Opening, Room } from '#analysis/room.ts'
import { outlineArea } from '#geometry/outline.ts'
import type { Point } from '#geometry/polygon.ts'
import { cornerPoints } from '#ui/canvas/nearest.ts'
import type { Millimetres } from '#units/quantity.ts'

/** An outward leaf hangs at the far face of its wall, about this far behind the drawn line, mm. @source our own choice */
const BEHIND_MM: Millimetres = 200

/** Everything of a room that the paper has to hold: its corners, and where its doors swing outward. */
export function roomReach(room: Room): readonly Point[] {
  const corners = cornerPoints(room)
  const turn = outlineArea(corners) >= 0 ? 1 : -1
  const swings = room.openings.flatMap((opening): readonly Point[] => {
    const index = room.walls.findIndex(({ id }) => id === opening.wall)
    const [from, to] = [corners[index], corners[(index + 1) % corners.length]]
    return from && to && swingsOut(opening) ? outwardEnds(opening, from, to, turn) : []
  })
  return [...corners, ...swings]
}

function swingsOut({ kind, swing }: Opening): boolean {
  return kind === 'door' && swing === 'out'
}

/** Where the leaf's tip may come to stand, at either jamb. */
function outwardEnds({ fromMm, widthMm, leaves }: Opening, from: Point, to: Point, turn: number): readonly Point[] {
  const length = Math.hypot(to[0] - from[0], to[1] - from[1])
  const along: Point = [(to[0] - from[0]) / length, (to[1] - from[1]) / length]
  const out = (BEHIND_MM + (leaves === 'two' ? widthMm / 2 : widthMm)) * turn
  return [fromMm, fromMm + widthMm].map(
    (s): Point => [from[0] + along[0] * s + along[1] * out, from[1] + along[1] * s - along[0] * out],
  )
}
