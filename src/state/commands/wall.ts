import type { Corner, Room } from '#analysis/room.ts'
import type { Command, Refusal } from '#state/command.ts'
import { positive } from '#state/commands/check.ts'
import { editRoom } from '#state/commands/edit.ts'
import { checked, withCorners } from '#state/commands/outline.ts'
import type { Millimetres } from '#units/quantity.ts'
import { fail, type Result } from '#units/result.ts'

type Vector = readonly [x: number, y: number]

/** Sets a wall's length. One end moves along the wall's line and the wall there moves parallel with it: angles stay. */
export function setWallLength(roomId: string, wallId: string, length: Millimetres, moves: 'from' | 'to'): Command {
  return {
    label: 'set wall length',
    apply: (project) =>
      editRoom(project, roomId, (room) => {
        const index = room.walls.findIndex((wall) => wall.id === wallId)
        if (index < 0) return noWall(wallId)
        const refused = positive(`Wall ${index + 1}: its length`, length)
        if (refused) return fail(refused)
        const along = direction(room, index)
        const [from, to] = ends(room, index)
        const longer = length - Math.hypot(to.xMm - from.xMm, to.yMm - from.yMm)
        const by = moves === 'to' ? longer : -longer
        return slideWall(room, moves === 'to' ? index + 1 : index - 1, [along[0] * by, along[1] * by])
      }),
  }
}

/** Moves a wall parallel to itself; positive is into the room (to the left of its direction). */
export function moveWall(roomId: string, wallId: string, inward: Millimetres): Command {
  return {
    label: 'move wall',
    apply: (project) =>
      editRoom(project, roomId, (room) => {
        const index = room.walls.findIndex((wall) => wall.id === wallId)
        if (index < 0) return noWall(wallId)
        const along = direction(room, index)
        return slideWall(room, index, [-along[1] * inward, along[0] * inward])
      }),
  }
}

/** Shifts wall `index` by a vector; its ends slide along the neighbouring walls' lines where those cross it. */
function slideWall(room: Room, index: number, shift: Vector): Result<Room, Refusal> {
  const count = room.corners.length
  const at = ((index % count) + count) % count
  const next = (at + 1) % count
  const [from, to] = ends(room, at)
  const along = direction(room, at)
  const moved: Vector = [from.xMm + shift[0], from.yMm + shift[1]]
  const start = meet(moved, along, from, direction(room, at - 1)) ?? moved
  const end = meet(moved, along, to, direction(room, at + 1)) ?? [to.xMm + shift[0], to.yMm + shift[1]]
  return checked(
    withCorners(room, (corner, i) => {
      if (i === at) return { ...corner, xMm: start[0], yMm: start[1] }
      if (i === next) return { ...corner, xMm: end[0], yMm: end[1] }
      return corner
    }),
  )
}

/** Where two lines cross; null when they are nearly parallel. */
function meet(p: Vector, u: Vector, corner: Corner, w: Vector): Vector | null {
  const cross = u[0] * w[1] - u[1] * w[0]
  if (Math.abs(cross) < 0.02) return null
  const t = ((corner.xMm - p[0]) * w[1] - (corner.yMm - p[1]) * w[0]) / cross
  return [p[0] + t * u[0], p[1] + t * u[1]]
}

function ends(room: Room, index: number): readonly [Corner, Corner] {
  const count = room.corners.length
  const at = ((index % count) + count) % count
  return [room.corners[at] as Corner, room.corners[(at + 1) % count] as Corner]
}

function direction(room: Room, index: number): Vector {
  const [from, to] = ends(room, index)
  const length = Math.hypot(to.xMm - from.xMm, to.yMm - from.yMm)
  return [(to.xMm - from.xMm) / length, (to.yMm - from.yMm) / length]
}

function noWall(wallId: string): Result<Room, Refusal> {
  return fail({ code: 'no-wall', message: `There is no wall "${wallId}" in this room.` })
}
