import type { Room } from '#analysis/room.ts'
import type { Project } from '#project/project.ts'
import type { Refusal } from '#state/command.ts'
import { followWalls } from '#state/commands/wallChoices.ts'
import { fail, ok, type Result } from '#units/result.ts'

/** The project with one room changed, every scheme's choices following its walls; refuses an unknown room. */
export function editRoom(
  project: Project,
  roomId: string,
  change: (room: Room) => Result<Room, Refusal>,
): Result<Project, Refusal> {
  const index = project.rooms.findIndex((room) => room.id === roomId)
  const room = project.rooms[index]
  if (!room) return fail({ code: 'no-room', message: `There is no room "${roomId}" in this project.` })
  const changed = change(room)
  if (!changed.ok) return changed
  if (changed.value === room) return ok(project)
  return ok({
    ...project,
    rooms: project.rooms.with(index, changed.value),
    schemes: followWalls(project.schemes, room, changed.value),
  })
}

/** Wall 1, Wall 2 ..., Ceiling, Floor. */
export function surfaceLabel(room: Room, surfaceId: string): string {
  if (surfaceId === room.ceiling.id) return 'Ceiling'
  if (surfaceId === room.floor.id) return 'Floor'
  return `Wall ${room.walls.findIndex((wall) => wall.id === surfaceId) + 1}`
}

/** The first id of the form prefix-n that is not taken. */
export function freeId(prefix: string, taken: Iterable<string>): string {
  const used = new Set(taken)
  let n = 1
  while (used.has(`${prefix}-${n}`)) n += 1
  return `${prefix}-${n}`
}
