import type { AnalysisInput } from '#analysis/analyse.ts'
import { clashProblems } from '#analysis/openings/clash.ts'
import { crossingProblems, floorProblem, leavesInTheWay, lobbyProblems } from '#analysis/openings/doorProblems.ts'
import { leafAt } from '#analysis/openings/leaves.ts'
import { type StoppedLeaf, stoppedLeaves, swingProblems } from '#analysis/openings/meets.ts'
import { placingProblems } from '#analysis/openings/placing.ts'
import { type Placed, placedOpenings, type Surroundings, surroundingsOf } from '#analysis/openings/site.ts'
import { onWall } from '#analysis/openings/wallFrame.ts'
import { wayOutProblems } from '#analysis/openings/wayOut.ts'
import type { LeafCheck, OpeningCheck, SchemeResult } from '#analysis/results.ts'
import type { Millimetres } from '#units/quantity.ts'

/** An opening with its leaves; none for what is no door. */
interface WithLeaves {
  readonly placed: Placed
  readonly leaves: readonly StoppedLeaf[]
}

/** What a scheme leaves of every door, window and vent, and what their leaves meet. */
export function checkOpenings(
  input: AnalysisInput,
  result: Pick<SchemeResult, 'inset' | 'clear' | 'surfaces' | 'ledger' | 'heights'>,
): readonly OpeningCheck[] {
  if (input.room.openings.length === 0) return []
  const around = surroundingsOf(input, result)
  const all = placedOpenings(around).map(
    (placed): WithLeaves => ({ placed, leaves: placed.opening.kind === 'door' ? stoppedLeaves(placed, around) : [] }),
  )
  return all.map((one) => checkOne(one, all, around))
}

function checkOne(one: WithLeaves, all: readonly WithLeaves[], around: Surroundings): OpeningCheck {
  const { placed, leaves } = one
  const { opening, frame, site } = placed
  const middle = onWall(frame, opening.fromMm + opening.widthMm / 2, Math.max(site.faceMm, 0))
  const floorMm = around.floorTakesAt(middle)
  const clearWidthMm = clearWidth(placed, leaves)
  const clearHeightMm = Math.max(0, opening.sillMm + opening.heightMm - floorMm - opening.revealLiningMm)
  const thresholdStepMm = opening.sillMm === 0 ? floorMm : Math.max(0, floorMm - opening.sillMm)
  return {
    id: opening.id,
    revealDepthMm: Math.max(0, site.faceMm),
    clearWidthMm,
    clearHeightMm,
    thresholdStepMm,
    door: leaves.length > 0 ? { leaves: leaves.map(leafCheck) } : null,
    problems: [
      ...placingProblems(
        placed,
        all.map((other) => other.placed),
        around,
      ),
      ...clashProblems(placed, around),
      ...swingProblems(placed, leaves, around),
      ...crossingProblems(placed, leaves, all),
      ...lobbyProblems(placed, leaves),
      ...floorProblem(placed, leaves, thresholdStepMm),
      ...wayOutProblems(opening, { clearWidthMm, clearHeightMm, sillMm: opening.sillMm - floorMm }),
    ],
  }
}

/** Between lined jambs, less what neighbours' linings cover and open leaves stand in. */
function clearWidth({ opening, hiddenMm }: Placed, leaves: readonly StoppedLeaf[]): Millimetres {
  const jambs = hiddenMm.reduce((sum, hidden) => sum + Math.max(hidden, opening.revealLiningMm), 0)
  return Math.max(0, opening.widthMm - jambs - leavesInTheWay(leaves))
}

function leafCheck({ leaf, opensDeg, sweep }: StoppedLeaf): LeafCheck {
  const { hangs, swing, hinge, widthMm } = leaf
  return { hangs, swing, opensDeg, sweep, leaf: leafAt(leaf, Math.min(opensDeg, 90)), hinge, widthMm }
}
