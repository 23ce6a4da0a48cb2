import { NOBODY } from '#geometry/inset/ownership.ts'
import type { Arrangement } from '#geometry/overlay/arrange.ts'
import { startOf } from '#geometry/overlay/faces.ts'

/** A clear part narrower than this on average (steps) is what rounding left between two strips, not floor. */
const CRUMB_WIDTH = 4

/** A clear part: its faces, twice its area, and the length of its boundary with walls and with each strip. */
interface Part {
  readonly faces: number[]
  doubledArea: number
  boundary: number
  readonly beside: Map<number, number>
}

/**
 * Gives clear parts without width to the strip beside them, so that linings whose faces meet leave nothing. Changes
 * `owner`. Nothing else is taken: a narrow place of a wider part stays, and so does a part that touches no strip.
 */
export function giveCrumbs(arrangement: Arrangement, onFloor: Int32Array, owner: Int32Array): void {
  const seen = new Uint8Array(owner.length)
  const isClear = (face: number): boolean => onFloor[face]! > 0 && owner[face] === NOBODY
  const parts: Part[] = []
  for (let face = 0; face < owner.length; face++) {
    if (!seen[face] && isClear(face)) parts.push(collectPart(arrangement, face, isClear, seen, owner))
  }
  for (const { faces, doubledArea, boundary, beside } of parts) {
    if (doubledArea >= CRUMB_WIDTH * boundary) continue
    const [nearest] = [...beside].sort((one, other) => other[1] - one[1])
    if (nearest) for (const face of faces) owner[face] = nearest[0]
  }
}

function collectPart(
  { places, edges, faces, faceStart, faceHalves }: Arrangement,
  first: number,
  isClear: (face: number) => boolean,
  seen: Uint8Array,
  owner: Int32Array,
): Part {
  const part: Part = { faces: [first], doubledArea: 0, boundary: 0, beside: new Map() }
  seen[first] = 1
  for (let q = 0; q < part.faces.length; q++) {
    const face = part.faces[q]!
    for (let k = faceStart[face]!; k < faceStart[face + 1]!; k++) {
      const half = faceHalves[k]!
      const other = faces.of[half ^ 1]!
      if (isClear(other)) {
        if (!seen[other]) part.faces.push(other)
        seen[other] = 1
        continue
      }
      const [a, b] = [startOf(edges, half), startOf(edges, half ^ 1)]
      const [ax, ay, bx, by] = [places.first[a]!, places.second[a]!, places.first[b]!, places.second[b]!]
      const length = Math.hypot(bx - ax, by - ay)
      part.doubledArea += ax * by - ay * bx
      part.boundary += length
      const strip = owner[other]!
      if (strip !== NOBODY) part.beside.set(strip, (part.beside.get(strip) ?? 0) + length)
    }
  }
  return part
}
