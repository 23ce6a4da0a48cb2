import type { Project } from '#project/project.ts'
import type { Refusal } from '#state/command.ts'
import { named } from '#state/commands/check.ts'

/** A name as it is, or numbered where a room has it already. */
export function freeRoomName(project: Project, wanted: string): string {
  let name = wanted
  for (let n = 2; project.rooms.some((room) => room.name === name); n += 1) name = `${wanted} ${n}`
  return name
}

/** Why a room cannot be called so. */
export function roomNameRefusal(project: Project, name: string, ownId: string | null): Refusal | null {
  const refused = named('A room', name)
  if (refused) return refused
  if (!project.rooms.some((room) => room.id !== ownId && room.name === name.trim())) return null
  return { code: 'name-taken', message: `There is already a room called "${name.trim()}"; give this one another name.` }
}
