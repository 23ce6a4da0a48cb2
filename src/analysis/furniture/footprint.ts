import type { Clearance } from '#analysis/room.ts'
import type { Point } from '#geometry/polygon.ts'
import type { Millimetres } from '#units/quantity.ts'

/** Anything whose place in the plan is a turned rectangle. */
export interface Rectangular {
  readonly xMm: Millimetres
  readonly yMm: Millimetres
  readonly widthMm: Millimetres
  readonly depthMm: Millimetres
  readonly angleDeg: number
}

const NO_CLEARANCE: Clearance = { frontMm: 0, backMm: 0, leftMm: 0, rightMm: 0 }

/**
 * Corners of a piece with free space round it, counter-clockwise, mm. Unturned its width lies along x and its front
 * looks down the page; left and right are those of the plan then.
 */
export function footprintOf(piece: Rectangular, around: Clearance = NO_CLEARANCE): Point[] {
  const angle = (piece.angleDeg * Math.PI) / 180
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)]
  const [left, right] = [-piece.widthMm / 2 - around.leftMm, piece.widthMm / 2 + around.rightMm]
  const [front, back] = [-piece.depthMm / 2 - around.frontMm, piece.depthMm / 2 + around.backMm]
  const corners: Point[] = [
    [left, front],
    [right, front],
    [right, back],
    [left, back],
  ]
  return corners.map(([x, y]) => [piece.xMm + x * cos - y * sin, piece.yMm + x * sin + y * cos])
}
