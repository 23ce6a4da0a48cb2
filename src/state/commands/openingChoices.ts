import type { Room } from '#analysis/room.ts'
import type { Scheme } from '#analysis/scheme.ts'

/** The scheme without what it puts into openings that are not there. */
export function withOpeningsOf(scheme: Scheme, isThere: (id: string) => boolean): Scheme {
  const { openings, ...rest } = scheme
  if (!openings || Object.keys(openings).every(isThere)) return scheme
  const kept = Object.fromEntries(Object.entries(openings).filter(([id]) => isThere(id)))
  return Object.keys(kept).length > 0 ? { ...rest, openings: kept } : rest
}

/** Schemes after a change of a room: what was put into openings that are gone goes with them, so that no later one inherits it. */
export function followOpenings(schemes: readonly Scheme[], former: Room, room: Room): readonly Scheme[] {
  const there = new Set(room.openings.map(({ id }) => id))
  const gone = new Set(former.openings.map(({ id }) => id).filter((id) => !there.has(id)))
  return gone.size === 0 ? schemes : schemes.map((scheme) => withOpeningsOf(scheme, (id) => !gone.has(id)))
}
