import type { Grid } from '#geometry/grid.ts'
import type { MovedRing } from '#geometry/inset/moveOutward.ts'
import { findSelfMeeting } from '#geometry/inset/validate.ts'

/** An obstacle's corner nearer than this to a wall or to another obstacle stands against it, mm. Our choice. */
const SEAT_MM = 0.1

/**
 * Puts obstacles that stand against a wall or against each other a hair into it. On the grid a column drawn against a
 * slanted wall would else leave a gap of a step, through which a lining could grow behind it.
 */
export function seatObstacles(obstacles: readonly MovedRing[], outline: MovedRing, grid: Grid): MovedRing[] {
  const seat = SEAT_MM * grid.stepsPerMm
  return obstacles.map((obstacle) => {
    const around = [outline, ...obstacles.filter((other) => other !== obstacle)]
    const corners = obstacle.xs.map((x, k) => seatedCorner(x, obstacle.ys[k]!, around, seat))
    const seated = { ...obstacle, xs: corners.map(([x]) => x), ys: corners.map(([, y]) => y) }
    const isSame = corners.every(([x, y], k) => x === obstacle.xs[k] && y === obstacle.ys[k])
    return isSame || findSelfMeeting(seated, grid) ? obstacle : seated
  })
}

/** A corner moved behind every wall it lies on; all rings have the floor on their left. */
function seatedCorner(cornerX: number, cornerY: number, rings: readonly MovedRing[], seat: number): [number, number] {
  let [x, y] = [cornerX, cornerY]
  for (const { xs, ys } of rings) {
    for (let k = 0; k < xs.length; k++) {
      const after = k + 1 === xs.length ? 0 : k + 1
      const dx = xs[after]! - xs[k]!
      const dy = ys[after]! - ys[k]!
      const length = Math.hypot(dx, dy)
      const aside = (dx * (y - ys[k]!) - dy * (x - xs[k]!)) / length
      const along = (dx * (x - xs[k]!) + dy * (y - ys[k]!)) / length
      if (Math.abs(aside) > seat || along < -seat || along > length + seat) continue
      x += (dy / length) * (aside + seat)
      y -= (dx / length) * (aside + seat)
    }
  }
  return [Math.round(x), Math.round(y)]
}
