import { absorptionArea } from '#acoustics/levels.ts'
import table from '#analysis/data/furnishing.json' with { type: 'json' }
import type { SchemeResult } from '#analysis/results.ts'
import type { Room } from '#analysis/room.ts'
import type { ReceiverPlace } from '#analysis/target.ts'
import type { SquareMetres } from '#units/quantity.ts'
import { fail, ok, type Result } from '#units/result.ts'

/** Reverberation time of a finished room of which nobody has said one, s. @source data/furnishing.json, own choice */
export const USUAL_REVERBERATION_S: number = table.roomReverberationS.value
/** Reverberation times of receiving rooms by what stands in them, s. @source data/furnishing.json, memory and common practice */
export const FURNISHED_REVERBERATION_S: number = table.receiver.furnished.reverberationS
export const BARE_REVERBERATION_S: number = table.receiver.bare.reverberationS

/** Equivalent absorption area of a receiving room, or what is missing as the end of a sentence. */
export function receiverAbsorption(place: Extract<ReceiverPlace, { kind: 'room' }>): Result<SquareMetres, string> {
  if (place.furnishing === 'typed') {
    if (place.absorptionM2 === null) return fail('its absorption is to be typed and is missing')
    return place.absorptionM2 > 0 ? ok(place.absorptionM2) : fail('its absorption is 0 m², and no room absorbs nothing')
  }
  if (!(place.volumeM3 > 0)) return fail('its volume is 0 m³')
  const seconds = place.furnishing === 'furnished' ? FURNISHED_REVERBERATION_S : BARE_REVERBERATION_S
  return ok(absorptionArea(place.volumeM3, seconds))
}

/** Equivalent absorption area of the room that is built, from its clear volume; or why there is none. */
export function ownAbsorption(room: Room, result: SchemeResult): Result<SquareMetres, string> {
  const volumeM3 = result.ledger.volumeM3.clear
  if (!(volumeM3 > 0)) return fail('this scheme leaves no clear volume in it')
  const seconds = room.reverberationS ?? USUAL_REVERBERATION_S
  return seconds > 0 ? ok(absorptionArea(volumeM3, seconds)) : fail('its reverberation time is 0 s')
}
