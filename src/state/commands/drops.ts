import type { Drop, Room } from '#analysis/room.ts'
import type { Command, Refusal } from '#state/command.ts'
import { highestCeilingOver } from '#state/commands/ceilingOver.ts'
import { named, notTooDeep, positive } from '#state/commands/check.ts'
import { changedEntry, editRoom, idGiver, noThing } from '#state/commands/edit.ts'
import { footprintRefusal } from '#state/commands/rings.ts'
import { formatLength } from '#units/format.ts'
import type { LengthUnit } from '#units/quantity.ts'
import { fail, ok, type Result } from '#units/result.ts'

/** Hangs a beam or duct soffit under the ceiling. */
export function addDrop(roomId: string, drop: Omit<Drop, 'id'>): Command {
  return {
    label: `add ${drop.name.trim()}`,
    apply: (project) =>
      editRoom(project, roomId, (room) => {
        const added = { ...drop, id: idGiver(project)('drop'), name: drop.name.trim() }
        return checkedDrop({ ...room, drops: [...room.drops, added] }, added, project.units)
      }),
  }
}

export function changeDrop(roomId: string, id: string, patch: Partial<Omit<Drop, 'id'>>): Command {
  return {
    label: 'change drop',
    apply: (project) =>
      editRoom(project, roomId, (room) => withDrop(room, id, project.units, (drop) => ({ ...drop, ...patch }))),
  }
}

/** The room with one drop changed; refused where it cannot hang there. */
export function withDrop(
  room: Room,
  id: string,
  units: LengthUnit,
  change: (drop: Drop) => Drop,
): Result<Room, Refusal> {
  const changed = changedEntry(room.drops, id, change)
  if (!changed) return noThing('drop', id)
  return checkedDrop({ ...room, drops: changed.entries }, changed.entry, units)
}

function checkedDrop(room: Room, drop: Drop, units: LengthUnit): Result<Room, Refusal> {
  const { name } = drop
  const refused =
    named('A drop', name) ??
    positive(`"${name}": the height under it`, drop.undersideMm) ??
    notTooDeep(`"${name}": its boxing below`, drop.boxBelowMm) ??
    notTooDeep(`"${name}": its boxing at the sides`, drop.boxSidesMm) ??
    boxedToTheFloor(drop, units) ??
    footprintRefusal(room, name, drop.corners) ??
    dropAboveCeiling(room, drop, units)
  return refused ? fail(refused) : ok(room)
}

function boxedToTheFloor({ name, boxBelowMm, undersideMm }: Drop, units: LengthUnit): Refusal | null {
  if (boxBelowMm < undersideMm) return null
  const message = `The box below "${name}" would be ${formatLength(boxBelowMm, units)} deep and only ${formatLength(undersideMm, units)} are under it; make the box less deep.`
  return { code: 'boxed-to-the-floor', message }
}

/** A refusal where a drop would hang below the ceiling nowhere. */
export function dropAboveCeiling(room: Room, drop: Drop, units: LengthUnit): Refusal | null {
  const ceiling = highestCeilingOver(room, drop.corners)
  if (ceiling === null || drop.undersideMm < ceiling) return null
  const message = `The underside of "${drop.name}" would be at ${formatLength(drop.undersideMm, units)} and the ceiling there is at ${formatLength(ceiling, units)}; a drop hangs below it.`
  return { code: 'above-the-ceiling', message }
}
