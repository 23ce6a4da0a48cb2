import { type Cells, cellsAlong } from '#geometry/overlay/cells.ts'
import { meetsPixel } from '#geometry/overlay/exact.ts'
import { createPairTable, type PairTable, pairNumber } from '#geometry/overlay/pairTable.ts'
import type { Segments } from '#geometry/overlay/segments.ts'
import type { Vertices } from '#geometry/overlay/vertices.ts'

/**
 * The plan cut into edges between vertices. Edge e is the half-edge 2e from its first vertex to its second and the
 * half-edge 2e + 1 back. `chain` lists, segment by segment, the half-edges a segment became, in its direction.
 */
export interface Routes {
  readonly edges: PairTable
  readonly chainStart: Int32Array
  readonly chain: Int32Array
}

/** Above this many stops a general sort beats sorting by insertion. */
const FEW = 24

/** Leads every segment through each vertex whose square it meets; equal pieces become one edge. */
export function routeSegments(segments: Segments, cells: Cells, vertices: Vertices): Routes {
  const edges = createPairTable(vertices.places.count * 2)
  const chainStart = new Int32Array(segments.count + 1)
  const chain: number[] = []
  const stops: number[] = []
  for (let k = 0; k < segments.count; k++) {
    collectStops(segments, k, cells, vertices, stops)
    sortStops(segments, k, vertices.places, stops)
    for (let s = 1; s < stops.length; s++) {
      const from = stops[s - 1]!
      const to = stops[s]!
      chain.push(from < to ? pairNumber(edges, from, to) * 2 : pairNumber(edges, to, from) * 2 + 1)
    }
    chainStart[k + 1] = chain.length
  }
  return { edges, chainStart, chain: Int32Array.from(chain) }
}

function collectStops(segments: Segments, k: number, cells: Cells, vertices: Vertices, stops: number[]): void {
  const ax = segments.ax[k]!
  const ay = segments.ay[k]!
  const bx = segments.bx[k]!
  const by = segments.by[k]!
  const { places, firstIn, nextIn } = vertices
  stops.length = 0
  const count = cellsAlong(cells, ax, ay, bx, by)
  for (let c = 0; c < count; c++) {
    for (let v = firstIn[cells.found[c]!]!; v >= 0; v = nextIn[v]!) {
      if (meetsPixel(ax, ay, bx, by, places.first[v]!, places.second[v]!)) stops.push(v)
    }
  }
}

/** Orders stops along the segment: it never turns back in x or in y, so a sum of both is enough. */
function sortStops(segments: Segments, k: number, places: PairTable, stops: number[]): void {
  const signX = segments.bx[k]! < segments.ax[k]! ? -1 : 1
  const signY = segments.by[k]! < segments.ay[k]! ? -1 : 1
  const along = (v: number): number => signX * places.first[v]! + signY * places.second[v]!
  if (stops.length > FEW) {
    stops.sort((one, other) => along(one) - along(other))
    return
  }
  for (let s = 1; s < stops.length; s++) {
    const moving = stops[s]!
    const key = along(moving)
    let place = s
    while (place > 0 && along(stops[place - 1]!) > key) {
      stops[place] = stops[place - 1]!
      place--
    }
    stops[place] = moving
  }
}
