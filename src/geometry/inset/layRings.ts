import type { Grid } from '#geometry/grid.ts'
import type { GridRoom } from '#geometry/inset/floorEdges.ts'
import { counterClockwise, type GridRing, roundRing, type SourceWall } from '#geometry/inset/gridRing.ts'
import { type MovedRing, moveOutward } from '#geometry/inset/moveOutward.ts'
import { seatObstacles } from '#geometry/inset/seatObstacles.ts'
import type { InsetRefusal } from '#geometry/inset/types.ts'
import { checkRing } from '#geometry/inset/validate.ts'
import type { Point } from '#geometry/polygon.ts'
import { fail, ok, type Result } from '#units/result.ts'

/** The rings on the grid, checked and moved, the floor on their left. */
export function layRings(
  outlines: readonly (readonly Point[])[],
  sources: readonly SourceWall[],
  depths: readonly number[],
  grid: Grid,
): Result<GridRoom, InsetRefusal> {
  const rings: MovedRing[] = []
  let firstWall = 0
  for (const ring of outlines) {
    const refusal = checkRing(ring, firstWall, grid)
    if (refusal) return fail(refusal)
    const turned = counterClockwise(roundRing(ring, firstWall, grid))
    rings.push(withDirections(firstWall === 0 ? turned : reversed(turned), sources))
    firstWall += ring.length
  }
  const [outline, ...columns] = rings
  const movedOutline = moveWhereNegative(outline!, depths, grid)
  if (!movedOutline.ok) return movedOutline
  const obstacles = seatObstacles(columns, movedOutline.value, grid)
  const movedObstacles: MovedRing[] = []
  for (const obstacle of obstacles) {
    const moved = moveWhereNegative(obstacle, depths, grid)
    if (!moved.ok) return moved
    movedObstacles.push(moved.value)
  }
  return ok({ outline: outline!, movedOutline: movedOutline.value, obstacles, movedObstacles, depths })
}

function moveWhereNegative(ring: MovedRing, depths: readonly number[], grid: Grid): Result<MovedRing, InsetRefusal> {
  const own = ring.walls.map((wall) => depths[wall]!)
  return own.some((depth) => depth < 0) ? moveOutward(ring, ring.directions, own, grid) : ok(ring)
}

/** The same ring the other way round. */
function reversed({ xs, ys, walls }: GridRing): GridRing {
  const turned = walls.toReversed()
  turned.push(turned.shift()!)
  return { xs: xs.toReversed(), ys: ys.toReversed(), walls: turned }
}

/** Adds each edge's direction as the caller drew it, not as rounding turned it. */
function withDirections(ring: GridRing, sources: readonly SourceWall[]): MovedRing {
  const n = ring.xs.length
  const directions = ring.walls.map((wall, k) => {
    const { directionX, directionY } = sources[wall]!
    const dx = ring.xs[(k + 1) % n]! - ring.xs[k]!
    const dy = ring.ys[(k + 1) % n]! - ring.ys[k]!
    const sign = dx * directionX + dy * directionY < 0 ? -1 : 1
    return [sign * directionX, sign * directionY] as const
  })
  return { ...ring, directions, joins: ring.walls.map(() => false) }
}
