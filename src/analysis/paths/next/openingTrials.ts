import { openingMade } from '#analysis/openings/made.ts'
import { isWayOut } from '#analysis/openings/wayOut.ts'
import type { AnswerInput } from '#analysis/paths/answerReceivers.ts'
import { pairRoom } from '#analysis/paths/next/pairRoom.ts'
import type { Trial } from '#analysis/paths/next/trial.ts'
import type { Opening } from '#analysis/room.ts'
import type { LeafMade, OpeningMade, OpeningType } from '#assemblies/opening.ts'
import { closesForGood } from '#assemblies/openingCautions.ts'
import { isPair } from '#assemblies/openingLoss.ts'

/** Everything else that could stand in an opening, well sealed; better seals on what stands there; a second door. */
export function openingTrials(input: AnswerInput, openingId: string): readonly Trial[] {
  const opening = input.room.openings.find(({ id }) => id === openingId)
  if (!opening) return []
  const present = openingMade(opening, input.scheme)
  const types = [...input.catalogue.openingTypes.values()].filter((type) => mayStand(input, type, opening, present))
  return [
    ...sealTrials(input, openingId),
    ...types
      .filter(({ id }) => id !== present?.type)
      .map((type) => changed(input, opening, type, { type: type.id, seal: 'good' })),
    ...secondDoors(input, opening, present, types),
  ]
}

/** Better seals on what stands in the opening; none where they are good already, or nobody has said what stands there. */
export function sealTrials(input: AnswerInput, openingId: string): readonly Trial[] {
  const opening = input.room.openings.find(({ id }) => id === openingId)
  const present = opening && openingMade(opening, input.scheme)
  if (!opening || !present || !isWorn(present)) return []
  const sealed: OpeningMade = {
    ...present,
    seal: 'good',
    ...(present.second && { second: { ...present.second, seal: 'good' } }),
  }
  const label = `Seal ${opening.name} well all round`
  return [{ label, change: { openings: { [openingId]: sealed } }, cautions: [] }]
}

function isWorn(made: OpeningMade): boolean {
  const leaves: readonly LeafMade[] = made.second ? [made, made.second] : [made]
  return leaves.some(({ seal }) => seal !== 'good')
}

/**
 * A hole is no step, nor is a duct that nobody has drawn; and what people may have to escape through is never closed for
 * good: no door, and no window with a low sill that opens today.
 */
function mayStand(
  { room, catalogue }: AnswerInput,
  type: OpeningType,
  opening: Opening,
  present: OpeningMade | null,
): boolean {
  if (!type.kinds.includes(opening.kind) || type.loss.kind === 'open') return false
  if (type.loss.kind === 'duct') return (room.ducts ?? []).some(({ surface }) => surface === opening.wall)
  if (!closesForGood(type) || !isWayOut(opening, opening.sillMm)) return true
  const standing = present && catalogue.openingTypes.get(present.type)
  return standing ? opening.kind !== 'door' && closesForGood(standing) : false
}

function changed(input: AnswerInput, opening: Opening, type: OpeningType, made: OpeningMade): Trial {
  const { takesM2, sentences } = pairRoom(input, opening, type)
  const label =
    type.loss.kind === 'as-the-wall'
      ? `Close ${opening.name} for good: ${lower(type.name)}`
      : `Put into ${opening.name}: ${lower(type.name)}`
  return { label, change: { openings: { [opening.id]: made } }, cautions: [...type.cautions, ...sentences], takesM2 }
}

/** Where a lobby door is drawn and nothing is said of it. */
function secondDoors(
  { catalogue }: AnswerInput,
  opening: Opening,
  present: OpeningMade | null,
  types: readonly OpeningType[],
): readonly Trial[] {
  const standing = present && catalogue.openingTypes.get(present.type)
  if (opening.lobby === null || !present || !standing || isPair(present, standing)) return []
  return types
    .filter(({ loss, seals }) => loss.kind !== 'pair' && loss.kind !== 'as-the-wall' && seals !== 'none')
    .map((type): Trial => {
      const made: OpeningMade = { ...present, second: { type: type.id, seal: 'good' } }
      const label = `Hang a second door in ${opening.name}: ${lower(type.name)}`
      return { label, change: { openings: { [opening.id]: made } }, cautions: type.cautions }
    })
}

/** As it reads on within a sentence. */
function lower(name: string): string {
  return `${name.charAt(0).toLowerCase()}${name.slice(1)}`
}
