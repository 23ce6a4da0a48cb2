import type { Room } from '#analysis/room.ts'
import { outlineArea } from '#geometry/outline.ts'
import type { Point } from '#geometry/polygon.ts'
import type { Millimetres } from '#units/quantity.ts'

/** A wall to measure along (s, from its first corner) and into the room from (t, from the line that was drawn), mm. */
export interface WallFrame {
  readonly index: number
  readonly id: string
  readonly from: Point
  /** Unit directions. */
  readonly along: Point
  readonly inward: Point
  readonly lengthMm: Millimetres
}

/** Every wall that has a length, by id. */
export function wallFrames(room: Room): ReadonlyMap<string, WallFrame> {
  const corners = room.corners.map(({ xMm, yMm }): Point => [xMm, yMm])
  const turn = outlineArea(corners) >= 0 ? 1 : -1
  const frames = new Map<string, WallFrame>()
  room.walls.forEach(({ id }, index) => {
    const from = corners[index]
    const to = corners[(index + 1) % corners.length]
    if (!from || !to) return
    const lengthMm = Math.hypot(to[0] - from[0], to[1] - from[1])
    if (!(lengthMm > 0)) return
    const along: Point = [(to[0] - from[0]) / lengthMm, (to[1] - from[1]) / lengthMm]
    frames.set(id, { index, id, from, along, inward: [-along[1] * turn, along[0] * turn], lengthMm })
  })
  return frames
}

/** The place at s along a wall and t into the room, mm. */
export function onWall({ from, along, inward }: WallFrame, s: Millimetres, t: Millimetres): Point {
  return [from[0] + along[0] * s + inward[0] * t, from[1] + along[1] * s + inward[1] * t]
}
