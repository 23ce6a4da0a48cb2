import type { Box, Place } from '#drawing/model.ts'
import type { Point } from '#geometry/polygon.ts'

/** Where the plan lies on the target. Plan y points up, target y down. */
export interface Frame {
  /** Target units per millimetre of room. */
  readonly scale: number
  /** Target place of the plan's origin. */
  readonly x: number
  readonly y: number
}

/** Extent of something in the plan, mm. */
export interface Bounds {
  readonly minX: number
  readonly minY: number
  readonly maxX: number
  readonly maxY: number
}

/** Extent of points; of nothing: a square metre about the origin. */
export function boundsOf(points: Iterable<Point>): Bounds {
  let minX = Number.POSITIVE_INFINITY
  let minY = Number.POSITIVE_INFINITY
  let maxX = Number.NEGATIVE_INFINITY
  let maxY = Number.NEGATIVE_INFINITY
  for (const [x, y] of points) {
    minX = Math.min(minX, x)
    minY = Math.min(minY, y)
    maxX = Math.max(maxX, x)
    maxY = Math.max(maxY, y)
  }
  return minX <= maxX ? { minX, minY, maxX, maxY } : { minX: -500, minY: -500, maxX: 500, maxY: 500 }
}

/** Largest frame that shows the bounds in the middle of a target, `margin` free all round. */
export function fitFrame(bounds: Bounds, width: number, height: number, margin: number): Frame {
  const across = Math.max(bounds.maxX - bounds.minX, 1)
  const up = Math.max(bounds.maxY - bounds.minY, 1)
  const scale = Math.max(Math.min((width - 2 * margin) / across, (height - 2 * margin) / up), 1e-6)
  return centreFrame(bounds, scale, { x: 0, y: 0, width, height })
}

/** Frame at a given scale with the bounds in the middle of a box. */
export function centreFrame(bounds: Bounds, scale: number, box: Box): Frame {
  return {
    scale,
    x: box.x + box.width / 2 - (scale * (bounds.minX + bounds.maxX)) / 2,
    y: box.y + box.height / 2 + (scale * (bounds.minY + bounds.maxY)) / 2,
  }
}

/** Plan place, mm, on the target. */
export function toTarget(frame: Frame, point: Point): Place {
  return [frame.x + frame.scale * point[0], frame.y - frame.scale * point[1]]
}

/** Target place in the plan, mm. */
export function toPlan(frame: Frame, place: Place): Point {
  return [(place[0] - frame.x) / frame.scale, (frame.y - place[1]) / frame.scale]
}
