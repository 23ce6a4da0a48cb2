import type { Point } from '#geometry/polygon.ts'

/**
 * Steps per millimetre of the plan's grid. 0.1 mm is 32 steps and 1/64 in is 127 steps, so metric and inch
 * sizes both fall on it exactly.
 */
export const STEPS_PER_MM = 320

/** A grid of whole steps round a local origin (mm, a whole number, so that whole millimetres stay exact). */
export interface Grid {
  readonly stepsPerMm: number
  readonly originXMm: number
  readonly originYMm: number
}

/** The grid whose origin lies in the middle of the given points: small numbers, exact products. */
export function gridAround(points: Iterable<Point>, stepsPerMm: number): Grid {
  let [minX, minY, maxX, maxY] = [Infinity, Infinity, -Infinity, -Infinity]
  for (const [x, y] of points) {
    minX = Math.min(minX, x)
    minY = Math.min(minY, y)
    maxX = Math.max(maxX, x)
    maxY = Math.max(maxY, y)
  }
  if (!(minX <= maxX)) return { stepsPerMm, originXMm: 0, originYMm: 0 }
  return { stepsPerMm, originXMm: Math.round((minX + maxX) / 2), originYMm: Math.round((minY + maxY) / 2) }
}

/** Steps from the grid's origin, not yet rounded. */
export function stepsX(grid: Grid, xMm: number): number {
  return (xMm - grid.originXMm) * grid.stepsPerMm
}

/** Steps from the grid's origin, not yet rounded. */
export function stepsY(grid: Grid, yMm: number): number {
  return (yMm - grid.originYMm) * grid.stepsPerMm
}

/** A grid place as mm. */
export function toPoint(grid: Grid, x: number, y: number): Point {
  return [x / grid.stepsPerMm + grid.originXMm, y / grid.stepsPerMm + grid.originYMm]
}

/** Twice an area in square steps (a whole number) as mm2. */
export function toMm2(grid: Grid, doubledArea: number): number {
  return doubledArea / (2 * grid.stepsPerMm * grid.stepsPerMm)
}
