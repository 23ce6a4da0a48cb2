import type { Room, Wall } from '#analysis/room.ts'
import type { Choice, Leaks, Scheme } from '#analysis/scheme.ts'
import { withBoxesOf, withDuctsOf } from '#state/commands/ductChoices.ts'
import { followOpenings, withOpeningsOf } from '#state/commands/openingChoices.ts'
import { wallHeirs } from '#state/commands/wallHeirs.ts'

/**
 * Schemes after a change of a room: a new wall takes the choice of the wall it follows (one it was split from, or the
 * former first wall of an outline drawn anew); holes go over to the wall that ran on over their place; what else was said of walls, corners, obstacles, openings and ducts that are gone
 * goes with them.
 */
export function followWalls(schemes: readonly Scheme[], former: Room, room: Room): readonly Scheme[] {
  const follows = followedWalls(former, room)
  const gone = goneIds(former.walls, room.walls)
  const taken = goneIds(former.obstacles, room.obstacles)
  const lost = goneIds(former.ducts ?? [], room.ducts ?? [])
  const opened = followOpenings(schemes, former, room)
  const filled = lost.size === 0 ? opened : opened.map((scheme) => withDuctsOf(scheme, (id) => !lost.has(id)))
  const heirs = gone.size === 0 ? new Map<string, string>() : wallHeirs(former, room)
  const followed =
    follows.size === 0 && gone.size === 0
      ? filled
      : filled.map((scheme) => chosen(withHolesOf(scheme, heirs), follows, gone))
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
export function followedWalls(former: Room, room: Room): ReadonlyMap<string, string> {
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
  const copied = withCopies(
    scheme,
    [...follows].map(([id, from]) => [from, id] as const),
  )
  return gone.size === 0 ? copied : withSurfacesOf(copied, (id) => !gone.has(id))
}

/** A scheme whose holes in walls that are gone are in the walls that ran on over their places. */
function withHolesOf(scheme: Scheme, heirs: ReadonlyMap<string, string>): Scheme {
  const leaks: Record<string, Leaks> = { ...scheme.leaks }
  for (const [gone, heir] of heirs) {
    const holes = leaks[gone]?.holes ?? []
    const own = leaks[heir] ?? { holes: [] }
    if (holes.length > 0) leaks[heir] = { ...own, holes: [...own.holes, ...withFreeIds(holes, own.holes)] }
  }
  return scheme.leaks ? { ...scheme, leaks } : scheme
}

function withFreeIds(holes: Leaks['holes'], taken: Leaks['holes']): Leaks['holes'] {
  const used = new Set(taken.map(({ id }) => id))
  return holes.map((hole) => {
    let { id } = hole
    for (let n = 2; used.has(id); n += 1) id = `${hole.id}-${n}`
    used.add(id)
    return { ...hole, id }
  })
}

/** A scheme that says of new surfaces what it says of those they follow; a hole stays where it is. */
export function withCopies(scheme: Scheme, copies: Iterable<readonly [from: string, to: string]>): Scheme {
  const choices: Record<string, Choice> = { ...scheme.choices }
  const leaks: Record<string, Leaks> = { ...scheme.leaks }
  for (const [from, to] of copies) {
    const choice = scheme.choices[from]
    if (choice) choices[to] = choice
    const gapMm = scheme.leaks?.[from]?.gapMm
    if (gapMm !== undefined) leaks[to] = { gapMm, holes: [] }
  }
  return { ...scheme, choices, ...(Object.keys(leaks).length > 0 && { leaks }) }
}

/** A scheme without what it says of surfaces that are not there. */
function withSurfacesOf(scheme: Scheme, isThere: (id: string) => boolean): Scheme {
  const { leaks, ...rest } = scheme
  const kept = Object.entries(leaks ?? {}).filter(([id]) => isThere(id))
  return {
    ...rest,
    choices: Object.fromEntries(Object.entries(scheme.choices).filter(([id]) => isThere(id))),
    ...(kept.length > 0 && { leaks: Object.fromEntries(kept) }),
  }
}

/** Schemes without what they say of rooms, surfaces, corners, obstacles, openings and ducts that are not there. */
export function prunedSchemes(schemes: readonly Scheme[], rooms: readonly Room[]): readonly Scheme[] {
  const idsOf = (things: (room: Room) => readonly { readonly id: string }[]) =>
    new Set(rooms.flatMap((room) => things(room).map(({ id }) => id)))
  const surfaces = idsOf(({ walls, ceiling, floor }) => [...walls, ceiling, floor])
  const [obstacles, corners] = [idsOf((room) => room.obstacles), idsOf((room) => room.corners)]
  const [openings, ducts] = [idsOf((room) => room.openings), idsOf((room) => room.ducts ?? [])]
  return schemes.map((scheme) => {
    const standing = pruned(
      withSurfacesOf(scheme, (id) => surfaces.has(id)),
      surfaces,
      obstacles,
      corners,
    )
    const filled = withOpeningsOf(standing, (id) => openings.has(id))
    return withBoxesOf(
      withDuctsOf(filled, (id) => ducts.has(id)),
      rooms,
    )
  })
}

function pruned(
  scheme: Scheme,
  surfaces: ReadonlySet<string>,
  obstacles: ReadonlySet<string>,
  corners: ReadonlySet<string>,
): Scheme {
  const { takenOut, runsThrough } = scheme
  const kept = Object.entries(runsThrough ?? {}).filter(([corner, wall]) => corners.has(corner) && surfaces.has(wall))
  return {
    ...scheme,
    ...(takenOut && { takenOut: takenOut.filter((id) => obstacles.has(id)) }),
    ...(runsThrough && { runsThrough: Object.fromEntries(kept) }),
  }
}
