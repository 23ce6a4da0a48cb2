import type { Duct, DuctMade, Room } from '#analysis/room.ts'
import type { Airtightness, Leaks } from '#analysis/scheme.ts'
import { MOST_PEOPLE, MOST_REVERBERATION_S } from '#project/limits.ts'
import type { Project } from '#project/project.ts'
import type { Command, Refusal } from '#state/command.ts'
import { ductMadeRefusal, ductRefusal } from '#state/commands/ductChecks.ts'
import { changedEntry, editRoom, editScheme, idGiver, noThing } from '#state/commands/edit.ts'
import { ductTooLarge, leaksRefusal } from '#state/commands/leakChecks.ts'
import { fail, ok, type Result } from '#units/result.ts'

/** Says of a duct that goes out of the room. */
export function addDuct(roomId: string, duct: Omit<Duct, 'id'>): Command {
  return {
    label: `add ${duct.name.trim()}`,
    apply: (project) =>
      editRoom(project, roomId, (room) => {
        const added = { ...duct, id: idGiver(project)('duct'), name: duct.name.trim() }
        return checkedDuct(project, { ...room, ducts: [...(room.ducts ?? []), added] }, added)
      }),
  }
}

export function changeDuct(roomId: string, id: string, patch: Partial<Omit<Duct, 'id'>>): Command {
  return {
    label: 'change duct',
    apply: (project) =>
      editRoom(project, roomId, (room) => {
        const changed = changedEntry(room.ducts ?? [], id, (duct) => withLining({ ...duct, ...patch }, patch))
        if (!changed) return noThing('duct', id)
        return checkedDuct(project, { ...room, ducts: changed.entries }, changed.entry)
      }),
  }
}

/** A duct made shorter is lined no further than it goes, unless its lining is typed along with it. */
function withLining(duct: Duct, patch: Partial<Omit<Duct, 'id'>>): Duct {
  if (patch.made || patch.lengthMm === undefined || duct.made.linedLengthMm <= duct.lengthMm) return duct
  return { ...duct, made: { ...duct.made, linedLengthMm: duct.lengthMm } }
}

/** Takes a duct out, with what schemes say of it; the boxes that serve it stay and serve none. */
export function deleteDuct(roomId: string, id: string): Command {
  return {
    label: 'delete duct',
    apply: (project) =>
      editRoom(project, roomId, (room) => {
        const ducts = room.ducts ?? []
        const others = ducts.filter((duct) => duct.id !== id)
        return others.length === ducts.length ? noThing('duct', id) : ok({ ...room, ducts: others })
      }),
  }
}

function checkedDuct(project: Project, room: Room, duct: Duct): Result<Room, Refusal> {
  const refused =
    ductRefusal(duct, project.units) ?? nowhere(project, room, duct) ?? ductTooLarge(room, duct, project.units)
  return refused ? fail(refused) : ok(room)
}

/** A refusal where a duct goes through no surface of its room, or leads to nobody there is. */
function nowhere({ receivers }: Project, room: Room, { name, surface, leadsTo }: Duct): Refusal | null {
  const surfaces = [...room.walls, room.ceiling, room.floor]
  if (!surfaces.some(({ id }) => id === surface)) {
    const message = `"${name}" goes through "${surface}", which is no surface of ${room.name}; choose one of its walls, its ceiling or its floor.`
    return { code: 'no-surface', message }
  }
  const missing = leadsTo.find((id) => !receivers.some((receiver) => receiver.id === id))
  if (missing === undefined) return null
  const message = `"${name}" leads to "${missing}", and there is no such receiver; add it under Targets first.`
  return { code: 'no-receiver', message }
}

/** Says what a scheme does to a duct; null: it stays as it stands. */
export function makeDuctIn(schemeId: string, ductId: string, made: DuctMade | null): Command {
  return {
    label: made ? 'change duct in the scheme' : 'leave duct as it stands',
    apply: (project) =>
      editScheme(project, schemeId, (scheme) => {
        const duct = project.rooms.flatMap(({ ducts }) => ducts ?? []).find(({ id }) => id === ductId)
        if (!duct) return fail({ code: 'no-duct', message: `There is no duct "${ductId}" in this project any more.` })
        const refused = made && ductMadeRefusal(duct, made, project.units)
        if (refused) return fail(refused)
        const { ducts, ...rest } = scheme
        const now = put(ducts, ductId, made)
        return ok(now ? { ...rest, ducts: now } : rest)
      }),
  }
}

/** Says how many people are in the room at once; null: nobody knows. */
export function setPeople(roomId: string, people: number | null): Command {
  return {
    label: 'set people',
    apply: (project) => {
      if (people !== null && !(Number.isInteger(people) && people >= 0 && people <= MOST_PEOPLE)) {
        const message = `People have to be a whole number from 0 to ${MOST_PEOPLE}; the former number was kept.`
        return fail({ code: 'bad-people', message })
      }
      return editRoom(project, roomId, ({ people: _, ...room }) => ok(people === null ? room : { ...room, people }))
    },
  }
}

/** Says the reverberation time of the finished room, s; null: as is usual. */
export function setReverberation(roomId: string, seconds: number | null): Command {
  return {
    label: 'set reverberation time',
    apply: (project) => {
      if (seconds !== null && !(Number.isFinite(seconds) && seconds > 0 && seconds <= MOST_REVERBERATION_S)) {
        const message = `A reverberation time has to be more than 0 s and at most ${MOST_REVERBERATION_S} s; the former one was kept.`
        return fail({ code: 'bad-reverberation', message })
      }
      return editRoom(project, roomId, ({ reverberationS: _, ...room }) =>
        ok(seconds === null ? room : { ...room, reverberationS: seconds }),
      )
    },
  }
}

/** Says how well a scheme's joints and penetrations are closed. */
export function setAirtightness(schemeId: string, airtightness: Airtightness): Command {
  return {
    label: `make joints ${airtightness}`,
    apply: (project) => editScheme(project, schemeId, (scheme) => ok({ ...scheme, airtightness })),
  }
}

/** Says where one surface lets air through in a scheme; null: as the scheme's airtightness says, and no holes. */
export function setLeaks(schemeId: string, surfaceId: string, leaks: Leaks | null): Command {
  return {
    label: 'change leaks',
    apply: (project) =>
      editScheme(project, schemeId, (scheme) => {
        const room = project.rooms.find(({ walls, ceiling, floor }) =>
          [...walls, ceiling, floor].some(({ id }) => id === surfaceId),
        )
        if (!room) return fail({ code: 'no-surface', message: `There is no surface "${surfaceId}" in this project.` })
        const refused = leaks && leaksRefusal(room, surfaceId, leaks, project.units)
        if (refused) return fail(refused)
        const { leaks: former, ...rest } = scheme
        const now = put(former, surfaceId, leaks)
        return ok(now ? { ...rest, leaks: now } : rest)
      }),
  }
}

/** A record with one entry put in, or taken out where it is null; undefined where none is left. */
function put<Entry>(
  former: Readonly<Record<string, Entry>> | undefined,
  id: string,
  entry: Entry | null,
): Readonly<Record<string, Entry>> | undefined {
  const others = Object.entries(former ?? {}).filter(([other]) => other !== id)
  const all = entry === null ? others : [...others, [id, entry] as const]
  return all.length > 0 ? Object.fromEntries(all) : undefined
}
