import type { Duct, DuctMade, Silencer } from '#analysis/room.ts'
import { MOST_BENDS, MOST_INSERTION_LOSS_DB } from '#project/limits.ts'
import type { Refusal } from '#state/command.ts'
import { named, notNegative, notTooDeep, positive } from '#state/commands/check.ts'
import { formatLength } from '#units/format.ts'
import type { LengthUnit, Millimetres } from '#units/quantity.ts'

/** Why a duct cannot be as it was said to be. */
export function ductRefusal(duct: Duct, units: LengthUnit): Refusal | null {
  const name = `"${duct.name}"`
  return (
    named('A duct', duct.name) ??
    positive(`${name}: its ${duct.shape === 'round' ? 'diameter' : 'width'}`, duct.widthMm) ??
    positive(`${name}: its height`, duct.heightMm) ??
    positive(`${name}: its length`, duct.lengthMm) ??
    ductMadeRefusal(duct, duct.made, units)
  )
}

/** Why something cannot be done to a duct against the sound in it. */
export function ductMadeRefusal({ name, lengthMm }: Duct, made: DuctMade, units: LengthUnit): Refusal | null {
  const what = `"${name}"`
  return (
    notTooDeep(`${what}: the thickness of its lining`, made.liningMm) ??
    notNegative(`${what}: its lined length`, made.linedLengthMm) ??
    linedTooLong(what, made.linedLengthMm, lengthMm, units) ??
    bendsRefusal(what, made.bends) ??
    (made.silencer && silencerRefusal(what, made.silencer))
  )
}

function linedTooLong(what: string, lined: Millimetres, length: Millimetres, units: LengthUnit): Refusal | null {
  if (lined <= length) return null
  const message = `${what}: ${formatLength(lined, units)} of it would be lined and it is only ${formatLength(length, units)} long; type a shorter lined length, or the whole length first.`
  return { code: 'lined-too-long', message }
}

function bendsRefusal(what: string, bends: number): Refusal | null {
  if (Number.isInteger(bends) && bends >= 0 && bends <= MOST_BENDS) return null
  const message = `${what}: its bends have to be a whole number from 0 to ${MOST_BENDS}; it was kept as it was.`
  return { code: 'bad-bends', message }
}

function silencerRefusal(what: string, { name, insertionLossDb }: Silencer): Refusal | null {
  const wrong = Object.entries(insertionLossDb).find(
    ([, loss]) => loss !== null && !(Number.isFinite(loss) && loss >= 0 && loss <= MOST_INSERTION_LOSS_DB),
  )
  if (!wrong) return named(`${what}: its silencer`, name)
  const message = `${what}: the insertion loss at ${wrong[0]} Hz has to be a number from 0 to ${MOST_INSERTION_LOSS_DB} dB; leave it empty where nothing is stated.`
  return { code: 'bad-insertion-loss', message }
}
