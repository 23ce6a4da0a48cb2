import type { Obstacle, Room } from '#analysis/room.ts'
import type { Command, Refusal } from '#state/command.ts'
import { named, notTooDeep } from '#state/commands/check.ts'
import { changedEntry, editRoom, idGiver, noThing } from '#state/commands/edit.ts'
import { footprintRefusal } from '#state/commands/rings.ts'
import { fail, ok, type Result } from '#units/result.ts'

/** Puts a column, pier or chimney breast into the room. */
export function addObstacle(roomId: string, obstacle: Omit<Obstacle, 'id'>): Command {
  return {
    label: `add ${obstacle.name.trim()}`,
    apply: (project) =>
      editRoom(project, roomId, (room) => {
        const added = { ...obstacle, id: idGiver(project)('obstacle'), name: obstacle.name.trim() }
        return checkedObstacle({ ...room, obstacles: [...room.obstacles, added] }, added)
      }),
  }
}

export function changeObstacle(roomId: string, id: string, patch: Partial<Omit<Obstacle, 'id'>>): Command {
  return {
    label: 'change obstacle',
    apply: (project) => editRoom(project, roomId, (room) => withObstacle(room, id, (it) => ({ ...it, ...patch }))),
  }
}

/** The room with one obstacle changed; refused where it cannot stand there. */
export function withObstacle(room: Room, id: string, change: (obstacle: Obstacle) => Obstacle): Result<Room, Refusal> {
  const changed = changedEntry(room.obstacles, id, change)
  if (!changed) return noThing('obstacle', id)
  return checkedObstacle({ ...room, obstacles: changed.entries }, changed.entry)
}

function checkedObstacle(room: Room, { name, corners, liningMm }: Obstacle): Result<Room, Refusal> {
  const refused =
    named('An obstacle', name) ?? notTooDeep(`"${name}": its lining`, liningMm) ?? footprintRefusal(room, name, corners)
  return refused ? fail(refused) : ok(room)
}
