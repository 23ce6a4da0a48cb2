import { openingMade } from '#analysis/openings/made.ts'
import { isWayOut } from '#analysis/openings/wayOut.ts'
import type { AnswerInput } from '#analysis/paths/answerReceivers.ts'
import type { Trial } from '#analysis/paths/next/trial.ts'
import type { Opening } from '#analysis/room.ts'
import type { LeafMade, OpeningMade, OpeningType } from '#assemblies/opening.ts'

/** Everything else that could stand in an opening, well sealed, and better seals on what stands there. */
export function openingTrials(input: AnswerInput, openingId: string): readonly Trial[] {
  const opening = input.room.openings.find(({ id }) => id === openingId)
  if (!opening) return []
  const present = openingMade(opening, input.scheme)
  const types = [...input.catalogue.openingTypes.values()].filter((type) => mayStand(type, opening))
  const others = types
    .filter(({ id }) => id !== present?.type)
    .map(
      (type): Trial => ({
        label: `Put ${type.shortName} in ${opening.name}`,
        change: { openings: { [openingId]: { type: type.id, seal: 'good' } } },
        cautions: type.cautions,
      }),
    )
  return [...sealTrials(input, openingId), ...others]
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
 * A hole is no step, nor is a duct that nobody has drawn; and neither a door nor a window that people escape through is
 * ever plugged.
 */
function mayStand({ kinds, loss }: OpeningType, opening: Opening): boolean {
  if (!kinds.includes(opening.kind) || loss.kind === 'open' || loss.kind === 'duct') return false
  return loss.kind !== 'as-the-wall' || !isWayOut(opening, opening.sillMm)
}
