import type { Room } from '#analysis/room.ts'
import type { Refusal } from '#state/command.ts'
import { dropAboveCeiling } from '#state/commands/drops.ts'
import type { LengthUnit } from '#units/quantity.ts'
import { fail, ok, type Result } from '#units/result.ts'

/** A room after a height was typed: refused where a drop that hung below the ceiling no longer does. */
export function underCeiling(before: Room, after: Room, units: LengthUnit): Result<Room, Refusal> {
  const drop = after.drops.find((it) => dropAboveCeiling(after, it, units) && !dropAboveCeiling(before, it, units))
  const refusal = drop && dropAboveCeiling(after, drop, units)
  if (!drop || !refusal) return ok(after)
  return fail({ ...refusal, message: `${refusal.message} If the height is right, lower "${drop.name}" first.` })
}
