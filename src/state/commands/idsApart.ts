import type { Room } from '#analysis/room.ts'
import type { Scheme } from '#analysis/scheme.ts'
import type { Project } from '#project/project.ts'

type WithId = { readonly id: string }

/**
 * The project with new ids in one room for whatever another room calls by the same one, so that the two can become one:
 * a file written by hand may count corners and things from 1 in every room.
 */
export function withIdsApart(
  project: Project,
  keptId: string,
  changedId: string,
  give: (prefix: string) => string,
): Project {
  const [kept, room] = [keptId, changedId].map((id) => project.rooms.find((other) => other.id === id))
  if (!kept || !room) return project
  const changed = roomApart(room, kept, give)
  return {
    ...project,
    rooms: project.rooms.map((other) => (other === room ? changed : other)),
    schemes: project.schemes.map((scheme) => followed(scheme, room, changed)),
  }
}

function roomApart(room: Room, kept: Room, give: (prefix: string) => string): Room {
  const apart = <Entry extends WithId>(prefix: string, own: readonly Entry[], others: readonly WithId[]) => {
    const taken = new Set(others.map(({ id }) => id))
    return own.map((entry) => (taken.has(entry.id) ? { ...entry, id: give(prefix) } : entry))
  }
  const measured = [kept, ...kept.ceilingParts].flatMap(({ heights }) => heights)
  const corners = apart('corner', room.corners, kept.corners)
  const ends = <Line extends { readonly from: string; readonly to: string }>(line: Line): Line => ({
    ...line,
    from: idNow(line.from, room.corners, corners),
    to: idNow(line.to, room.corners, corners),
  })
  return {
    ...room,
    corners,
    walls: room.walls.map(ends),
    diagonals: apart('diagonal', room.diagonals, kept.diagonals).map(ends),
    heights: apart('height', room.heights, measured),
    ceilingParts: apart('part', room.ceilingParts, kept.ceilingParts).map((part) => ({
      ...part,
      heights: apart('height', part.heights, measured),
    })),
    obstacles: apart('obstacle', room.obstacles, kept.obstacles),
    drops: apart('drop', room.drops, kept.drops),
    openings: apart('opening', room.openings, kept.openings),
    furniture: apart('furniture', room.furniture, kept.furniture),
  }
}

/** What an entry is called in a list that has the same entries in the same order. */
function idNow(id: string, before: readonly WithId[], now: readonly WithId[]): string {
  return now[before.findIndex((entry) => entry.id === id)]?.id ?? id
}

/** A scheme that says of the room's corners, obstacles and openings under their new ids what it said of them. */
function followed(scheme: Scheme, room: Room, changed: Room): Scheme {
  const walls = new Set(room.walls.map(({ id }) => id))
  const runsThrough = Object.entries(scheme.runsThrough ?? {}).map(
    ([corner, wall]) => [walls.has(wall) ? idNow(corner, room.corners, changed.corners) : corner, wall] as const,
  )
  const out = (scheme.takenOut ?? []).map((id) => idNow(id, room.obstacles, changed.obstacles))
  return {
    ...scheme,
    ...(scheme.runsThrough && { runsThrough: Object.fromEntries(runsThrough) }),
    ...(scheme.takenOut && { takenOut: [...new Set([...scheme.takenOut, ...out])] }),
    ...(scheme.openings && { openings: openingsFollowed(scheme.openings, room, changed) }),
  }
}

/** One id may name an opening of each room: what was said of it holds for both. */
function openingsFollowed(openings: NonNullable<Scheme['openings']>, room: Room, changed: Room) {
  const renamed = Object.entries(openings).map(
    ([id, made]) => [idNow(id, room.openings, changed.openings), made] as const,
  )
  return { ...openings, ...Object.fromEntries(renamed) }
}
