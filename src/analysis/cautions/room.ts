import type { AnalysisInput } from '#analysis/analyse.ts'
import { closedUpCautions, ductCautions, isClosedUp } from '#analysis/cautions/air.ts'
import { labelled } from '#analysis/cautions/lining.ts'
import { bothLengths, list } from '#analysis/cautions/words.ts'
import limits from '#analysis/data/limits.json'
import type { Caution, SchemeResult } from '#analysis/results.ts'
import { choiceFor } from '#analysis/scheme.ts'
import { takenOut } from '#analysis/takenOut.ts'
import { AS_IS } from '#assemblies/assembly.ts'

type Result = Omit<SchemeResult, 'cautions'>

/** What local code and licensed trades decide once a room is built into: height, escape, air, fire, electrics, damp. */
export function roomCautions(input: AnalysisInput, result: Result): readonly Caution[] {
  const built = labelled(input.room).some(({ facts }) => choiceFor(input.scheme, facts.id).assembly !== AS_IS)
  return [
    ...heightCautions(result),
    ...takenOutCaution(input),
    ...(isClosedUp(input.room, input.scheme) ? closedUpCautions(input.room, result) : []),
    ...(built ? builtCautions(input) : []),
    ...ductCautions(input),
  ]
}

function heightCautions({ ledger }: Result): readonly Caution[] {
  const cautions: Caution[] = []
  const lowest = ledger.clearHeightMm.lowest
  const caution = (code: string, text: string) => cautions.push({ code, kind: 'life-safety', text, surfaces: [] })
  if (ledger.volumeM3.clear <= 0 && lowest <= 0)
    caution('no-height', 'The floor and ceiling build-ups take all the height there is: no room is left.')
  else if (lowest < limits.habitableHeightMm.value - 0.5) {
    caution(
      'low-ceiling',
      `The clear height of ${bothLengths(lowest)} is below the ${bothLengths(limits.habitableHeightMm.value)} many codes ask of habitable rooms: ask your building department.`,
    )
  }
  for (const drop of ledger.drops) {
    if (drop.clearHeightMm >= limits.heightUnderProjectionMm.value - 0.5) continue
    caution(
      'low-drop',
      `${drop.name} leaves ${bothLengths(drop.clearHeightMm)} under it, below the ${bothLengths(limits.heightUnderProjectionMm.value)} some codes ask under beams and ducts: ask your building department.`,
    )
  }
  return cautions
}

function takenOutCaution({ room, scheme }: AnalysisInput): readonly Caution[] {
  const names = takenOut(room, scheme).map(({ name }) => `"${name}"`)
  if (names.length === 0) return []
  const text = `This scheme takes out ${list(names)}: a pier, column or breast may carry load or brace the wall behind it, so a structural engineer must say what takes its place before anything is cut.`
  return [{ code: 'taken-out', kind: 'life-safety', text, surfaces: [] }]
}

function builtCautions(input: AnalysisInput): readonly Caution[] {
  const whole = (code: string, text: string): Caution => ({ code, kind: 'life-safety', text, surfaces: [] })
  return [
    whole(
      'escape',
      'Doors and windows people may have to escape through keep their clear width, height and sill after the linings, and alarms must be heard or seen inside the quiet room: check both against local code.',
    ),
    whole(
      'electrics',
      'Circuits, boxes and lights in the new linings are work for a licensed electrician; keep boxes on the room side sealed and never back to back.',
    ),
    ...fireSeparation(input),
    ...damp(input),
  ]
}

function fireSeparation({ room, scheme }: AnalysisInput): readonly Caution[] {
  const between = labelled(room).filter(
    ({ facts }) =>
      (facts.farSide === 'neighbour' || facts.farSide === 'own-house') &&
      choiceFor(scheme, facts.id).assembly !== AS_IS,
  )
  if (between.length === 0) return []
  const names = list(between.map(({ label }) => label))
  const text = `${names}: a wall or ceiling towards the house or a neighbour may have to resist fire; clips, channels and openings change a rated construction, so use one listed for the purpose and ask the building department.`
  return [{ code: 'fire-separation', kind: 'life-safety', text, surfaces: between.map(({ facts }) => facts.id) }]
}

function damp({ room, scheme }: AnalysisInput): readonly Caution[] {
  const wet = labelled(room).filter(
    ({ facts, label }) =>
      facts.farSide === 'soil' && label !== 'Floor' && choiceFor(scheme, facts.id).assembly !== AS_IS,
  )
  if (wet.length === 0) return []
  const names = list(wet.map(({ label }) => label))
  const text = `${names}: a lining against soil hides and holds moisture; cure any damp first, keep wool and plates off wet masonry, and have the vapour control settled for the climate.`
  return [{ code: 'damp', kind: 'life-safety', text, surfaces: wet.map(({ facts }) => facts.id) }]
}
