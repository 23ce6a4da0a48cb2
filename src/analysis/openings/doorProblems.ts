import { bothLengths } from '#analysis/cautions/words.ts'
import { LEAF_MM, spaceBetween } from '#analysis/openings/leaves.ts'
import { type StoppedLeaf, TOUCH_MM2 } from '#analysis/openings/meets.ts'
import type { Placed } from '#analysis/openings/site.ts'
import type { Note } from '#analysis/results.ts'
import { areaWithin } from '#geometry/convex.ts'
import type { Millimetres } from '#units/quantity.ts'

/** A leaf that stays where it hangs and swings in meets a new floor that stands over its sill. */
export function floorProblem(
  { opening }: Placed,
  leaves: readonly StoppedLeaf[],
  stepMm: Millimetres,
): readonly Note[] {
  const stays = leaves.find(({ leaf }) => leaf.hungIn === 'existing' && leaf.swing === 'in')
  if (!stays || stepMm < 0.5) return []
  const text = `${opening.name}: the new floor stands ${bothLengths(stepMm)} over its sill and stops ${stays.leaf.name}, which swings in: raise or shorten the leaf by that much, or stop the floor short of its swing, and mark the step.`
  return [{ code: 'floor-stops-leaf', text }]
}

/** Two doors one behind the other need room between them for whatever swings there. */
export function lobbyProblems({ opening, site }: Placed, leaves: readonly StoppedLeaf[]): readonly Note[] {
  if (opening.lobby === null) return []
  if (opening.hungIn === 'lining') {
    const text = `${opening.name}: both doors of its lobby hang in the new lining: leave the first one in the existing wall.`
    return [{ code: 'lobby-same-place', text }]
  }
  const space = spaceBetween(opening, site)
  const wide = Math.max(...leaves.map(({ leaf }) => leaf.widthMm))
  if (space >= wide) return []
  const [first, second] = [opening.swing === 'in', opening.lobby.swing === 'out']
  if (!first && !second) return []
  const depth = `the space between its two doors is ${bothLengths(space)} deep and a leaf is ${bothLengths(wide)} wide`
  const text =
    first && second
      ? `${opening.name}: ${depth}, and both swing into it, so neither opens past the other: let one of them swing away from the space.`
      : `${opening.name}: ${depth}, so the ${first ? 'first' : 'second'} door, which swings into it, opens only while the other one stands open: let both swing away from the space where there is a choice.`
  return [{ code: first && second ? 'lobby-blocked' : 'lobby-order', text }]
}

/** Doors whose leaves pass over the same floor. */
export function crossingProblems(
  own: Placed,
  leaves: readonly StoppedLeaf[],
  others: readonly { readonly placed: Placed; readonly leaves: readonly StoppedLeaf[] }[],
): readonly Note[] {
  return others
    .filter(({ placed }) => placed !== own)
    .filter((other) => leaves.some((one) => other.leaves.some((theirs) => meet(one, theirs))))
    .map(({ placed }) => ({
      code: 'swings-cross',
      text: `${own.opening.name} and ${placed.opening.name} swing over the same floor, so one can hold the other shut: hang one of them on its other jamb, or let it swing the other way.`,
    }))
}

function meet(one: StoppedLeaf, other: StoppedLeaf): boolean {
  const [a, b] = [one.leaf.hinge, other.leaf.hinge]
  if (Math.hypot(a[0] - b[0], a[1] - b[1]) >= one.leaf.widthMm + other.leaf.widthMm) return false
  return areaWithin(one.sweep, [{ outline: other.sweep, holes: [] }]) > TOUCH_MM2
}

/** Thickness of open leaves that stand between the jambs: all that are stopped square to the wall or before. */
export function leavesInTheWay(leaves: readonly StoppedLeaf[]): Millimetres {
  const ofDoor = (door: 'first' | 'lobby'): number =>
    leaves.filter(({ leaf, opensDeg }) => leaf.door === door && opensDeg <= 90).length * LEAF_MM
  return Math.max(ofDoor('first'), ofDoor('lobby'))
}
