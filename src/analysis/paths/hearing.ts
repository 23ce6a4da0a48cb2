import { outdoorTerm, roomTerm } from '#acoustics/levels.ts'
import { ownAbsorption, receiverAbsorption } from '#analysis/paths/absorption.ts'
import type { Path } from '#analysis/paths/answer.ts'
import type { AnswerInput } from '#analysis/paths/answerReceivers.ts'
import type { Receiver } from '#analysis/target.ts'
import type { Decibels, Millimetres, SquareMetres } from '#units/quantity.ts'
import { fail, ok, type Result, unreachable } from '#units/result.ts'

/** How a receiver hears what comes through: in a room that absorbs, or in the open. */
export type Hearing =
  | { readonly kind: 'room'; readonly absorptionM2: SquareMetres }
  | { readonly kind: 'outdoors'; readonly reflectedDb: Decibels }

/** A wall behind the receiver sends back as much again. @source ISO 12354-4 simplified, METHOD section 10, memory */
const FACADE_DB: Decibels = 3

/** How a receiver hears; or a full sentence on what is missing and where to say it. */
export function hearingOf({ room, result }: AnswerInput, receiver: Receiver): Result<Hearing, string> {
  const { name, place, through } = receiver
  switch (place.kind) {
    case 'room': {
      const absorption = receiverAbsorption(place)
      if (!absorption.ok) return fail(`${name}: ${absorption.error}. Type its absorption or its volume under Targets.`)
      return ok({ kind: 'room', absorptionM2: absorption.value })
    }
    case 'this-room': {
      const absorption = ownAbsorption(room, result)
      if (!absorption.ok) return fail(`${name}: ${absorption.error}.`)
      return ok({ kind: 'room', absorptionM2: absorption.value })
    }
    case 'outdoors':
      if (isNoDistance(place.distanceMm) || through.some(({ distanceMm }) => isNoDistance(distanceMm))) {
        return fail(
          `${name}: a distance to it is 0 mm, and in the open a level belongs to a distance. Type it under Targets.`,
        )
      }
      return ok({ kind: 'outdoors', reflectedDb: place.atFacade ? FACADE_DB : 0 })
    default:
      return unreachable(place)
  }
}

function isNoDistance(distanceMm: Millimetres | undefined): boolean {
  return distanceMm !== undefined && !(distanceMm > 0)
}

/**
 * What to add to a path's level less its loss for the level it brings, dB: 10 lg(S/A) in a room; in the open
 * -6 - 8 + 10 lg S - 20 lg r, less what screens it, plus what a wall behind the receiver sends back.
 */
export function heardTerm({ areaM2, distanceMm, screenedDb }: Path, hearing: Hearing): Decibels {
  if (hearing.kind === 'room') return roomTerm(areaM2, hearing.absorptionM2)
  return outdoorTerm(areaM2, distanceMm ?? 0) - screenedDb + hearing.reflectedDb
}
