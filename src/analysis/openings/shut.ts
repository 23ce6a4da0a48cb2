import { isWayOut } from '#analysis/openings/wayOut.ts'
import type { Note } from '#analysis/results.ts'
import type { Opening } from '#analysis/room.ts'
import type { Scheme } from '#analysis/scheme.ts'
import type { Catalogue } from '#assemblies/assembly.ts'
import { closesForGood } from '#assemblies/openingCautions.ts'
import type { Millimetres } from '#units/quantity.ts'

/** Life-safety sentences where a scheme shuts for good what people may have to leave or breathe through. */
export function shutNotes(
  opening: Opening,
  sillMm: Millimetres,
  scheme: Pick<Scheme, 'openings'>,
  catalogue: Pick<Catalogue, 'openingTypes'>,
): readonly Note[] {
  const chosen = typeIn(scheme.openings?.[opening.id]?.type, catalogue)
  if (!chosen || !closesForGood(chosen)) return []
  const standing = typeIn(opening.made?.type, catalogue)
  if (standing && closesForGood(standing)) return []
  const said = `${opening.name}: this scheme shuts it for good (${chosen.shortName}).`
  if (opening.kind === 'vent') {
    const text = `${said} A vent may bring a fuel-burning appliance its air, or people theirs: never close it before both have another supply.`
    return [{ code: 'shut-vent', text }]
  }
  if (!isWayOut(opening, sillMm)) return []
  return [opening.kind === 'door' ? shutDoor(said) : shutWindow(said)]
}

function typeIn(id: string | undefined, { openingTypes }: Pick<Catalogue, 'openingTypes'>) {
  return id === undefined ? undefined : openingTypes.get(id)
}

function shutWindow(said: string): Note {
  const text = `${said} A window people may have to escape through must never be plugged, filled in or fixed shut: find out whether this is one, keep it opening if it is, and ask your building department.`
  return { code: 'shut-escape-window', text }
}

function shutDoor(said: string): Note {
  const text = `${said} A door that is a way out must never be filled in before your building department has agreed to another way out.`
  return { code: 'shut-way-out', text }
}
