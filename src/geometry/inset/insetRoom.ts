import { gridAround, STEPS_PER_MM } from '#geometry/grid.ts'
import { sourceWalls } from '#geometry/inset/gridRing.ts'
import { layFloor } from '#geometry/inset/layFloor.ts'
import { layRings } from '#geometry/inset/layRings.ts'
import { overlayStrips } from '#geometry/inset/overlay.ts'
import { readInset } from '#geometry/inset/readInset.ts'
import type { Inset, InsetInput, InsetObstacle, InsetRefusal } from '#geometry/inset/types.ts'
import { validateInput } from '#geometry/inset/validate.ts'
import { fail, ok, type Result } from '#units/result.ts'

export type {
  InnerEdge,
  Inset,
  InsetInput,
  InsetObstacle,
  InsetRefusal,
  InsetWarning,
  Strip,
  WallResult,
} from '#geometry/inset/types.ts'

/** Grids to try in turn; a second one is needed only if the drawing contradicts itself on the first. */
const GRIDS = [STEPS_PER_MM, 640, 321, 961] as const

/**
 * What is left of a room when every wall gives up its own depth: the clear room, each wall's strips, lengths and
 * warnings. Works on a grid of 1/320 mm, so the areas handed out add up exactly.
 * A ring that ends on its first corner again is read without that corner and its depth.
 * @param given  mm, y up; outline in either direction, up to 60 m across; depths up to 10 m, below 0 where the room grows
 * @returns a refusal that names walls (counted from 0 in `walls`, from 1 in words) when the rings enclose no clear floor
 */
export function insetRoom(given: InsetInput): Result<Inset, InsetRefusal> {
  const input = openRings(given)
  const refusal = validateInput(input)
  return refusal ? fail(refusal) : firstAnswer(GRIDS, (stepsPerMm) => insetOnGrid(input, stepsPerMm))
}

function openRings(input: InsetInput): InsetInput {
  return { ...openRing(input), obstacles: input.obstacles.map(openRing) }
}

/** Without a closing point that repeats the first corner, and without the depth given for it. */
function openRing<Ring extends InsetObstacle>(ring: Ring): InsetObstacle {
  const { outline, depthsMm } = ring
  const [first, last] = [outline[0], outline.at(-1)]
  const isClosed = outline.length > 3 && first && last && first[0] === last[0] && first[1] === last[1]
  return isClosed && depthsMm.length === outline.length
    ? { outline: outline.slice(0, -1), depthsMm: depthsMm.slice(0, -1) }
    : { outline, depthsMm }
}

/** The first grid's answer that does not contradict itself (null), or a refusal when there is none. */
export function firstAnswer(
  grids: readonly number[],
  attempt: (stepsPerMm: number) => Result<Inset, InsetRefusal> | null,
): Result<Inset, InsetRefusal> {
  for (const stepsPerMm of grids) {
    const answer = attempt(stepsPerMm)
    if (answer) return answer
  }
  const message =
    'The room could not be worked out: its lines contradict each other on every grid tried. ' +
    'Move the corners that lie closest together by a millimetre, and please report the room.'
  return fail({ code: 'engine', message, walls: [] })
}

/** One try. Null when the drawing contradicts itself or its parts do not add up. */
export function insetOnGrid(input: InsetInput, stepsPerMm: number): Result<Inset, InsetRefusal> | null {
  const outlines = [input.outline, ...input.obstacles.map((obstacle) => obstacle.outline)]
  const grid = gridAround(outlines.flat(), stepsPerMm)
  const sources = outlines.flatMap((outline) => sourceWalls(outline, grid))
  const depthsMm = [input.depthsMm, ...input.obstacles.map((obstacle) => obstacle.depthsMm)].flat()
  const depths = depthsMm.map((depth) => depth * stepsPerMm)
  const room = layRings(outlines, sources, depths, grid)
  if (!room.ok) return room
  const floor = layFloor(room.value)
  const overlay = floor && overlayStrips(floor)
  if (!overlay) return null
  const inset = readInset(overlay, { outlines, sources, room: room.value, grid })
  return inset.closureGridUnits2 === 0 ? ok(inset) : null
}
