import type { WallStrip } from '#geometry/inset/strips.ts'
import type { Arrangement } from '#geometry/overlay/arrange.ts'
import { startOf } from '#geometry/overlay/faces.ts'

/** Owner of faces no lining fills. */
export const NOBODY = -1

/** Relative depths closer than this are the same; the lower wall then keeps the face. */
const SAME_DEPTH = 1e-9

/** The state of the search: who owns each face so far, how deep it lies in its owner, and the last strip to reach it. */
interface Search {
  readonly arrangement: Arrangement
  readonly isWall: Uint8Array
  readonly middles: { readonly x: Float64Array; readonly y: Float64Array }
  readonly owner: Int32Array
  readonly depthThere: Float64Array
  readonly reached: Int32Array
  /** For each edge the net count of the strip's sides along it; not 0 where its inside meets its outside. */
  readonly sideNet: Int32Array
  readonly queue: number[]
}

/**
 * For each face the strip that fills it, as a place in the list, or NOBODY; `isWall` marks the edges that are walls.
 * A strip fills what it reaches from its wall without crossing another wall; where several reach a face, the one in
 * which it lies less deep, measured by the lining's depth, has it. Relative depth is linear and the cut lines bound the
 * faces, so the middle of a face decides for all of it.
 */
export function ownFaces(arrangement: Arrangement, isWall: Uint8Array, strips: readonly WallStrip[]): Int32Array {
  const { count } = arrangement.faces
  const search: Search = {
    arrangement,
    isWall,
    middles: faceMiddles(arrangement),
    owner: new Int32Array(count).fill(NOBODY),
    depthThere: new Float64Array(count),
    reached: new Int32Array(count).fill(NOBODY),
    sideNet: new Int32Array(arrangement.edges.count),
    queue: [],
  }
  strips.forEach((strip, s) => {
    countSides(search, strip, 1)
    startAtWall(search, strip, s)
    spread(search, strip, s)
    countSides(search, strip, -1)
  })
  return search.owner
}

/** Counts the strip's sides in, or with a step of -1 out again. */
function countSides({ arrangement, sideNet }: Search, strip: WallStrip, step: number): void {
  const { chainStart, chain } = arrangement
  const count = (segment: number): void => {
    for (let c = chainStart[segment]!; c < chainStart[segment + 1]!; c++) {
      const half = chain[c]!
      sideNet[half >> 1]! += half & 1 ? -step : step
    }
  }
  count(strip.edge)
  for (let k = 1; k < strip.xs.length; k++) count(strip.firstSide + k - 1)
}

/** Reaches the faces that lie on the wall, inside the strip. */
function startAtWall(search: Search, strip: WallStrip, s: number): void {
  const { chainStart, chain, faces } = search.arrangement
  for (let c = chainStart[strip.edge]!; c < chainStart[strip.edge + 1]!; c++) {
    const half = chain[c]!
    const inward = half & 1 ? -search.sideNet[half >> 1]! : search.sideNet[half >> 1]!
    if (inward > 0) reach(search, faces.of[half]!, strip, s)
  }
}

/** Reaches on from face to face, over no wall and not out of the strip. */
function spread(search: Search, strip: WallStrip, s: number): void {
  const { faces, faceStart, faceHalves } = search.arrangement
  for (let face = search.queue.pop(); face !== undefined; face = search.queue.pop()) {
    for (let k = faceStart[face]!; k < faceStart[face + 1]!; k++) {
      const half = faceHalves[k]!
      const edge = half >> 1
      if (search.isWall[edge] === 0 && search.sideNet[edge] === 0) reach(search, faces.of[half ^ 1]!, strip, s)
    }
  }
}

/** Notes that a strip reaches a face, which is its own if it lies less deep in it than in the owner so far. */
function reach(search: Search, face: number, { depthX, depthY, depthAt0 }: WallStrip, s: number): void {
  if (search.reached[face] === s) return
  search.reached[face] = s
  search.queue.push(face)
  const depth = depthX * search.middles.x[face]! + depthY * search.middles.y[face]! + depthAt0
  if (search.owner[face] !== NOBODY && depth >= search.depthThere[face]! - SAME_DEPTH) return
  search.owner[face] = s
  search.depthThere[face] = depth
}

/** Centroid of every face but the outside, holes taken out. */
function faceMiddles({ places, edges, faces, faceStart, faceHalves }: Arrangement): {
  x: Float64Array
  y: Float64Array
} {
  const x = new Float64Array(faces.count)
  const y = new Float64Array(faces.count)
  for (let face = 1; face < faces.count; face++) {
    const anchor = startOf(edges, faceHalves[faceStart[face]!]!)
    const x0 = places.first[anchor]!
    const y0 = places.second[anchor]!
    let area = 0
    let sumX = 0
    let sumY = 0
    for (let k = faceStart[face]!; k < faceStart[face + 1]!; k++) {
      const half = faceHalves[k]!
      const a = startOf(edges, half)
      const b = startOf(edges, half ^ 1)
      const ax = places.first[a]! - x0
      const ay = places.second[a]! - y0
      const bx = places.first[b]! - x0
      const by = places.second[b]! - y0
      const part = ax * by - ay * bx
      area += part
      sumX += part * (ax + bx)
      sumY += part * (ay + by)
    }
    x[face] = x0 + sumX / (3 * area)
    y[face] = y0 + sumY / (3 * area)
  }
  return { x, y }
}
