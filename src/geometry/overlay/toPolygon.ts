import { type Grid, toMm2, toPoint } from '#geometry/grid.ts'
import type { GridShape } from '#geometry/overlay/readBack.ts'
import type { Point, Polygon } from '#geometry/polygon.ts'

/** A shape on the grid as a polygon in mm, area in mm2. */
export function toPolygon(shape: GridShape, grid: Grid): Polygon {
  return {
    outline: toPoints(shape.outline, grid),
    holes: shape.holes.map((hole) => toPoints(hole, grid)),
    areaMm2: toMm2(grid, shape.doubledArea),
  }
}

function toPoints(ring: readonly number[], grid: Grid): Point[] {
  const points: Point[] = []
  for (let k = 0; k < ring.length; k += 2) points.push(toPoint(grid, ring[k]!, ring[k + 1]!))
  return points
}
