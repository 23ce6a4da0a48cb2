import type { PairTable } from '#geometry/overlay/pairTable.ts'

/** Face number of everything outside. */
export const OUTSIDE = 0

/** The floor pieces between the edges. */
export interface Faces {
  readonly count: number
  /** Face on the left of each half-edge. */
  readonly of: Int32Array
  /** The half-edge after each one round the face on its left. */
  readonly next: Int32Array
}

/** Cycles of half-edges with the face on their left. */
interface Cycles {
  readonly of: Int32Array
  readonly firstHalf: number[]
  readonly doubledArea: number[]
}

/**
 * Traces the faces of a drawing without crossings. Gives null when the edges contradict each other, which means that
 * two of them cross somewhere between vertices: each connected part must obey Euler's formula and have just one
 * outer side.
 */
export function traceFaces(places: PairTable, edges: PairTable): Faces | null {
  const next = linkHalfEdges(places, edges)
  const cycles = traceCycles(places, edges, next)
  const parts = connectedParts(places.count, edges)
  const partCount = countParts(parts, edges, places.count)
  if (cycles.firstHalf.length !== edges.count - partCount.vertices + 2 * partCount.parts) return null
  const outerSides = cycles.doubledArea.filter((area) => area <= 0).length
  if (outerSides !== partCount.parts) return null
  return nestParts(places, edges, next, cycles, parts)
}

/** Vertex a half-edge starts from. */
export function startOf(edges: PairTable, half: number): number {
  return half & 1 ? edges.second[half >> 1]! : edges.first[half >> 1]!
}

/** Joins each half-edge to the one that follows it round the face on its left. */
function linkHalfEdges(places: PairTable, edges: PairTable): Int32Array {
  const halves = edges.count * 2
  const start = new Int32Array(places.count + 1)
  for (let h = 0; h < halves; h++) start[startOf(edges, h) + 1]!++
  for (let v = 0; v < places.count; v++) start[v + 1]! += start[v]!
  const filled = start.slice()
  const leaving = new Int32Array(halves)
  for (let h = 0; h < halves; h++) {
    const v = startOf(edges, h)
    const low = start[v]!
    let place = filled[v]!++
    while (place > low && before(places, edges, h, leaving[place - 1]!)) {
      leaving[place] = leaving[place - 1]!
      place--
    }
    leaving[place] = h
  }
  const next = new Int32Array(halves)
  for (let v = 0; v < places.count; v++) {
    const low = start[v]!
    const high = start[v + 1]!
    for (let k = low; k < high; k++) next[leaving[k]! ^ 1] = leaving[k === low ? high - 1 : k - 1]!
  }
  return next
}

/** Whether half-edge g leaves the common vertex at a smaller angle than h, angles counted from east. */
function before(places: PairTable, edges: PairTable, g: number, h: number): boolean {
  const v = startOf(edges, g)
  const toG = startOf(edges, g ^ 1)
  const toH = startOf(edges, h ^ 1)
  const gx = places.first[toG]! - places.first[v]!
  const gy = places.second[toG]! - places.second[v]!
  const hx = places.first[toH]! - places.first[v]!
  const hy = places.second[toH]! - places.second[v]!
  const gLower = gy < 0 || (gy === 0 && gx < 0)
  const hLower = hy < 0 || (hy === 0 && hx < 0)
  if (gLower !== hLower) return hLower
  return gx * hy - gy * hx > 0
}

function traceCycles(places: PairTable, edges: PairTable, next: Int32Array): Cycles {
  const of = new Int32Array(next.length).fill(-1)
  const firstHalf: number[] = []
  const doubledArea: number[] = []
  for (let first = 0; first < next.length; first++) {
    if (of[first]! >= 0) continue
    const cycle = firstHalf.length
    const anchor = startOf(edges, first)
    const x0 = places.first[anchor]!
    const y0 = places.second[anchor]!
    let area = 0
    let h = first
    do {
      of[h] = cycle
      const a = startOf(edges, h)
      const b = startOf(edges, h ^ 1)
      area += (places.first[a]! - x0) * (places.second[b]! - y0) - (places.second[a]! - y0) * (places.first[b]! - x0)
      h = next[h]!
    } while (h !== first)
    firstHalf.push(first)
    doubledArea.push(area)
  }
  return { of, firstHalf, doubledArea }
}

/** For each vertex a vertex that stands for its connected part. */
function connectedParts(vertexCount: number, edges: PairTable): Int32Array {
  const parent = new Int32Array(vertexCount)
  for (let v = 0; v < vertexCount; v++) parent[v] = v
  const root = (v: number): number => {
    let at = v
    while (parent[at] !== at) {
      parent[at] = parent[parent[at]!]!
      at = parent[at]!
    }
    return at
  }
  for (let e = 0; e < edges.count; e++) parent[root(edges.first[e]!)] = root(edges.second[e]!)
  for (let v = 0; v < vertexCount; v++) parent[v] = root(v)
  return parent
}

/** Vertices that carry edges, and the parts they form. */
function countParts(parts: Int32Array, edges: PairTable, vertexCount: number): { vertices: number; parts: number } {
  const used = new Uint8Array(vertexCount)
  for (let e = 0; e < edges.count; e++) {
    used[edges.first[e]!] = 1
    used[edges.second[e]!] = 1
  }
  let vertices = 0
  let roots = 0
  for (let v = 0; v < vertexCount; v++) {
    if (!used[v]) continue
    vertices++
    if (parts[v] === v) roots++
  }
  return { vertices, parts: roots }
}

/** Numbers the faces; the outer side of each part joins the face the part lies in. */
function nestParts(places: PairTable, edges: PairTable, next: Int32Array, cycles: Cycles, parts: Int32Array): Faces {
  const faceOfCycle = new Int32Array(cycles.firstHalf.length)
  let count = 1
  const outer: { cycle: number; part: number; west: number }[] = []
  cycles.doubledArea.forEach((area, cycle) => {
    if (area > 0) faceOfCycle[cycle] = count++
    else {
      const west = westmost(places, edges, next, cycles.firstHalf[cycle]!)
      outer.push({ cycle, part: parts[west]!, west })
    }
  })
  if (outer.length > 1) {
    outer.sort((one, other) => places.first[one.west]! - places.first[other.west]!)
    for (const { cycle, part, west } of outer) {
      const half = firstEdgeWest(places, edges, parts, part, west)
      faceOfCycle[cycle] = half < 0 ? OUTSIDE : faceOfCycle[cycles.of[half]!]!
    }
  }
  const of = new Int32Array(next.length)
  for (let h = 0; h < of.length; h++) of[h] = faceOfCycle[cycles.of[h]!]!
  return { count, of, next }
}

function westmost(places: PairTable, edges: PairTable, next: Int32Array, first: number): number {
  let best = startOf(edges, first)
  for (let h = next[first]!; h !== first; h = next[h]!) {
    const v = startOf(edges, h)
    if (places.first[v]! < places.first[best]!) best = v
  }
  return best
}

/** The nearest edge of another part straight west of a vertex, as the half-edge with the vertex on its left; or -1. */
function firstEdgeWest(places: PairTable, edges: PairTable, parts: Int32Array, part: number, west: number): number {
  const x = places.first[west]!
  const y = places.second[west]!
  let best = -1
  let bestX = -Infinity
  let bestSlope = 0
  for (let e = 0; e < edges.count; e++) {
    const a = edges.first[e]!
    const b = edges.second[e]!
    const ay = places.second[a]!
    const by = places.second[b]!
    if (ay <= y === by <= y || parts[a] === part) continue
    const slope = (places.first[b]! - places.first[a]!) / (by - ay)
    const at = places.first[a]! + (y - ay) * slope
    if (at > x || at < bestX || (at === bestX && slope <= bestSlope)) continue
    best = ay > by ? 2 * e : 2 * e + 1
    bestX = at
    bestSlope = slope
  }
  return best
}
