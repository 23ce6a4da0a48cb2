import { outlineArea } from '#geometry/outline.ts'
import type { Project } from '#project/project.ts'
import type { Command, Refusal } from '#state/command.ts'
import { positive } from '#state/commands/check.ts'
import { editRoom, idGiver, noRoom } from '#state/commands/edit.ts'
import { isAlike } from '#state/commands/mergeWalls.ts'
import { otherSide } from '#state/commands/partitionSides.ts'
import { ringOf } from '#state/commands/rings.ts'
import { direction, ends, type Slide, slideWall, type Vector } from '#state/commands/slideWall.ts'
import type { Millimetres } from '#units/quantity.ts'
import { fail, type Result } from '#units/result.ts'

/**
 * Sets a wall's length. One end moves along the wall's line and the neighbour there moves parallel with it, so that
 * angles stay.
 */
export function setWallLength(roomId: string, wallId: string, length: Millimetres, moves: 'from' | 'to'): Command {
  return {
    label: 'set wall length',
    apply: (project) => {
      const room = project.rooms.find(({ id }) => id === roomId)
      if (!room) return noRoom(roomId)
      const index = room.walls.findIndex((wall) => wall.id === wallId)
      if (index < 0) return noWall(wallId)
      const refused = positive(`Wall ${index + 1}: its length`, length)
      if (refused) return fail(refused)
      const along = direction(room, index)
      const [from, to] = ends(room, index)
      const [fixed, moving, sign] = moves === 'to' ? ([from, to, 1] as const) : ([to, from, -1] as const)
      const shift: Vector = [
        fixed.xMm + sign * along[0] * length - moving.xMm,
        fixed.yMm + sign * along[1] * length - moving.yMm,
      ]
      return slideBoth(project, roomId, moves === 'to' ? index + 1 : index - 1, {
        shift,
        pulls: moves === 'to' ? 'before' : 'after',
      })
    },
  }
}

/** Moves a wall parallel to itself; positive is into the room. The other side of a partition moves with it. */
export function moveWall(roomId: string, wallId: string, inward: Millimetres): Command {
  return { label: 'move wall', apply: (project) => wallMoved(project, roomId, wallId, inward, true) }
}

/** The project with a wall moved into its room; `withOther`: its partition keeps its depth. */
export function wallMoved(
  project: Project,
  roomId: string,
  wallId: string,
  inward: Millimetres,
  withOther: boolean,
): Result<Project, Refusal> {
  const room = project.rooms.find(({ id }) => id === roomId)
  if (!room) return noRoom(roomId)
  const index = room.walls.findIndex((wall) => wall.id === wallId)
  if (index < 0) return noWall(wallId)
  if (!Number.isFinite(inward)) {
    return fail({ code: 'not-a-distance', message: `Wall ${index + 1} needs a distance to move by; it was kept.` })
  }
  const along = direction(room, index)
  const by = outlineArea(ringOf(room.corners)) >= 0 ? inward : -inward
  const move: Move = { shift: [-along[1] * by, along[0] * by], pulls: null }
  return withOther ? slideBoth(project, roomId, index, move) : slideIn(project, roomId, index, move)
}

type Move = Pick<Slide, 'shift' | 'pulls'>

/** Slides a wall and, where it is one side of a partition, the other side too, so that its depth stays. */
function slideBoth(project: Project, roomId: string, index: number, move: Move): Result<Project, Refusal> {
  const slid = slideIn(project, roomId, index, move)
  const wall = project.rooms.find(({ id }) => id === roomId)?.walls.at(index % wallCount(project, roomId))
  const other = wall && otherSide(project, roomId, wall.id)
  if (!slid.ok || !other) return slid
  const far = slid.value.rooms.find(({ id }) => id === other.room)
  const place = far?.walls.findIndex(({ id }) => id === other.wall) ?? -1
  return place < 0 ? slid : slideIn(slid.value, other.room, place, { ...move, pulls: null })
}

function wallCount(project: Project, roomId: string): number {
  return project.rooms.find(({ id }) => id === roomId)?.walls.length ?? 1
}

function slideIn(project: Project, roomId: string, index: number, move: Move): Result<Project, Refusal> {
  return editRoom(project, roomId, (room) =>
    slideWall(room, index, {
      ...move,
      give: idGiver(project),
      isAlike: (one, other) => isAlike(one, other, project.schemes),
    }),
  )
}

function noWall(wallId: string): Result<never, Refusal> {
  return fail({ code: 'no-wall', message: `There is no wall "${wallId}" in this room.` })
}
