import type { Room, Wall } from '#analysis/room.ts'
import type { Choice, Scheme } from '#analysis/scheme.ts'
import { followOpenings, withOpeningsOf } from '#state/commands/openingChoices.ts'

/**
 * Schemes after a change of a room: a new wall takes the choice of the wall it follows (one it was split from, or the
 * former first wall of an outline drawn anew); what was said of walls, corners, obstacles and openings that are gone goes
 * with them.
 */
export function followWalls(schemes: readonly Scheme[], former: Room, room: Room): readonly Scheme[] {
  const follows = followedWalls(former, room)
  const gone = goneIds(former.walls, room.walls)
  const taken = goneIds(former.obstacles, room.obstacles)
  const filled = followOpenings(schemes, former, room)
  const followed =
    follows.size === 0 && gone.size === 0 ? filled : filled.map((scheme) => chosen(scheme, follows, gone))
  const isSame = former.corners.length === room.corners.length && follows.size === 0 && gone.size === 0
  if (isSame && taken.size === 0) return followed
  return followed.map((scheme) => standing(cornersFollowed(scheme, former, room), taken))
}

function goneIds(former: readonly { readonly id: string }[], now: readonly { readonly id: string }[]): Set<string> {
  const gone = new Set(former.map(({ id }) => id))
  for (const { id } of now) gone.delete(id)
  return gone
}

function standing(scheme: Scheme, gone: ReadonlySet<string>): Scheme {
  if (!scheme.takenOut?.some((id) => gone.has(id))) return scheme
  return { ...scheme, takenOut: scheme.takenOut.filter((id) => !gone.has(id)) }
}

/** Where another wall now meets a corner from the same side, its lining is the one that runs through. */
export function cornersFollowed(scheme: Scheme, former: Room, room: Room): Scheme {
  if (!scheme.runsThrough) return scheme
  const ids = new Set(former.walls.map(({ id }) => id))
  const runsThrough: Record<string, string> = {}
  for (const [corner, wall] of Object.entries(scheme.runsThrough)) {
    const now = ids.has(wall) ? sameSide(former, room, corner, wall) : wall
    if (now !== undefined) runsThrough[corner] = now
  }
  return { ...scheme, runsThrough }
}

function sameSide(former: Room, room: Room, corner: string, wallId: string): string | undefined {
  const meets = (wall: Wall) => wall.from === corner || wall.to === corner
  if (room.walls.some((wall) => wall.id === wallId && meets(wall))) return wallId
  const leaves = former.walls.some((wall) => wall.id === wallId && wall.from === corner)
  return room.walls.find((wall) => (leaves ? wall.from : wall.to) === corner)?.id
}

/** For every wall that is new: the former wall whose choice it takes. */
function followedWalls(former: Room, room: Room): ReadonlyMap<string, string> {
  const there = new Set(former.walls.map((wall) => wall.id))
  const follows = new Map<string, string>()
  let last = [room.walls.at(-1), former.walls[0]].map((wall) => wall?.id ?? '').find((id) => there.has(id))
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

/** Schemes without what they say of surfaces, corners, obstacles and openings that are in none of the rooms. */
export function prunedSchemes(schemes: readonly Scheme[], rooms: readonly Room[]): readonly Scheme[] {
  const surfaces = new Set(rooms.flatMap(({ walls, ceiling, floor }) => [...walls, ceiling, floor].map(({ id }) => id)))
  const obstacles = new Set(rooms.flatMap((room) => room.obstacles.map(({ id }) => id)))
  const corners = new Set(rooms.flatMap((room) => room.corners.map(({ id }) => id)))
  const openings = new Set(rooms.flatMap((room) => room.openings.map(({ id }) => id)))
  return schemes.map((scheme) => withOpeningsOf(pruned(scheme, surfaces, obstacles, corners), (id) => openings.has(id)))
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
