import type { Plane } from '#analysis/results.ts'
import type { Point } from '#geometry/polygon.ts'
import type { Millimetres } from '#units/quantity.ts'

/** A level that was measured at a place, all mm. */
export interface MeasuredLevel {
  readonly xMm: Millimetres
  readonly yMm: Millimetres
  readonly levelMm: Millimetres
}

/** A plane laid through measured levels, and the furthest one of them lies from it. */
export interface FittedPlane {
  readonly plane: Plane
  readonly worstMissMm: Millimetres
}

/** Places nearer to each other than this (mm, root mean square from their middle) are one place. @source our own choice */
const ONE_PLACE_MM = 1
/**
 * Places whose spread across their line is less than this share of the spread along it lie on one line: a tape's few
 * millimetres over so short a lever say nothing of the slope across. @source our own choice
 */
const ONE_LINE = 0.01
/** Smaller misses come from the machine's rounding. */
const ROUNDING_MM = 1e-6

export function levelPlane(levelMm: Millimetres): Plane {
  return { atOrigin: levelMm, perX: 0, perY: 0 }
}

/** Level of a plane at a place, mm. */
export function planeAt({ atOrigin, perX, perY }: Plane, [x, y]: Point): Millimetres {
  return atOrigin + perX * x + perY * y
}

/** The height of one plane over another, itself a plane. */
export function planeOver(upper: Plane, lower: Plane): Plane {
  return {
    atOrigin: upper.atOrigin - lower.atOrigin,
    perX: upper.perX - lower.perX,
    perY: upper.perY - lower.perY,
  }
}

/**
 * 1 / cos of the angle a plane makes with the level: what a thickness laid on it takes of height, over the thickness;
 * and its own area over its plan's.
 */
export function steepness({ perX, perY }: Plane): number {
  return Math.sqrt(1 + perX * perX + perY * perY)
}

/** The plane moved up (down below 0) by a thickness measured square to it. */
export function shifted(plane: Plane, thicknessMm: Millimetres): Plane {
  return { ...plane, atOrigin: plane.atOrigin + thicknessMm * steepness(plane) }
}

/**
 * The plane through measured levels, all mm: level through one; through two, level across the line between them; through
 * three; of more, the one with the least squared misses. Where all lie on one line it is level across that line, which
 * is the plane of the least slope that fits as well.
 */
export function planeThrough(levels: readonly MeasuredLevel[]): FittedPlane {
  const count = levels.length
  if (count === 0) return { plane: levelPlane(0), worstMissMm: 0 }
  const mean = (of: (level: MeasuredLevel) => number) => levels.reduce((sum, level) => sum + of(level), 0) / count
  const [x, y, z] = [mean((level) => level.xMm), mean((level) => level.yMm), mean((level) => level.levelMm)]
  const [perX, perY] = slope(levels.map((level) => [level.xMm - x, level.yMm - y, level.levelMm - z]))
  const plane = { atOrigin: z - perX * x - perY * y, perX, perY }
  const worst = Math.max(...levels.map((level) => Math.abs(planeAt(plane, [level.xMm, level.yMm]) - level.levelMm)))
  return { plane, worstMissMm: worst < ROUNDING_MM ? 0 : worst }
}

/** Slope along x and y of least squares through points about their middle, of the least size where several fit alike. */
function slope(points: readonly (readonly [number, number, number])[]): readonly [number, number] {
  const sum = (of: (point: readonly [number, number, number]) => number) =>
    points.reduce((total, point) => total + of(point), 0)
  const [xx, xy, yy] = [sum(([x]) => x * x), sum(([x, y]) => x * y), sum(([, y]) => y * y)]
  const [xz, yz] = [sum(([x, , z]) => x * z), sum(([, y, z]) => y * z)]
  const spread = Math.hypot(xx - yy, 2 * xy)
  const [along, across] = [(xx + yy + spread) / 2, (xx + yy - spread) / 2]
  if (along < points.length * ONE_PLACE_MM ** 2) return [0, 0]
  if (across > along * ONE_LINE ** 2) {
    const determinant = xx * yy - xy * xy
    return [(xz * yy - yz * xy) / determinant, (yz * xx - xz * xy) / determinant]
  }
  const line = xx >= yy ? ([along - yy, xy] as const) : ([xy, along - xx] as const)
  const length = Math.hypot(line[0], line[1])
  const [ux, uy] = [line[0] / length, line[1] / length]
  const fall = (ux * xz + uy * yz) / along
  return [fall * ux, fall * uy]
}
