import type { Room } from '#analysis/room.ts'
import type { Choice, Scheme } from '#analysis/scheme.ts'

/**
 * Schemes after a change of which walls there are: a new wall takes the choice of the wall it follows (one it was split
 * from, or the former first wall of an outline drawn anew), and choices for walls that are gone go with them.
 */
export function followWalls(schemes: readonly Scheme[], former: Room, room: Room): readonly Scheme[] {
  const follows = followedWalls(former, room)
  const gone = new Set(former.walls.map((wall) => wall.id))
  for (const wall of room.walls) gone.delete(wall.id)
  if (follows.size === 0 && gone.size === 0) return schemes
  return schemes.map((scheme) => chosen(scheme, follows, gone))
}

/** For every wall that is new: the former wall whose choice it takes. */
function followedWalls(former: Room, room: Room): ReadonlyMap<string, string> {
  const there = new Set(former.walls.map((wall) => wall.id))
  const follows = new Map<string, string>()
  let last = former.walls[0]?.id
  for (const { id } of room.walls) {
    if (there.has(id)) last = id
    else if (last !== undefined) follows.set(id, last)
  }
  return follows
}

function chosen(scheme: Scheme, follows: ReadonlyMap<string, string>, gone: ReadonlySet<string>): Scheme {
  const choices: Record<string, Choice> = {}
  for (const [id, choice] of Object.entries(scheme.choices)) if (!gone.has(id)) choices[id] = choice
  for (const [id, from] of follows) {
    const choice = scheme.choices[from]
    if (choice) choices[id] = choice
  }
  return { ...scheme, choices }
}

/** Schemes without what they say of surfaces, corners and obstacles that are in none of the rooms. */
export function prunedSchemes(schemes: readonly Scheme[], rooms: readonly Room[]): readonly Scheme[] {
  const surfaces = new Set(rooms.flatMap(({ walls, ceiling, floor }) => [...walls, ceiling, floor].map(({ id }) => id)))
  const obstacles = new Set(rooms.flatMap((room) => room.obstacles.map(({ id }) => id)))
  const corners = new Set(rooms.flatMap((room) => room.corners.map(({ id }) => id)))
  return schemes.map((scheme) => pruned(scheme, surfaces, obstacles, corners))
}

function pruned(
  scheme: Scheme,
  surfaces: ReadonlySet<string>,
  obstacles: ReadonlySet<string>,
  corners: ReadonlySet<string>,
): Scheme {
  const { choices, takenOut, runsThrough } = scheme
  const kept = Object.entries(runsThrough ?? {}).filter(([corner, wall]) => corners.has(corner) && surfaces.has(wall))
  return {
    ...scheme,
    choices: Object.fromEntries(Object.entries(choices).filter(([id]) => surfaces.has(id))),
    ...(takenOut && { takenOut: takenOut.filter((id) => obstacles.has(id)) }),
    ...(runsThrough && { runsThrough: Object.fromEntries(kept) }),
  }
}
