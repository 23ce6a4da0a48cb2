import type { Limit, Receiver, ReceiverPlace, Through } from '#analysis/target.ts'
import { FARTHEST_MM, HIGHEST_CURVE, HIGHEST_LIMIT_DB, MOST_SCREENED_DB, MOST_VOLUME } from '#project/limits.ts'
import type { Project } from '#project/project.ts'
import type { Refusal } from '#state/command.ts'
import { named } from '#state/commands/check.ts'
import { surfaceLabel } from '#state/commands/edit.ts'
import { taken } from '#state/commands/sourceChecks.ts'
import type { Millimetres } from '#units/quantity.ts'
import { unreachable } from '#units/result.ts'

/**
 * Why a receiver cannot be as it was said to be. One without a surface or without a source can: its answer says what is
 * missing.
 */
export function receiverRefusal(project: Project, receiver: Receiver): Refusal | null {
  return (
    named('A receiver', receiver.name) ??
    taken(project.receivers, receiver) ??
    sourceRefusal(project, receiver) ??
    placeRefusal(receiver.name, receiver.place) ??
    throughRefusal(project, receiver) ??
    limitRefusal(receiver.name, receiver.limit) ??
    within(`"${receiver.name}": its background`, receiver.backgroundNc, HIGHEST_CURVE, 'NC-0 to NC')
  )
}

function sourceRefusal({ sources }: Project, { name, source }: Receiver): Refusal | null {
  if (source === null || sources.some(({ id }) => id === source)) return null
  const message = `"${name}": there is no source "${source}" in this project; add it first, or choose another.`
  return { code: 'no-source', message }
}

function placeRefusal(name: string, place: ReceiverPlace): Refusal | null {
  switch (place.kind) {
    case 'room':
      return roomRefusal(name, place)
    case 'outdoors':
      return distanceRefusal(`"${name}": its distance`, place.distanceMm)
    case 'this-room':
      return null
    default:
      return unreachable(place)
  }
}

function roomRefusal(name: string, place: Extract<ReceiverPlace, { kind: 'room' }>): Refusal | null {
  const { volumeM3, furnishing, absorptionM2 } = place
  if (!isAmount(volumeM3)) {
    const message = `"${name}": the volume of its room has to be more than 0 m³; the former one was kept.`
    return { code: 'no-volume', message }
  }
  if (volumeM3 > MOST_VOLUME) return tooMuch(`"${name}": the volume of its room`, 'm³')
  if (absorptionM2 !== null && !isAmount(absorptionM2)) {
    const message = `"${name}": its absorption has to be more than 0 m², for no room absorbs nothing; the former one was kept.`
    return { code: 'no-absorption', message }
  }
  if (absorptionM2 !== null && absorptionM2 > MOST_VOLUME) return tooMuch(`"${name}": its absorption`, 'm²')
  if (furnishing !== 'typed' || absorptionM2 !== null) return null
  const message = `"${name}": its absorption is to be typed and is missing; type it, or say that the room is furnished or bare.`
  return { code: 'absorption-missing', message }
}

function isAmount(value: number): boolean {
  return Number.isFinite(value) && value > 0
}

function tooMuch(what: string, unit: string): Refusal {
  const message = `${what} has to be at most ${MOST_VOLUME} ${unit}; check its unit. The former one was kept.`
  return { code: 'too-much', message }
}

function distanceRefusal(what: string, distanceMm: Millimetres): Refusal | null {
  if (!(Number.isFinite(distanceMm) && distanceMm > 0)) {
    const message = `${what} has to be more than 0, for in the open a level belongs to a distance; the former one was kept.`
    return { code: 'no-distance', message }
  }
  if (distanceMm <= FARTHEST_MM) return null
  return { code: 'too-far', message: `${what} has to be at most ${FARTHEST_MM / 1e6} km; check its unit.` }
}

function throughRefusal(project: Project, { name, room: roomId, through }: Receiver): Refusal | null {
  const room = project.rooms.find(({ id }) => id === roomId)
  if (!room) return { code: 'no-room', message: `"${name}": there is no room "${roomId}" in this project.` }
  const surfaces = new Set([...room.walls, room.ceiling, room.floor].map(({ id }) => id))
  for (const [index, part] of through.entries()) {
    if (!surfaces.has(part.surface)) {
      const message = `"${name}": "${part.surface}" is no surface of ${room.name}; choose among its walls, its ceiling and its floor.`
      return { code: 'no-surface', message }
    }
    const what = `"${name}", ${surfaceLabel(room, part.surface)}`
    if (through.findIndex(({ surface }) => surface === part.surface) < index) {
      return { code: 'surface-twice', message: `${what}: it is named twice; once is enough.` }
    }
    const refused = partRefusal(what, part)
    if (refused) return refused
  }
  return null
}

function partRefusal(what: string, { distanceMm, screenedDb }: Through): Refusal | null {
  const refused = distanceMm === undefined ? null : distanceRefusal(`${what}: its distance`, distanceMm)
  if (refused || screenedDb === undefined) return refused
  return within(`${what}: what screens it`, screenedDb, MOST_SCREENED_DB, '0 to', ' dB')
}

function limitRefusal(name: string, limit: Limit): Refusal | null {
  if ('index' in limit) {
    return within(`"${name}": its limit`, limit.index, HIGHEST_CURVE, `${limit.kind}-0 to ${limit.kind}`)
  }
  return within(`"${name}": its limit`, limit.levelDb, HIGHEST_LIMIT_DB, '0 to', ` ${limit.kind}`)
}

/** A refusal where a number is not between 0 and the most; `range` is how its words begin: "NC-0 to NC". */
function within(what: string, value: number, most: number, range: string, unit = ''): Refusal | null {
  if (Number.isFinite(value) && value >= 0 && value <= most) return null
  const upper = unit === '' ? `${range}-${most}` : `${range} ${most}${unit}`
  return { code: 'out-of-range', message: `${what} has to be from ${upper}; the former value was kept.` }
}
