import type { CeilingPart, CeilingShape, HeightPoint, Room } from '#analysis/room.ts'
import type { Command, Refusal } from '#state/command.ts'
import { named, onThePlan, positive } from '#state/commands/check.ts'
import { changedEntry, editRoom, idGiver, noThing } from '#state/commands/edit.ts'
import { footprintRefusal } from '#state/commands/rings.ts'
import { underCeiling } from '#state/commands/underCeiling.ts'
import { fail, ok, type Result } from '#units/result.ts'

/** Adds a measured height to the room, or to one part of its ceiling. */
export function addHeight(roomId: string, partId: string | null, point: Omit<HeightPoint, 'id'>): Command {
  return {
    label: 'add height',
    apply: (project) =>
      editRoom(project, roomId, (room) => {
        const added = { ...point, id: idGiver(project)('height') }
        const refused = heightRefusal(added)
        if (refused) return fail(refused)
        if (partId === null) return ok({ ...room, heights: [...room.heights, added] })
        const changed = changedEntry(room.ceilingParts, partId, (part) => ({
          ...part,
          heights: [...part.heights, added],
        }))
        return changed ? ok({ ...room, ceilingParts: changed.entries }) : noThing('ceiling part', partId)
      }),
  }
}

export function changeHeight(roomId: string, id: string, patch: Partial<Omit<HeightPoint, 'id'>>): Command {
  return {
    label: 'change height',
    apply: (project) =>
      editRoom(project, roomId, (room) => {
        const changed = withHeight(room, id, (point) => ({ ...point, ...patch }))
        return changed.ok ? underCeiling(room, changed.value, project.units) : changed
      }),
  }
}

/** The room with one measured height changed, of the room or of a part of its ceiling. */
export function withHeight(room: Room, id: string, change: (point: HeightPoint) => HeightPoint): Result<Room, Refusal> {
  const found = [...room.heights, ...room.ceilingParts.flatMap((part) => part.heights)].find((point) => point.id === id)
  if (!found) return noThing('height', id)
  const refused = heightRefusal(change(found))
  if (refused) return fail(refused)
  const changed = (point: HeightPoint) => (point.id === id ? change(point) : point)
  const ceilingParts = room.ceilingParts.map((part) =>
    part.heights.some((point) => point.id === id) ? { ...part, heights: part.heights.map(changed) } : part,
  )
  return ok({ ...room, heights: room.heights.map(changed), ceilingParts })
}

/** Reads several heights as a level ceiling at the lowest, or as the planes they were measured on. */
export function setCeilingShape(roomId: string, ceilingShape: CeilingShape): Command {
  return {
    label: ceilingShape === 'level' ? 'read the ceiling as level' : 'read the ceiling as measured',
    apply: (project) => editRoom(project, roomId, (room) => ok({ ...room, ceilingShape })),
  }
}

/** Gives a part of the ceiling heights of its own. */
export function addCeilingPart(roomId: string, part: Omit<CeilingPart, 'id'>): Command {
  return {
    label: `add ${part.name.trim()}`,
    apply: (project) =>
      editRoom(project, roomId, (room) => {
        const give = idGiver(project)
        const heights = part.heights.map((point) => ({ ...point, id: give('height') }))
        const added = { ...part, id: give('part'), name: part.name.trim(), heights }
        return checkedPart({ ...room, ceilingParts: [...room.ceilingParts, added] }, added)
      }),
  }
}

export function changeCeilingPart(roomId: string, id: string, patch: Partial<Omit<CeilingPart, 'id'>>): Command {
  return {
    label: 'change ceiling part',
    apply: (project) => editRoom(project, roomId, (room) => withCeilingPart(room, id, (it) => ({ ...it, ...patch }))),
  }
}

/** The room with one part of its ceiling changed; refused where it cannot be. */
export function withCeilingPart(
  room: Room,
  id: string,
  change: (part: CeilingPart) => CeilingPart,
): Result<Room, Refusal> {
  const changed = changedEntry(room.ceilingParts, id, change)
  if (!changed) return noThing('ceiling part', id)
  return checkedPart({ ...room, ceilingParts: changed.entries }, changed.entry)
}

function checkedPart(room: Room, part: CeilingPart): Result<Room, Refusal> {
  const refused =
    named('A part of the ceiling', part.name) ??
    (part.heights.length === 0 ? lastHeight(`"${part.name}"`) : null) ??
    part.heights.map(heightRefusal).find((refusal) => refusal !== null) ??
    footprintRefusal(room, part.name, part.corners)
  return refused ? fail(refused) : ok(room)
}

/** The refusal to leave something without any height. */
export function lastHeight(what: string): Refusal {
  return { code: 'last-height', message: `${what} needs at least one measured height; this one stays.` }
}

function heightRefusal({ xMm, yMm, heightMm, floorMm }: HeightPoint): Refusal | null {
  return (
    positive('The height', heightMm) ??
    onThePlan('A measured height', xMm, yMm) ??
    onThePlan('The floor at a measured height', floorMm)
  )
}
