import type { Room } from '#analysis/room.ts'
import type { Refusal } from '#state/command.ts'
import { dropAboveCeiling } from '#state/commands/drops.ts'
import { openingAboveCeiling } from '#state/commands/openingChecks.ts'
import type { LengthUnit } from '#units/quantity.ts'
import { fail, ok, type Result } from '#units/result.ts'

/** A room after a height was typed: refused where something that fitted under the ceiling no longer does. */
export function underCeiling(before: Room, after: Room, units: LengthUnit): Result<Room, Refusal> {
  const opening = after.openings.find(
    (it) => openingAboveCeiling(after, it, units) && !openingAboveCeiling(before, it, units),
  )
  if (opening) return higher(opening.name, openingAboveCeiling(after, opening, units))
  const drop = after.drops.find((it) => dropAboveCeiling(after, it, units) && !dropAboveCeiling(before, it, units))
  return drop ? higher(drop.name, dropAboveCeiling(after, drop, units)) : ok(after)
}

function higher(name: string, refusal: Refusal | null): Result<never, Refusal> {
  const message = `${refusal?.message ?? ''} Change "${name}" first if the height is right.`
  return fail({ code: refusal?.code ?? 'above-the-ceiling', message })
}
