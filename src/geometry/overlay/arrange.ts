import { layCells } from '#geometry/overlay/cells.ts'
import { type Faces, traceFaces } from '#geometry/overlay/faces.ts'
import type { PairTable } from '#geometry/overlay/pairTable.ts'
import { routeSegments } from '#geometry/overlay/route.ts'
import type { Segments } from '#geometry/overlay/segments.ts'
import { findVertices } from '#geometry/overlay/vertices.ts'

/** A drawing of straight pieces, cut where they meet, and the faces between them. */
export interface Arrangement {
  readonly places: PairTable
  readonly edges: PairTable
  /** Segment k became the half-edges chain[chainStart[k]] .. chain[chainStart[k + 1] - 1]. */
  readonly chainStart: Int32Array
  readonly chain: Int32Array
  readonly faces: Faces
  /** Half-edges sorted by the face on their left: face f owns faceHalves[faceStart[f]] .. faceHalves[faceStart[f + 1] - 1]. */
  readonly faceStart: Int32Array
  readonly faceHalves: Int32Array
}

/**
 * Cuts segments at their crossings by snap rounding on the grid and finds the faces.
 * @returns null when the result contradicts itself (see traceFaces)
 * @source Hobby 1999, "Practical segment intersection with finite precision output", memory
 */
export function arrange(segments: Segments): Arrangement | null {
  const cells = layCells(segments)
  const vertices = findVertices(segments, cells)
  const { edges, chainStart, chain } = routeSegments(segments, cells, vertices)
  const faces = traceFaces(vertices.places, edges)
  if (!faces) return null
  const faceStart = new Int32Array(faces.count + 1)
  for (const face of faces.of) faceStart[face + 1]!++
  for (let f = 0; f < faces.count; f++) faceStart[f + 1]! += faceStart[f]!
  const filled = faceStart.slice()
  const faceHalves = new Int32Array(faces.of.length)
  for (let h = 0; h < faceHalves.length; h++) faceHalves[filled[faces.of[h]!]!++] = h
  return { places: vertices.places, edges, chainStart, chain, faces, faceStart, faceHalves }
}
