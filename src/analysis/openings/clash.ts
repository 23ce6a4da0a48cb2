import { bothLengths } from '#analysis/cautions/words.ts'
import { LEAF_MM } from '#analysis/openings/leaves.ts'
import { TOUCH_MM2 } from '#analysis/openings/meets.ts'
import type { Placed, Surroundings } from '#analysis/openings/site.ts'
import { onWall } from '#analysis/openings/wallFrame.ts'
import type { Note } from '#analysis/results.ts'
import { areaWithin } from '#geometry/convex.ts'
import type { Millimetres } from '#units/quantity.ts'

/** A drop whose box hangs across the way through an opening, heights over the existing floor there. */
export interface DropClash {
  readonly drop: string
  readonly boxMm: Millimetres
  readonly headMm: Millimetres
  readonly overlapMm: Millimetres
}

/** Boxed drops that hang lower than an opening's head over its reveal, or just in front of it. */
export function dropClashes({ opening, frame, site }: Placed, around: Surroundings): readonly DropClash[] {
  const depth = Math.max(site.faceMm, 0) + LEAF_MM
  const [s0, s1] = [opening.fromMm, opening.fromMm + opening.widthMm]
  const way = [onWall(frame, s0, 0), onWall(frame, s1, 0), onWall(frame, s1, depth), onWall(frame, s0, depth)]
  const headMm = opening.sillMm + opening.heightMm
  const middle = onWall(frame, (s0 + s1) / 2, 0)
  return around.boxes.flatMap(({ name, plan, bottomMm }) => {
    const boxMm = around.overFloorAt(middle, bottomMm)
    if (boxMm >= headMm - 1e-6 || areaWithin(way, plan) < TOUCH_MM2) return []
    return [{ drop: name, boxMm, headMm, overlapMm: headMm - Math.max(boxMm, opening.sillMm) }]
  })
}

export function clashProblems(placed: Placed, around: Surroundings): readonly Note[] {
  return dropClashes(placed, around).map(({ drop, boxMm, headMm, overlapMm }) => ({
    code: 'drop-clash',
    text: `${drop}: its box hangs to ${bothLengths(boxMm)} over the existing floor and the head of ${placed.opening.name} is at ${bothLengths(headMm)}: they overlap by ${bothLengths(overlapMm)}. Box it shallower, move it, or lower the head.`,
  }))
}
