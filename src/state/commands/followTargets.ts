import type { Room } from '#analysis/room.ts'
import type { Receiver, Through } from '#analysis/target.ts'
import type { Project } from '#project/project.ts'
import { followedWalls } from '#state/commands/wallChoices.ts'
import { wallHeirs } from '#state/commands/wallHeirs.ts'

/** The project without a source: whoever heard it hears none. */
export function withoutSource(project: Project, id: string): Project {
  return {
    ...project,
    sources: project.sources.filter((source) => source.id !== id),
    receivers: project.receivers.map((receiver) => (receiver.source === id ? { ...receiver, source: null } : receiver)),
  }
}

/** The project without a receiver, to which no duct leads any more. */
export function withoutReceiver(project: Project, id: string): Project {
  return withLeadsOf({ ...project, receivers: project.receivers.filter((receiver) => receiver.id !== id) })
}

/** Ducts that lead only to receivers that are there. */
export function withLeadsOf(project: Project): Project {
  const there = new Set(project.receivers.map(({ id }) => id))
  return { ...project, rooms: project.rooms.map((room) => ledTo(room, (id) => (there.has(id) ? [id] : []))) }
}

/** A room whose ducts lead to what their receivers have become. */
export function ledTo(room: Room, become: (receiverId: string) => readonly string[]): Room {
  const { ducts } = room
  if (!ducts) return room
  const led = ducts.map((duct) => {
    const leadsTo = [...new Set(duct.leadsTo.flatMap(become))]
    return sameList(leadsTo, duct.leadsTo) ? duct : { ...duct, leadsTo }
  })
  return led.every((duct, i) => duct === ducts[i]) ? room : { ...room, ducts: led }
}

function sameList(one: readonly string[], other: readonly string[]): boolean {
  return one.length === other.length && one.every((id, i) => id === other[i])
}

/**
 * Receivers after a change of a room: what is heard through a wall is heard through a new one that follows it too, as a
 * scheme's choice does, and through the one that ran on over its place. Behind an outline drawn anew it is heard through all
 * walls: fewer would make the answer better than the building.
 */
export function followReceivers(receivers: readonly Receiver[], former: Room, room: Room): readonly Receiver[] {
  if (receivers.every((receiver) => receiver.room !== former.id)) return receivers
  const there = surfaceIds(room)
  const stays = former.walls.filter(({ id }) => there.has(id))
  if (stays.length === former.walls.length && stays.length === room.walls.length) return receivers
  const heirs = wallHeirs(former, room)
  const follows = [...followedWalls(former, room)].map(([id, from]) => [from, id] as const)
  const through = (parts: readonly Through[]) =>
    stays.length === 0
      ? throughAnew(parts, room)
      : throughOnce(
          throughCopies(parts, follows).map((part) => ({ ...part, surface: heirs.get(part.surface) ?? part.surface })),
        )
  return receivers.map((receiver) =>
    receiver.room === former.id
      ? { ...receiver, through: through(receiver.through).filter(({ surface }) => there.has(surface)) }
      : receiver,
  )
}

function throughAnew(parts: readonly Through[], { walls, ceiling, floor }: Room): readonly Through[] {
  const level = parts.filter(({ surface }) => surface === ceiling.id || surface === floor.id)
  return level.length === parts.length ? level : [...walls.map(({ id }) => ({ surface: id })), ...level]
}

/** Every surface once, by what was said of it first. */
export function throughOnce(through: readonly Through[]): readonly Through[] {
  return through.filter((part, i) => through.findIndex(({ surface }) => surface === part.surface) === i)
}

/** The surfaces sound goes through, each followed by the new ones that say what it says. */
export function throughCopies(
  through: readonly Through[],
  copies: readonly (readonly [from: string, to: string])[],
): readonly Through[] {
  const named = new Set(through.map(({ surface }) => surface))
  return through.flatMap((part) => [
    part,
    ...copies
      .filter(([from, to]) => from === part.surface && !named.has(to))
      .map(([, surface]) => ({ ...part, surface })),
  ])
}

export function surfaceIds({ walls, ceiling, floor }: Room): ReadonlySet<string> {
  return new Set([...walls, ceiling, floor].map(({ id }) => id))
}
