import type { AnalysisInput } from '#analysis/analyse.ts'
import { type PlacedBox, stands } from '#analysis/boxes/placed.ts'
import { list } from '#analysis/cautions/words.ts'
import { inwardSweeps, isInClear, met, type Named, solidThings } from '#analysis/furniture/around.ts'
import { footprintOf } from '#analysis/furniture/footprint.ts'
import { lowProblems } from '#analysis/furniture/overhead.ts'
import type { FurnitureCheck, Note, SchemeResult } from '#analysis/results.ts'
import type { Furniture } from '#analysis/room.ts'
import type { Ring } from '#geometry/polygon.ts'

type Result = Pick<SchemeResult, 'clear' | 'heights' | 'openings' | 'inset' | 'surfaces'>

/**
 * Whether every piece of furniture finds its place in the clear room, free of walls, swings, low drops and boxes.
 * @param result  its clear plan is the one before boxes stand in it
 */
export function checkFurniture(
  input: AnalysisInput,
  result: Result,
  boxes: readonly PlacedBox[],
): readonly FurnitureCheck[] {
  const { room } = input
  if (room.furniture.length === 0) return []
  const solid = solidThings(input, result)
  const swings = inwardSweeps(input, result)
  const standing = boxes.filter(stands).map(({ box, footprint }) => asNamed(box.name, footprint))
  const pieces = room.furniture.map((piece) => ({
    piece,
    footprint: footprintOf(piece),
    withClearance: footprintOf(piece, piece.clearance),
  }))
  return pieces.map(({ piece, footprint, withClearance }) => {
    const beside = pieces.filter((other) => other.piece !== piece)
    const others = [...beside.map((other) => asNamed(other.piece.name, other.footprint)), ...standing]
    return {
      id: piece.id,
      footprint,
      withClearance,
      problems: [
        ...standsIn(piece, footprint, solid, result),
        ...swingProblem(piece, met(footprint, swings)),
        ...otherProblem(piece, met(footprint, others)),
        ...clearanceProblem(piece, footprint, withClearance, { solid, loose: [...others, ...swings], result }),
        ...lowProblems(piece, footprint, input.room, result.heights),
      ],
    }
  })
}

function asNamed(name: string, footprint: Ring): Named {
  return { name, shapes: [{ outline: footprint, holes: [] }] }
}

function standsIn({ name }: Furniture, footprint: Ring, solid: readonly Named[], result: Result): readonly Note[] {
  if (isInClear(footprint, result)) return []
  const names = met(footprint, solid)
  const into = names.length > 0 ? `stands in ${list(names)}` : 'reaches out of the clear room'
  return [{ code: 'furniture-in-wall', text: `${name} ${into}: move or turn it, or choose a thinner build-up there.` }]
}

function swingProblem({ name }: Furniture, doors: readonly string[]): readonly Note[] {
  if (doors.length === 0) return []
  return [
    { code: 'furniture-in-swing', text: `${name} stands in the swing of ${list(doors)}: move it out of the way.` },
  ]
}

function otherProblem({ name }: Furniture, others: readonly string[]): readonly Note[] {
  if (others.length === 0) return []
  return [{ code: 'furniture-overlaps', text: `${name} stands in ${list(others)}: move one of them.` }]
}

/** The space round a piece; silent of what already stands in the piece itself. */
function clearanceProblem(
  { name }: Furniture,
  footprint: Ring,
  withClearance: Ring,
  { solid, loose, result }: { solid: readonly Named[]; loose: readonly Named[]; result: Result },
): readonly Note[] {
  const isFree = isInClear(withClearance, result)
  const already = met(footprint, [...solid, ...loose])
  const names = met(withClearance, isFree ? loose : [...solid, ...loose]).filter((found) => !already.includes(found))
  if (names.length > 0) {
    const verb = names.length === 1 ? 'takes' : 'take'
    return [
      {
        code: 'furniture-clearance',
        text: `The free space asked for round ${name} is not all there: ${list(names)} ${verb} part of it.`,
      },
    ]
  }
  if (isFree || !isInClear(footprint, result)) return []
  return [
    {
      code: 'furniture-clearance',
      text: `The free space asked for round ${name} is not all there: it reaches out of the clear room.`,
    },
  ]
}
