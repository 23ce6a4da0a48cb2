import table from '#analysis/data/air.json' with { type: 'json' }
import { named } from '#analysis/paths/names.ts'
import type { Duct, Room } from '#analysis/room.ts'
import type { Limit, Receiver } from '#analysis/target.ts'

/** The noise criterion that moving air has to keep to, and whose it is. */
export interface AirLimit {
  readonly nc: number
  /** "NC-20, set for the room itself". */
  readonly words: string
}

/** The criterion of the room: its own limit for noise coming in, else one for music rooms. An NR is taken as an NC. */
export function roomLimit({ id }: Room, receivers: readonly Receiver[]): AirLimit {
  const own = receivers.filter(({ room, place }) => room === id && place.kind === 'this-room')
  return (
    strictest(own) ?? { nc: table.roomNc.value, words: `NC-${table.roomNc.value}, taken for a music room (own choice)` }
  )
}

/** The criterion of a duct's grilles: the stricter one of the room's and of the rooms it leads to. */
export function ductLimit(duct: Duct, room: Room, receivers: readonly Receiver[]): AirLimit {
  const own = roomLimit(room, receivers)
  const beyond = strictest(receivers.filter(({ id, place }) => place.kind === 'room' && duct.leadsTo.includes(id)))
  return beyond && beyond.nc < own.nc ? beyond : own
}

function strictest(receivers: readonly Receiver[]): AirLimit | null {
  return receivers.reduce<AirLimit | null>((least, { name, limit }) => {
    const nc = curveIndex(limit)
    return nc === null || (least && least.nc <= nc)
      ? least
      : { nc, words: `${limit.kind}-${nc}, set for ${named(name)}` }
  }, null)
}

function curveIndex(limit: Limit): number | null {
  return limit.kind === 'NC' || limit.kind === 'NR' ? limit.index : null
}
