import { bothLengths } from '#analysis/cautions/words.ts'
import { type HungLeaf, leavesOf, sweepTo } from '#analysis/openings/leaves.ts'
import type { Placed, Surroundings } from '#analysis/openings/site.ts'
import { firstTouch } from '#analysis/openings/stops.ts'
import type { Note } from '#analysis/results.ts'
import { areaWithin } from '#geometry/convex.ts'
import type { Point } from '#geometry/polygon.ts'

/** Shapes that share less than this only touch, mm2. */
export const TOUCH_MM2 = 200
/** A leaf that opens to this many degrees opens fully. */
const FULL_DEG = 90 - 1e-6

/** One leaf with what stops it. */
export interface StoppedLeaf {
  readonly leaf: HungLeaf
  readonly opensDeg: number
  /** Plan of what it passes over up to 90 degrees. */
  readonly sweep: readonly Point[]
  /** What stands in its way before its reveal does, by name, with the angle at which it meets it. */
  readonly blockers: readonly Blocker[]
}

interface Blocker {
  readonly name: string
  readonly degrees: number
}

/** How far every leaf of a door opens: its reveal, then the faces of the clear room it would swing into. */
export function stoppedLeaves(placed: Placed, around: Surroundings): readonly StoppedLeaf[] {
  return leavesOf(placed.opening, placed.frame, placed.site).map((leaf) => {
    const blockers = leaf.swing === 'in' ? blockersOf(leaf, placed, around) : []
    const opensDeg = Math.min(leaf.revealStopDeg, ...blockers.map(({ degrees }) => degrees))
    return { leaf, opensDeg, sweep: sweepTo(leaf, Math.min(opensDeg, 90)), blockers }
  })
}

function blockersOf(leaf: HungLeaf, { frame }: Placed, { result, owners }: Surroundings): readonly Blocker[] {
  const first = new Map<string, number>()
  for (const { wall, from, to } of result.inset.edges) {
    if (wall === frame.index) continue
    const degrees = firstTouch(leaf, from, to)
    const name = owners[wall]
    if (degrees === null || name === undefined) continue
    first.set(name, Math.min(first.get(name) ?? 180, degrees))
  }
  return [...first].map(([name, degrees]) => ({ name, degrees }))
}

/** Sentences on what stops a door's leaves short of square, or is hit on the way. */
export function swingProblems(placed: Placed, leaves: readonly StoppedLeaf[], around: Surroundings): readonly Note[] {
  return leaves.flatMap((stopped) => [
    ...revealProblem(placed, stopped),
    ...blockedProblem(placed, stopped),
    ...dropProblems(placed, stopped, around),
  ])
}

function revealProblem({ opening, site }: Placed, { leaf }: StoppedLeaf): readonly Note[] {
  if (leaf.revealStopDeg >= FULL_DEG) return []
  const { revealLiningMm } = opening
  const text =
    `${opening.name}: ${leaf.name} opens to ${wholeDegrees(leaf.revealStopDeg)} degrees at most. The lining of its reveal stands ${bothLengths(revealLiningMm)} ` +
    `before the hinge over a depth of ${bothLengths(site.faceMm)}, and the leaf has to be that much narrower at both jambs to pass it at all: ` +
    'splay or widen the reveal, or hang the leaf in the new lining.'
  return [{ code: 'leaf-stops-short', text }]
}

function blockedProblem({ opening }: Placed, { leaf, blockers }: StoppedLeaf): readonly Note[] {
  const before = blockers.filter(({ degrees }) => degrees < Math.min(FULL_DEG, leaf.revealStopDeg))
  return before.map(({ name, degrees }) => ({
    code: 'swing-blocked',
    text: `${opening.name}: ${leaf.name} meets ${name} at ${wholeDegrees(degrees)} degrees: hang it on the other jamb, let it swing the other way, or move one of them.`,
  }))
}

function dropProblems({ opening, frame }: Placed, { leaf, sweep }: StoppedLeaf, around: Surroundings): readonly Note[] {
  if (leaf.swing === 'out') return []
  const headMm = opening.sillMm + opening.heightMm
  return around.boxes.flatMap(({ name, plan, bottomMm }) => {
    const hangsMm = around.overFloorAt(frame.from, bottomMm)
    if (hangsMm >= headMm - 0.5 || areaWithin(sweep, plan) < TOUCH_MM2) return []
    const text = `${opening.name}: ${leaf.name} reaches up to ${bothLengths(headMm)} over the existing floor and swings into the box of ${name}, which hangs down to ${bothLengths(hangsMm)}: let it swing the other way, or take the leaf lower.`
    return [{ code: 'swing-under-drop', text }]
  })
}

/** Degrees for a sentence, never rounded up to square. */
function wholeDegrees(degrees: number): number {
  return Math.floor(degrees + 1e-6)
}
