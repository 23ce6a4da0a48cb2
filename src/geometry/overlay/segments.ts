/** Straight pieces on the grid, whole steps, in the order they were added. Their numbers are how callers know them. */
export interface Segments {
  count: number
  readonly ax: number[]
  readonly ay: number[]
  readonly bx: number[]
  readonly by: number[]
}

export function createSegments(): Segments {
  return { count: 0, ax: [], ay: [], bx: [], by: [] }
}

/** Adds a piece and gives its number. */
export function addSegment(segments: Segments, ax: number, ay: number, bx: number, by: number): number {
  segments.ax.push(ax)
  segments.ay.push(ay)
  segments.bx.push(bx)
  segments.by.push(by)
  return segments.count++
}
