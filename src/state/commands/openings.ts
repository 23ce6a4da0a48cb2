import type { Opening, Room } from '#analysis/room.ts'
import type { Project } from '#project/project.ts'
import type { Command, Refusal } from '#state/command.ts'
import { changedEntry, editRoom, idGiver, noThing } from '#state/commands/edit.ts'
import { openingRefusal } from '#state/commands/openingChecks.ts'
import { withFittingFill } from '#state/commands/openingFits.ts'
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

/** Changes what is said of an opening, its place in the wall among it. What fills it goes where another kind cannot hold it. */
export function changeOpening(roomId: string, id: string, patch: Partial<Omit<Opening, 'id'>>): Command {
  return {
    label: 'change opening',
    apply: (project) => {
      const changed = editRoom(project, roomId, (room) => {
        const found = changedEntry(room.openings, id, (opening) => ({ ...opening, ...patch }))
        if (!found) return noThing('opening', id)
        return checkedOpening(project, { ...room, openings: found.entries }, found.entry)
      })
      return changed.ok && patch.kind ? ok(withFittingFill(changed.value, roomId, id)) : changed
    },
  }
}

function checkedOpening(project: Project, room: Room, opening: Opening): Result<Room, Refusal> {
  const refused = openingRefusal(room, opening, project.units)
  return refused ? fail(refused) : ok(room)
}
