import { type Grid, stepsX, stepsY } from '#geometry/grid.ts'
import type { InsetWarning } from '#geometry/inset/types.ts'
import { lengthName, placeName, wallName } from '#geometry/inset/words.ts'
import type { Point } from '#geometry/polygon.ts'

/** A wall as the caller gave it, in unrounded grid steps: lengths along it are counted from its first corner. */
export interface SourceWall {
  readonly fromX: number
  readonly fromY: number
  readonly lengthSteps: number
  readonly directionX: number
  readonly directionY: number
}

/**
 * A ring on the grid, counter-clockwise, without repeated corners. Edge k runs from corner k to corner k + 1 and is the
 * caller's wall walls[k].
 */
export interface GridRing {
  readonly xs: readonly number[]
  readonly ys: readonly number[]
  readonly walls: readonly number[]
}

/** A shorter wall draws a warning: it is more often a slip of the hand than a wall. Our choice. */
const TINY_MM = 10

/** The walls of a ring as given; `firstWall` is the number of its first edge. */
export function sourceWalls(outline: readonly Point[], grid: Grid): SourceWall[] {
  return outline.map(([x, y], k) => {
    const [toX, toY] = outline[(k + 1) % outline.length]!
    const dx = (toX - x) * grid.stepsPerMm
    const dy = (toY - y) * grid.stepsPerMm
    const length = Math.hypot(dx, dy)
    return {
      fromX: stepsX(grid, x),
      fromY: stepsY(grid, y),
      lengthSteps: length,
      directionX: length > 0 ? dx / length : 0,
      directionY: length > 0 ? dy / length : 0,
    }
  })
}

/** Rounds a ring to the grid and drops walls of no length; the direction stays as given. */
export function roundRing(outline: readonly Point[], firstWall: number, grid: Grid): GridRing {
  const roundedX = outline.map(([x]) => Math.round(stepsX(grid, x)))
  const roundedY = outline.map(([, y]) => Math.round(stepsY(grid, y)))
  const xs: number[] = []
  const ys: number[] = []
  const walls: number[] = []
  for (let k = 0; k < outline.length; k++) {
    const after = (k + 1) % outline.length
    if (roundedX[k] === roundedX[after] && roundedY[k] === roundedY[after]) continue
    xs.push(roundedX[k]!)
    ys.push(roundedY[k]!)
    walls.push(firstWall + k)
  }
  return { xs, ys, walls }
}

/** Twice the area of the ring, counter-clockwise positive. */
export function ringDoubledArea({ xs, ys }: GridRing): number {
  let sum = 0
  for (let k = 1; k + 1 < xs.length; k++) {
    sum += (xs[k]! - xs[0]!) * (ys[k + 1]! - ys[0]!) - (ys[k]! - ys[0]!) * (xs[k + 1]! - xs[0]!)
  }
  return sum
}

/** The same ring running counter-clockwise, walls keeping their numbers. */
export function counterClockwise(ring: GridRing): GridRing {
  if (ringDoubledArea(ring) >= 0) return ring
  const walls = ring.walls.toReversed()
  // Reversed corners start with the last one: the edge that left it backwards is the one that ran into it.
  walls.push(walls.shift()!)
  return { xs: ring.xs.toReversed(), ys: ring.ys.toReversed(), walls }
}

/** Warnings about walls of no length or hardly any. */
export function warnOfShortWalls(outline: readonly Point[], ring: GridRing, firstWall: number): InsetWarning[] {
  const warnings: InsetWarning[] = []
  const kept = new Set(ring.walls)
  for (let k = 0; k < outline.length; k++) {
    const wall = firstWall + k
    const [x, y] = outline[k]!
    const [toX, toY] = outline[(k + 1) % outline.length]!
    const length = Math.hypot(toX - x, toY - y)
    if (!kept.has(wall)) {
      const code = length === 0 ? 'repeated-point' : 'merged-edge'
      const what = length === 0 ? 'has no length: its two corners are the same point' : 'is too short to draw'
      const message = `${wallName(wall)} ${what} (${placeName(x, y)}). It was left out; the other walls keep their numbers.`
      warnings.push({ code, message, walls: [wall] })
    } else if (length < TINY_MM) {
      const message = `${wallName(wall)} is only ${lengthName(length)} long (${placeName(x, y)}). Check its corners.`
      warnings.push({ code: 'tiny-edge', message, walls: [wall] })
    }
  }
  return warnings
}
