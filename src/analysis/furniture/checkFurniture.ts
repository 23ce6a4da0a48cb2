import type { AnalysisInput } from '#analysis/analyse.ts'
import { list } from '#analysis/cautions/words.ts'
import { footprintOf } from '#analysis/furniture/footprint.ts'
import { lowProblems } from '#analysis/furniture/overhead.ts'
import type { FurnitureCheck, Note, SchemeResult } from '#analysis/results.ts'
import type { Furniture } from '#analysis/room.ts'
import { areaWithin } from '#geometry/convex.ts'
import { outlineArea } from '#geometry/outline.ts'
import type { Point, Polygon, Ring } from '#geometry/polygon.ts'

type Result = Pick<SchemeResult, 'clear' | 'heights' | 'openings' | 'inset' | 'surfaces'>

/** Shapes that share less than this only touch, mm2. */
const TOUCH_MM2 = 200

/** A shape of the plan with the name it has in a sentence. */
interface Named {
  readonly name: string
  readonly shapes: readonly Pick<Polygon, 'outline' | 'holes'>[]
}

/** Whether every piece of furniture finds its place in the clear room, free of walls, swings and low drops. */
export function checkFurniture(input: AnalysisInput, result: Result): readonly FurnitureCheck[] {
  const { room } = input
  if (room.furniture.length === 0) return []
  const solid = solids(input, result)
  const swings = sweeps(input, result)
  const pieces = room.furniture.map((piece) => ({
    piece,
    footprint: footprintOf(piece),
    withClearance: footprintOf(piece, piece.clearance),
  }))
  return pieces.map(({ piece, footprint, withClearance }) => {
    const others = pieces
      .filter((other) => other.piece !== piece)
      .map((other): Named => ({ name: other.piece.name, shapes: [{ outline: other.footprint, holes: [] }] }))
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

/** What no piece can stand in: linings by wall, and obstacles with theirs. */
function solids({ room }: AnalysisInput, { inset, surfaces }: Result): readonly Named[] {
  const walls = room.walls.map(({ id }, index): Named => {
    const label = surfaces.find((surface) => surface.id === id)?.label ?? `Wall ${index + 1}`
    return { name: `${label}'s lining`, shapes: inset.strips.filter(({ wall }) => wall === index) }
  })
  let edge = room.walls.length
  const obstacles = room.obstacles.map(({ name, corners }): Named => {
    const [first, end] = [edge, edge + corners.length]
    edge = end
    const outline = corners.map(({ xMm, yMm }): Point => [xMm, yMm])
    return {
      name,
      shapes: [{ outline, holes: [] }, ...inset.strips.filter(({ wall }) => wall >= first && wall < end)],
    }
  })
  return [...walls, ...obstacles]
}

function sweeps({ room }: AnalysisInput, { openings }: Result): readonly Named[] {
  return room.openings.flatMap(({ id, name }): Named[] => {
    const leaves = openings.find((check) => check.id === id)?.door?.leaves ?? []
    const inward = leaves.filter(({ swing }) => swing === 'in')
    if (inward.length === 0) return []
    return [{ name, shapes: inward.map(({ sweep }) => ({ outline: sweep, holes: [] })) }]
  })
}

function met(ring: Ring, named: readonly Named[]): string[] {
  return named.filter(({ shapes }) => areaWithin(ring, shapes) > TOUCH_MM2).map(({ name }) => name)
}

function isInClear(ring: Ring, { clear }: Result): boolean {
  return Math.abs(outlineArea(ring)) - areaWithin(ring, clear) <= TOUCH_MM2
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
