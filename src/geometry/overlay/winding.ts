import type { Arrangement } from '#geometry/overlay/arrange.ts'
import { OUTSIDE } from '#geometry/overlay/faces.ts'

/** For each edge the summed weight of the segments running along it, counted in the direction of its half-edge 2e. */
export function edgeWeights(arrangement: Arrangement, weights: ArrayLike<number>): Int32Array {
  const { edges, chainStart, chain } = arrangement
  const net = new Int32Array(edges.count)
  for (let k = 0; k < weights.length; k++) {
    const weight = weights[k]!
    if (weight === 0) continue
    for (let c = chainStart[k]!; c < chainStart[k + 1]!; c++) {
      const half = chain[c]!
      net[half >> 1]! += half & 1 ? -weight : weight
    }
  }
  return net
}

/**
 * How often the weighted rings run round each face, counter-clockwise counting up; outside is 0.
 * @returns null when two ways to a face give different numbers
 */
export function windingNumbers(arrangement: Arrangement, net: Int32Array): Int32Array | null {
  const { faces, faceStart, faceHalves } = arrangement
  const winding = new Int32Array(faces.count)
  const seen = new Uint8Array(faces.count)
  const queue = [OUTSIDE]
  seen[OUTSIDE] = 1
  for (let q = 0; q < queue.length; q++) {
    const face = queue[q]!
    for (let k = faceStart[face]!; k < faceStart[face + 1]!; k++) {
      const half = faceHalves[k]!
      const other = faces.of[half ^ 1]!
      const across = winding[face]! - (half & 1 ? -net[half >> 1]! : net[half >> 1]!)
      if (!seen[other]) {
        seen[other] = 1
        winding[other] = across
        queue.push(other)
      } else if (winding[other] !== across) return null
    }
  }
  return winding
}
