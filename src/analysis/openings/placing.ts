import { bothLengths } from '#analysis/cautions/words.ts'
import type { Placed, Surroundings } from '#analysis/openings/site.ts'
import { onWall } from '#analysis/openings/wallFrame.ts'
import type { Note } from '#analysis/results.ts'
import type { Opening } from '#analysis/room.ts'

/** Overlaps and overhangs up to this are rounding, mm. */
const SLACK_MM = 0.5

/** Sentences on an opening that has no place in its wall: too wide, too high, beyond its end, across another, or covered. */
export function placingProblems(placed: Placed, all: readonly Placed[], around: Surroundings): readonly Note[] {
  return [
    ...wallProblem(placed),
    ...heightProblem(placed, around),
    ...overlapProblems(placed, all),
    ...hiddenProblem(placed),
  ]
}

/** A wall ends at its ceiling: an opening that goes higher would leave it less than nothing to be. */
function heightProblem({ opening, frame }: Placed, { ceilingAt }: Surroundings): readonly Note[] {
  const { fromMm, widthMm, sillMm, heightMm, name } = opening
  const ceilingMm = Math.max(...[0, 0.5, 1].map((share) => ceilingAt(onWall(frame, fromMm + share * widthMm, 0))))
  const headMm = sillMm + heightMm
  if (headMm <= ceilingMm + SLACK_MM) return []
  const text = `${name} reaches up to ${bothLengths(headMm)} and Wall ${frame.index + 1} is only ${bothLengths(Math.max(0, ceilingMm))} high there: check the opening and the heights.`
  return [{ code: 'above-ceiling', text }]
}

function wallProblem({ opening, frame }: Placed): readonly Note[] {
  const label = `Wall ${frame.index + 1}`
  if (opening.widthMm > frame.lengthMm + SLACK_MM) {
    const text = `${opening.name} is ${bothLengths(opening.widthMm)} wide and ${label} only ${bothLengths(frame.lengthMm)} long: check both.`
    return [{ code: 'wider-than-wall', text }]
  }
  const beyond = opening.fromMm + opening.widthMm - frame.lengthMm
  if (beyond <= SLACK_MM) return []
  const text = `${opening.name} reaches ${bothLengths(beyond)} beyond the end of ${label}: move it back or check its width.`
  return [{ code: 'beyond-wall', text }]
}

function overlapProblems({ opening }: Placed, all: readonly Placed[]): readonly Note[] {
  return all
    .filter(({ opening: other }) => other !== opening && other.wall === opening.wall && overlap(opening, other))
    .map(({ opening: other }) => ({
      code: 'openings-overlap',
      text: `${opening.name} and ${other.name} overlap in the same wall: move one of them.`,
    }))
}

function overlap(one: Opening, other: Opening): boolean {
  const shared = (start: number, length: number, otherStart: number, otherLength: number): number =>
    Math.min(start + length, otherStart + otherLength) - Math.max(start, otherStart)
  return (
    shared(one.fromMm, one.widthMm, other.fromMm, other.widthMm) > SLACK_MM &&
    shared(one.sillMm, one.heightMm, other.sillMm, other.heightMm) > SLACK_MM
  )
}

function hiddenProblem({ opening, hiddenMm }: Placed): readonly Note[] {
  const hidden = hiddenMm[0] + hiddenMm[1]
  if (hidden <= SLACK_MM) return []
  const text = `${opening.name}: the lining beside it covers ${bothLengths(hidden)} of its width: move the opening, or keep that lining off its jamb.`
  return [{ code: 'opening-covered', text }]
}
