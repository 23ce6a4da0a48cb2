import type { CornerAsBuilt } from '#analysis/results.ts'
import { toTarget } from '#drawing/frame.ts'
import type { Mark } from '#drawing/model.ts'
import type { PlanContext } from '#drawing/plan/planInput.ts'
import { flatRun } from '#drawing/plan/rings.ts'
import type { WallLine } from '#drawing/plan/wallLines.ts'
import type { Point } from '#geometry/polygon.ts'

/** Sine of the least angle between two walls whose linings butt on a line worth drawing: 20 degrees. */
const LEAST_TURN = 0.35

/** The joint where one lining stops against the other, across the mitre of the space account. */
export function jointMarks(context: PlanContext): Mark[] {
  const { result, walls, style, isSelected, frame } = context
  if (result === null) return []
  const byId = new Map(walls.map((wall) => [wall.id, wall]))
  return result.corners.flatMap((corner): Mark[] => {
    const ends = jointOf(corner, byId)
    if (!ends) return []
    const colour = isSelected(corner.cornerId) ? 'accent' : 'ink'
    const runs = [flatRun(ends.map((point) => toTarget(frame, point)))]
    return [
      { kind: 'lines', role: 'corner', surfaceId: corner.cornerId, runs, stroke: { colour, width: style.medium } },
    ]
  })
}

/**
 * Ends of the joint, mm. Where the room's corner is hollow, the lining that stops meets the face of the one that runs
 * through, from the old wall to the new corner. Where it juts into the room, the lining that runs through passes the
 * corner, and the other one starts in line with the wall behind it.
 */
function jointOf({ walls, runsThrough }: CornerAsBuilt, byId: ReadonlyMap<string, WallLine>): readonly Point[] | null {
  const [before, after] = [byId.get(walls[0]), byId.get(walls[1])]
  if (!before || !after || runsThrough === null) return null
  const [through, stops] = runsThrough === before.id ? [before, after] : [after, before]
  if (through.depthMm <= 0 || stops.depthMm <= 0) return null
  const isHollow = before.along[0] * after.inward[0] + before.along[1] * after.inward[1] < 0
  const off = isHollow ? through.depthMm : 0
  const [n, m] = [through.inward, stops.inward]
  const turn = n[0] * m[1] - n[1] * m[0]
  if (Math.abs(turn) < LEAST_TURN) return null
  // Directions are the target's, y down: the plan's y is turned over.
  const at = (a: number, b: number): Point => [
    after.from[0] + (a * m[1] - b * n[1]) / turn,
    after.from[1] - (n[0] * b - m[0] * a) / turn,
  ]
  return [at(off, 0), at(off, stops.depthMm)]
}
