import { airNeed, needWords } from '#analysis/air/need.ts'
import type { AnalysisInput } from '#analysis/analyse.ts'
import { labelled } from '#analysis/cautions/lining.ts'
import { list } from '#analysis/cautions/words.ts'
import type { Caution, SchemeResult } from '#analysis/results.ts'
import type { Room } from '#analysis/room.ts'
import { choiceFor, type Scheme } from '#analysis/scheme.ts'
import { AS_IS } from '#assemblies/assembly.ts'

/** Whether a scheme closes a room up: linings, sealed joints, or doors and windows of another make. */
export function isClosedUp(room: Room, scheme: Scheme): boolean {
  return (
    scheme.airtightness === 'sealed' ||
    labelled(room).some(({ facts }) => choiceFor(scheme, facts.id).assembly !== AS_IS) ||
    room.openings.some(({ id }) => scheme.openings?.[id] !== undefined)
  )
}

/** Air for the people and for flames, and where it may come from: said before a room is closed up. */
export function closedUpCautions(room: Room, result: Pick<SchemeResult, 'ledger'>): readonly Caution[] {
  const need = airNeed(room, result)
  const inAll =
    need.lPerS === null ? `: say how many there are under Air and leaks, ${needWords(need)}` : `: ${needWords(need)}`
  return [
    safety(
      'air',
      `A sealed room needs fresh air for the people in it, brought in and out by quiet, lined duct paths${inAll}. Have the air supply designed before the room is closed up.`,
    ),
    safety(
      'combustion-air',
      'If a boiler, heater or other fuel-burning appliance stands in or next to this room, sealing it can starve the flame or fill the room with carbon monoxide: a licensed heating engineer must confirm its air supply before the room is sealed.',
    ),
    safety(
      'air-intake',
      'Draw fresh air from outdoors only: never from a garage where cars run, never from a room with a boiler, stove or other flame, and never from beside a flue or an exhaust.',
    ),
  ]
}

/** What ducts bring up where they go through something: fire and smoke. */
export function ductCautions({ room }: Pick<AnalysisInput, 'room'>): readonly Caution[] {
  const through = labelled(room).filter(
    ({ facts: { id, farSide } }) =>
      (farSide === 'neighbour' || farSide === 'own-house') && room.ducts?.some(({ surface }) => surface === id),
  )
  if (through.length === 0) return []
  const names = list(through.map(({ label }) => label))
  const text = `${names}: a duct through a wall, floor or ceiling towards the house or a neighbour can let fire and smoke pass: close the gap round it as a listed system for that construction says, fit a fire damper where code asks for one, and ask the building department before the hole is cut.`
  return [{ code: 'duct-fire', kind: 'life-safety', text, surfaces: through.map(({ facts }) => facts.id) }]
}

function safety(code: string, text: string): Caution {
  return { code, kind: 'life-safety', text, surfaces: [] }
}
