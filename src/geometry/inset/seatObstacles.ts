import type { Grid } from '#geometry/grid.ts'
import type { MovedRing } from '#geometry/inset/moveOutward.ts'
import { findSelfMeeting } from '#geometry/inset/validate.ts'

/** An obstacle's corner nearer than this to a wall or to another obstacle stands against it, mm. Our choice. */
const SEAT_MM = 0.1

/** Sine of the angle up to which a side counts as lying flat against a wall. */
const FLAT = 1e-3

/**
 * Puts obstacles that lie flat against a wall or against each other a hair into it. On the grid a column drawn against
 * a slanted wall would else leave a gap of a step, through which a lining could grow in front of it.
 */
export function seatObstacles(obstacles: readonly MovedRing[], outline: MovedRing, grid: Grid): MovedRing[] {
  const seat = SEAT_MM * grid.stepsPerMm
  return obstacles.map((obstacle) => {
    const others = obstacles.filter((other) => other !== obstacle)
    const corners = obstacle.xs.map((_, k) => seatedCorner(obstacle, k, outline, others, seat))
    const seated = { ...obstacle, xs: corners.map(([x]) => x), ys: corners.map(([, y]) => y) }
    const isSame = corners.every(([x, y], k) => x === obstacle.xs[k] && y === obstacle.ys[k])
    return isSame || findSelfMeeting(seated, grid) ? obstacle : seated
  })
}

/**
 * A corner moved behind every wall that one of its sides lies flat against, from the room's side or from outside, and
 * into every obstacle that one of its sides faces. All rings have the floor on their left.
 */
function seatedCorner(
  obstacle: MovedRing,
  corner: number,
  outline: MovedRing,
  others: readonly MovedRing[],
  seat: number,
): [number, number] {
  const n = obstacle.xs.length
  const sides = [obstacle.directions[corner]!, obstacle.directions[(corner + n - 1) % n]!]
  let [x, y] = [obstacle.xs[corner]!, obstacle.ys[corner]!]
  for (const ring of [outline, ...others]) {
    const { xs, ys, directions } = ring
    directions.forEach(([ux, uy], k) => {
      const isFlat = sides.some(([wx, wy]) => {
        const faces = ring === outline || ux * wx + uy * wy < 0
        return faces && Math.abs(ux * wy - uy * wx) < FLAT
      })
      const after = k + 1 === xs.length ? 0 : k + 1
      const aside = ux * (y - ys[k]!) - uy * (x - xs[k]!)
      const along = ux * (x - xs[k]!) + uy * (y - ys[k]!)
      const length = ux * (xs[after]! - xs[k]!) + uy * (ys[after]! - ys[k]!)
      if (!isFlat || Math.abs(aside) > seat || along < -seat || along > length + seat) return
      x += uy * (aside + seat)
      y -= ux * (aside + seat)
    })
  }
  return [Math.round(x), Math.round(y)]
}
