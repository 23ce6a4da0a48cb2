import { bothLengths } from '#analysis/cautions/words.ts'
import { LEAF_MM } from '#analysis/openings/leaves.ts'
import { wallThickness } from '#analysis/openings/site.ts'
import type { AnswerInput } from '#analysis/paths/answerReceivers.ts'
import type { Opening } from '#analysis/room.ts'
import type { OpeningType } from '#assemblies/opening.ts'
import type { SquareMetres } from '#units/quantity.ts'

/** Floor that a pair of doors takes beyond the wall it stands in, which the plan does not draw. */
export interface PairRoom {
  readonly takesM2: SquareMetres
  /** Full sentences; empty where the wall and its lining are deep enough. */
  readonly sentences: readonly string[]
}

const NONE: PairRoom = { takesM2: 0, sentences: [] }

/** What two doors at their stated distance need more than the wall and its lining are deep. */
export function pairRoom({ room, result, catalogue }: AnswerInput, opening: Opening, { loss }: OpeningType): PairRoom {
  const wall = room.walls.find(({ id }) => id === opening.wall)
  // A lobby that is drawn has a distance of its own, and the plan counts it.
  if (loss.kind !== 'pair' || opening.lobby !== null || !wall) return NONE
  const faceMm = result.surfaces.find(({ id }) => id === wall.id)?.netDepthMm ?? 0
  const moreMm = loss.gapMm + 2 * LEAF_MM - (wallThickness(catalogue, wall) + faceMm)
  if (moreMm <= 0) return NONE
  const text = `Two doors ${bothLengths(loss.gapMm)} apart reach ${bothLengths(moreMm)} further than this wall and its lining are deep: find that room in front of the door or behind it, since the plan does not draw it.`
  return { takesM2: (moreMm * opening.widthMm) / 1e6, sentences: [text] }
}
