import type { PlanPoint } from '#analysis/room.ts'
import type { Millimetres } from '#units/quantity.ts'

/** A shape whose sides lie along the page: its lower left corner and its size. */
export interface Rectangle {
  readonly xMm: Millimetres
  readonly yMm: Millimetres
  readonly widthMm: Millimetres
  readonly depthMm: Millimetres
}

/** Corners this near to a line lie on it, mm. */
const ON_LINE_MM = 0.01

/** The rectangle four corners make along the page; null: they make another shape, which only its corners describe. */
export function rectangleOf(corners: readonly PlanPoint[]): Rectangle | null {
  if (corners.length !== 4) return null
  const xMm = Math.min(...corners.map((corner) => corner.xMm))
  const yMm = Math.min(...corners.map((corner) => corner.yMm))
  const widthMm = Math.max(...corners.map((corner) => corner.xMm)) - xMm
  const depthMm = Math.max(...corners.map((corner) => corner.yMm)) - yMm
  const places = corners.map((corner) => {
    const right = sideOf(corner.xMm, xMm, widthMm)
    const upper = sideOf(corner.yMm, yMm, depthMm)
    return right === null || upper === null ? null : `${right} ${upper}`
  })
  const isRound = new Set(places).size === 4 && !places.includes(null)
  // Four different corners in an order that crosses itself make no rectangle.
  const goesRound = corners.every((corner, index) => {
    const next = corners[(index + 1) % 4]
    return next !== undefined && (isNear(corner.xMm, next.xMm) || isNear(corner.yMm, next.yMm))
  })
  return isRound && goesRound ? { xMm, yMm, widthMm, depthMm } : null
}

/** The same four corners in the same order, on another rectangle. */
export function onRectangle(corners: readonly PlanPoint[], to: Rectangle): readonly PlanPoint[] {
  const from = rectangleOf(corners)
  if (from === null) return corners
  return corners.map((corner) => ({
    xMm: isNear(corner.xMm, from.xMm) ? to.xMm : to.xMm + to.widthMm,
    yMm: isNear(corner.yMm, from.yMm) ? to.yMm : to.yMm + to.depthMm,
  }))
}

/** Four corners round a middle, counter-clockwise from the lower left. */
export function squareAround(middle: readonly [x: number, y: number], sideMm: Millimetres): readonly PlanPoint[] {
  const [left, lower] = [middle[0] - sideMm / 2, middle[1] - sideMm / 2]
  return [
    { xMm: left, yMm: lower },
    { xMm: left + sideMm, yMm: lower },
    { xMm: left + sideMm, yMm: lower + sideMm },
    { xMm: left, yMm: lower + sideMm },
  ]
}

function sideOf(at: Millimetres, low: Millimetres, size: Millimetres): 'low' | 'high' | null {
  if (isNear(at, low)) return 'low'
  return isNear(at, low + size) ? 'high' : null
}

function isNear(a: Millimetres, b: Millimetres): boolean {
  return Math.abs(a - b) < ON_LINE_MM
}
