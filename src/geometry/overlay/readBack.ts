import type { Arrangement } from '#geometry/overlay/arrange.ts'
import { startOf } from '#geometry/overlay/faces.ts'

/** Label of faces that belong to no shape. */
export const UNLABELLED = -1

/** A closed walk with faces of one label on its left, as half-edges in order. It may touch itself in a vertex. */
export interface BoundaryRing {
  readonly label: number
  readonly halves: readonly number[]
}

/** A connected shape of one label on the grid: x, y alternating; outline counter-clockwise, holes clockwise. */
export interface GridShape {
  readonly label: number
  readonly outline: readonly number[]
  readonly holes: readonly (readonly number[])[]
  readonly doubledArea: number
}

/** The boundary walks of every label. */
export function traceBoundaries(arrangement: Arrangement, labels: Int32Array): BoundaryRing[] {
  const { of, next } = arrangement.faces
  const rings: BoundaryRing[] = []
  const done = new Uint8Array(of.length)
  const isBoundary = (h: number): boolean => labels[of[h]!] !== labels[of[h ^ 1]!]
  for (let first = 0; first < of.length; first++) {
    const label = labels[of[first]!]!
    if (label === UNLABELLED || done[first] || !isBoundary(first)) continue
    const halves: number[] = []
    let h = first
    do {
      done[h] = 1
      halves.push(h)
      h = next[h]!
      while (!isBoundary(h)) h = next[h ^ 1]!
    } while (h !== first)
    rings.push({ label, halves })
  }
  return rings
}

/** The shapes enclosed by boundary walks; walks that touch themselves are parted into outline and holes. */
export function readShapes(arrangement: Arrangement, labels: Int32Array, rings: readonly BoundaryRing[]): GridShape[] {
  const component = labelComponents(arrangement, labels)
  const placeOf = new Int32Array(arrangement.places.count).fill(-1)
  const shapes = new Map<number, { label: number; outline: number[]; holes: number[][]; doubledArea: number }>()
  for (const ring of rings) {
    const key = component[arrangement.faces.of[ring.halves[0]!]!]!
    let shape = shapes.get(key)
    if (!shape) {
      shape = { label: ring.label, outline: [], holes: [], doubledArea: 0 }
      shapes.set(key, shape)
    }
    for (const loop of simpleLoops(arrangement, ring.halves, placeOf)) {
      const area = doubledArea(loop)
      shape.doubledArea += area
      if (area > 0) shape.outline = withoutStraightCorners(loop)
      else shape.holes.push(withoutStraightCorners(loop))
    }
  }
  return [...shapes.values()]
}

/** For each face a number shared by the faces of its label it is joined to across edges. */
function labelComponents(arrangement: Arrangement, labels: Int32Array): Int32Array {
  const { faces, faceStart, faceHalves } = arrangement
  const component = new Int32Array(faces.count).fill(-1)
  const stack: number[] = []
  for (let first = 0; first < faces.count; first++) {
    if (labels[first] === UNLABELLED || component[first]! >= 0) continue
    component[first] = first
    stack.push(first)
    for (let face = stack.pop(); face !== undefined; face = stack.pop()) {
      for (let k = faceStart[face]!; k < faceStart[face + 1]!; k++) {
        const other = faces.of[faceHalves[k]! ^ 1]!
        if (component[other]! >= 0 || labels[other] !== labels[first]) continue
        component[other] = first
        stack.push(other)
      }
    }
  }
  return component
}

/** Parts a walk at vertices it visits twice; each loop as x, y alternating. `placeOf` is -1 everywhere, and is left so. */
function simpleLoops(arrangement: Arrangement, halves: readonly number[], placeOf: Int32Array): number[][] {
  const { places, edges } = arrangement
  const loops: number[][] = []
  const path: number[] = []
  const close = (from: number): void => {
    const loop = path.splice(from)
    for (const v of loop) placeOf[v] = -1
    loops.push(coordinates(places.first, places.second, loop))
  }
  for (const half of halves) {
    const vertex = startOf(edges, half)
    if (placeOf[vertex]! >= 0) close(placeOf[vertex]!)
    placeOf[vertex] = path.length
    path.push(vertex)
  }
  close(0)
  return loops
}

function coordinates(xs: Int32Array, ys: Int32Array, vertices: readonly number[]): number[] {
  const flat: number[] = []
  for (const v of vertices) flat.push(xs[v]!, ys[v]!)
  return flat
}

/** Twice the area of a ring given as x, y alternating, counter-clockwise positive. */
export function doubledArea(ring: readonly number[]): number {
  const x0 = ring[0]!
  const y0 = ring[1]!
  let sum = 0
  for (let k = 2; k + 3 < ring.length; k += 2) {
    sum += (ring[k]! - x0) * (ring[k + 3]! - y0) - (ring[k + 1]! - y0) * (ring[k + 2]! - x0)
  }
  return sum
}

/** Drops corners that lie exactly on the line between their neighbours. */
function withoutStraightCorners(ring: readonly number[]): number[] {
  const n = ring.length
  const kept: number[] = []
  for (let k = 0; k < n; k += 2) {
    const before = (k + n - 2) % n
    const after = (k + 2) % n
    const x = ring[k]!
    const y = ring[k + 1]!
    const turn =
      (x - ring[before]!) * (ring[after + 1]! - ring[before + 1]!) -
      (y - ring[before + 1]!) * (ring[after]! - ring[before]!)
    if (turn !== 0) kept.push(x, y)
  }
  return kept
}
