import { type Cells, cellAt, cellsAlong } from '#geometry/overlay/cells.ts'
import { roundedAlong, turn } from '#geometry/overlay/exact.ts'
import { createPairTable, type PairTable, pairNumber } from '#geometry/overlay/pairTable.ts'
import type { Segments } from '#geometry/overlay/segments.ts'

/** All places where the plan may bend: segment ends and crossings rounded to the grid, listed by bucket too. */
export interface Vertices {
  readonly places: PairTable
  /** First vertex of each bucket, -1 for none. */
  readonly firstIn: Int32Array
  /** Next vertex of the same bucket, -1 for none. */
  readonly nextIn: Int32Array
}

export function findVertices(segments: Segments, cells: Cells): Vertices {
  const places = createPairTable(segments.count * 3)
  for (let k = 0; k < segments.count; k++) {
    pairNumber(places, segments.ax[k]!, segments.ay[k]!)
    pairNumber(places, segments.bx[k]!, segments.by[k]!)
  }
  someNearPair(segments, cells, (j, k) => {
    addCrossing(places, segments, j, k)
    return false
  })
  const firstIn = new Int32Array(cells.columns * cells.rows).fill(-1)
  const nextIn = new Int32Array(places.count)
  for (let v = 0; v < places.count; v++) {
    const cell = cellAt(cells, places.first[v]!, places.second[v]!)
    nextIn[v] = firstIn[cell]!
    firstIn[cell] = v
  }
  return { places, firstIn, nextIn }
}

/** Whether the test holds for some pair of segments near each other; a pair may be asked more than once. */
export function someNearPair(segments: Segments, cells: Cells, test: (j: number, k: number) => boolean): boolean {
  const { ax, ay, bx, by } = segments
  const head = new Int32Array(cells.columns * cells.rows).fill(-1)
  const next: number[] = []
  const held: number[] = []
  for (let k = 0; k < segments.count; k++) {
    const count = cellsAlong(cells, ax[k]!, ay[k]!, bx[k]!, by[k]!)
    for (let c = 0; c < count; c++) {
      const cell = cells.found[c]!
      for (let entry = head[cell]!; entry >= 0; entry = next[entry]!) {
        const j = held[entry]!
        if (boxesMeet(segments, j, k) && test(j, k)) return true
      }
      next.push(head[cell]!)
      head[cell] = held.length
      held.push(k)
    }
  }
  return false
}

function boxesMeet({ ax, ay, bx, by }: Segments, j: number, k: number): boolean {
  return rangesMeet(ax[j]!, bx[j]!, ax[k]!, bx[k]!) && rangesMeet(ay[j]!, by[j]!, ay[k]!, by[k]!)
}

/** Whether the range between a and b and the range between c and d share a value. */
function rangesMeet(a: number, b: number, c: number, d: number): boolean {
  return Math.min(a, b) <= Math.max(c, d) && Math.min(c, d) <= Math.max(a, b)
}

/** Adds the crossing of two segments when each passes from one side of the other to the other side. */
function addCrossing(places: PairTable, segments: Segments, j: number, k: number): void {
  const { ax, ay, bx, by } = segments
  const startSide = turn(ax[j]!, ay[j]!, bx[j]!, by[j]!, ax[k]!, ay[k]!)
  const endSide = turn(ax[j]!, ay[j]!, bx[j]!, by[j]!, bx[k]!, by[k]!)
  if (!opposite(startSide, endSide)) return
  const otherStart = turn(ax[k]!, ay[k]!, bx[k]!, by[k]!, ax[j]!, ay[j]!)
  const otherEnd = turn(ax[k]!, ay[k]!, bx[k]!, by[k]!, bx[j]!, by[j]!)
  if (!opposite(otherStart, otherEnd)) return
  const whole = startSide - endSide
  pairNumber(
    places,
    roundedAlong(ax[k]!, bx[k]! - ax[k]!, startSide, whole),
    roundedAlong(ay[k]!, by[k]! - ay[k]!, startSide, whole),
  )
}

function opposite(one: number, other: number): boolean {
  return (one > 0 && other < 0) || (one < 0 && other > 0)
}
