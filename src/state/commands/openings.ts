import type { Opening, Room } from '#analysis/room.ts'
import type { Project } from '#project/project.ts'
import type { Command, Refusal } from '#state/command.ts'
import { changedEntry, editRoom, idGiver, noThing } from '#state/commands/edit.ts'
import { openingRefusal } from '#state/commands/openingChecks.ts'
import { fail, ok, type Result } from '#units/result.ts'

/** Puts a door, window, vehicle door or vent into a wall. */
export function addOpening(roomId: string, opening: Omit<Opening, 'id'>): Command {
  return {
    label: `add ${opening.name.trim()}`,
    apply: (project) =>
      editRoom(project, roomId, (room) => {
        const added = { ...opening, id: idGiver(project)('opening'), name: opening.name.trim() }
        return checkedOpening(project, { ...room, openings: [...room.openings, added] }, added)
      }),
  }
}

/** Changes what is said of an opening, its place in the wall among it. */
export function changeOpening(roomId: string, id: string, patch: Partial<Omit<Opening, 'id'>>): Command {
  return {
    label: 'change opening',
    apply: (project) =>
      editRoom(project, roomId, (room) => {
        const changed = changedEntry(room.openings, id, (opening) => ({ ...opening, ...patch }))
        if (!changed) return noThing('opening', id)
        return checkedOpening(project, { ...room, openings: changed.entries }, changed.entry)
      }),
  }
}

function checkedOpening(project: Project, room: Room, opening: Opening): Result<Room, Refusal> {
  const refused = openingRefusal(room, opening, project.units)
  return refused ? fail(refused) : ok(room)
}
