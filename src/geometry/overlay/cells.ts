import type { Segments } from '#geometry/overlay/segments.ts'

/** Square buckets over the plan: what is near a segment is found in the buckets it passes. */
export interface Cells {
  readonly minX: number
  readonly minY: number
  readonly size: number
  readonly columns: number
  readonly rows: number
  /** The buckets found by the last call of `cellsAlong`. */
  readonly found: Int32Array
}

/** More buckets than this cost more to clear than they save. */
const MOST_CELLS = 1 << 16

/** Steps by which a segment is thickened, so that a place half a step aside shares a bucket with it. */
const THICKENING = 2

/** Lays about one bucket per segment over all of them. */
export function layCells(segments: Segments): Cells {
  let [minX, minY, maxX, maxY] = [Infinity, Infinity, -Infinity, -Infinity]
  for (let k = 0; k < segments.count; k++) {
    minX = Math.min(minX, segments.ax[k]!, segments.bx[k]!)
    minY = Math.min(minY, segments.ay[k]!, segments.by[k]!)
    maxX = Math.max(maxX, segments.ax[k]!, segments.bx[k]!)
    maxY = Math.max(maxY, segments.ay[k]!, segments.by[k]!)
  }
  if (segments.count === 0) [minX, minY, maxX, maxY] = [0, 0, 0, 0]
  const width = maxX - minX + 1
  const height = maxY - minY + 1
  const wanted = Math.min(MOST_CELLS, Math.max(1, segments.count))
  const size = Math.max(8, Math.sqrt((width * height) / wanted), Math.max(width, height) / wanted)
  const columns = Math.floor(width / size) + 1
  const rows = Math.floor(height / size) + 1
  return { minX, minY, size, columns, rows, found: new Int32Array(4 * (columns + rows) + 16) }
}

/** The bucket a place lies in. */
export function cellAt(cells: Cells, x: number, y: number): number {
  return row(cells, y) * cells.columns + column(cells, x)
}

/**
 * Finds the buckets a segment passes, thickened by a little: writes them to `cells.found`, each once, and gives
 * how many there are.
 */
export function cellsAlong(cells: Cells, ax: number, ay: number, bx: number, by: number): number {
  const low = Math.min(ay, by)
  const high = Math.max(ay, by)
  const left = Math.min(ax, bx)
  const right = Math.max(ax, bx)
  const firstRow = row(cells, low - THICKENING)
  const lastRow = row(cells, high + THICKENING)
  const slope = by === ay ? 0 : (bx - ax) / (by - ay)
  let count = 0
  for (let r = firstRow; r <= lastRow; r++) {
    let [from, to] = [left, right]
    if (firstRow !== lastRow && low !== high) {
      const bandLow = Math.max(low, cells.minY + r * cells.size - THICKENING)
      const bandHigh = Math.min(high, cells.minY + (r + 1) * cells.size + THICKENING)
      const xLow = ax + (bandLow - ay) * slope
      const xHigh = ax + (bandHigh - ay) * slope
      from = Math.min(xLow, xHigh)
      to = Math.max(xLow, xHigh)
    }
    const lastColumn = column(cells, to + THICKENING)
    for (let c = column(cells, from - THICKENING); c <= lastColumn; c++) cells.found[count++] = r * cells.columns + c
  }
  return count
}

function row(cells: Cells, y: number): number {
  return Math.min(cells.rows - 1, Math.max(0, Math.floor((y - cells.minY) / cells.size)))
}

function column(cells: Cells, x: number): number {
  return Math.min(cells.columns - 1, Math.max(0, Math.floor((x - cells.minX) / cells.size)))
}
