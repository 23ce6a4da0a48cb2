import { type Bounds, type FloorEdge, floorOfOutline, type GridRoom } from '#geometry/inset/floorEdges.ts'
import type { MovedRing } from '#geometry/inset/moveOutward.ts'
import { type Arrangement, arrange } from '#geometry/overlay/arrange.ts'
import { startOf } from '#geometry/overlay/faces.ts'
import { traceBoundaries, UNLABELLED } from '#geometry/overlay/readBack.ts'
import { addSegment, createSegments, type Segments } from '#geometry/overlay/segments.ts'
import { edgeWeights, windingNumbers } from '#geometry/overlay/winding.ts'

/** A ring's edge among the segments of the drawing. */
interface Source {
  readonly wall: number
  readonly direction: readonly [x: number, y: number]
  readonly isJoin: boolean
  readonly isOutline: boolean
}

/** Which areas each segment runs round: 1 with the area's inside on the left, -1 on the right. */
interface Weights {
  readonly outline: number[]
  readonly moved: number[]
  readonly obstacles: number[]
  readonly movedObstacles: number[]
}

/** The rings of a room as segments, with what is known of each. */
interface Drawing {
  readonly segments: Segments
  readonly sources: Source[]
  readonly weights: Weights
}

/** The floor among the faces of the drawing of all rings. */
interface FloorFaces {
  readonly net: { readonly outline: Int32Array; readonly moved: Int32Array; readonly obstacles: Int32Array }
  /** 1 inside the outline or the moved outline, obstacles included. */
  readonly isRoom: Int32Array
  /** 0 for floor. */
  readonly labels: Int32Array
}

/** Edges of the floor = moved outline less moved obstacles; null when the drawing contradicts itself on this grid. */
export function layFloor(room: GridRoom): FloorEdge[] | null {
  const isPlain = room.obstacles.length === 0 && room.movedOutline === room.outline
  if (isPlain) return floorOfOutline(room)
  const drawing: Drawing = {
    segments: createSegments(),
    sources: [],
    weights: { outline: [], moved: [], obstacles: [], movedObstacles: [] },
  }
  addRing(drawing, room.outline, room.movedOutline, true)
  room.obstacles.forEach((ring, k) => {
    addRing(drawing, ring, room.movedObstacles[k]!, false)
  })
  const arrangement = arrange(drawing.segments)
  const floor = arrangement && findFloor(arrangement, drawing.weights)
  return floor && readFloor(arrangement, floor, drawing, room.depths)
}

/** Draws a ring as it ends up and, if it moved, as it was. */
function addRing(drawing: Drawing, ring: MovedRing, movedRing: MovedRing, isOutline: boolean): void {
  if (movedRing === ring) {
    addCourse(drawing, ring, isOutline, 1, 1)
    return
  }
  addCourse(drawing, movedRing, isOutline, 0, 1)
  addCourse(drawing, ring, isOutline, 1, 0)
}

function addCourse(drawing: Drawing, ring: MovedRing, isOutline: boolean, original: number, moved: number): void {
  const { segments, sources, weights } = drawing
  const n = ring.xs.length
  for (let k = 0; k < n; k++) {
    addSegment(segments, ring.xs[k]!, ring.ys[k]!, ring.xs[(k + 1) % n]!, ring.ys[(k + 1) % n]!)
    sources.push({ wall: ring.walls[k]!, direction: ring.directions[k]!, isJoin: ring.joins[k]!, isOutline })
    weights.outline.push(isOutline ? original : 0)
    weights.moved.push(isOutline ? moved : 0)
    weights.obstacles.push(isOutline ? 0 : -original)
    weights.movedObstacles.push(isOutline ? 0 : -moved)
  }
}

function findFloor(arrangement: Arrangement, weights: Weights): FloorFaces | null {
  const net = {
    outline: edgeWeights(arrangement, weights.outline),
    moved: edgeWeights(arrangement, weights.moved),
    obstacles: edgeWeights(arrangement, weights.obstacles),
  }
  const outline = windingNumbers(arrangement, net.outline)
  const moved = windingNumbers(arrangement, net.moved)
  const obstacles = windingNumbers(arrangement, net.obstacles)
  const movedObstacles = windingNumbers(arrangement, edgeWeights(arrangement, weights.movedObstacles))
  if (!outline || !moved || !obstacles || !movedObstacles) return null
  // A wall that stays may lie a step aside of its old line once a neighbour moved: what was floor stays floor.
  const isRoom = outline.map((winding, face) => Number(winding > 0 || moved[face]! > 0))
  const labels = isRoom.map((room, face) => {
    const isSolid = obstacles[face]! > 0 && movedObstacles[face]! > 0
    return room && !isSolid ? 0 : UNLABELLED
  })
  return { net, isRoom, labels }
}

/**
 * For each half-edge with floor on its left and none on its right, the segment that makes it a wall: the outline where
 * the room ends there, else an obstacle. Where several run along each other the first given counts.
 */
function edgeOwners(arrangement: Arrangement, floor: FloorFaces, sources: readonly Source[]): Int32Array {
  const { faces, chainStart, chain } = arrangement
  const owners = new Int32Array(faces.of.length).fill(-1)
  const isWallOf = (half: number, source: Source): boolean => {
    const behind = faces.of[half ^ 1]!
    if (floor.labels[faces.of[half]!] !== 0 || floor.labels[behind] === 0) return false
    return source.isOutline === (floor.isRoom[behind] === 0)
  }
  sources.forEach((source, k) => {
    for (let c = chainStart[k]!; c < chainStart[k + 1]!; c++) {
      const half = chain[c]!
      if (owners[half]! < 0 && isWallOf(half, source)) owners[half] = k
    }
  })
  return owners
}

function readFloor(
  arrangement: Arrangement,
  floor: FloorFaces,
  { sources }: Drawing,
  depths: readonly number[],
): FloorEdge[] {
  const { edges, faces } = arrangement
  const owners = edgeOwners(arrangement, floor, sources)
  const found: FloorEdge[] = []
  const placeOf = new Map<number, number>()
  for (let e = 0; e < edges.count; e++) {
    const left = floor.labels[faces.of[2 * e]!] === 0
    const right = floor.labels[faces.of[2 * e + 1]!] === 0
    const bounds = boundsOf(floor, e, Number(left) - Number(right))
    if (!bounds) continue
    const half = right && !left ? 2 * e + 1 : 2 * e
    placeOf.set(half, found.length)
    found.push(floorEdge(arrangement, half, bounds, sources[owners[half]!], depths))
  }
  linkNeighbours(arrangement, floor.labels, found, placeOf)
  return found
}

/** What an edge bounds, seen with the floor on its left; null for nothing. */
function boundsOf({ net }: FloorFaces, edge: number, onFloor: number): Bounds | null {
  const sign = onFloor < 0 ? -1 : 1
  const outline = sign * net.outline[edge]!
  const moved = sign * net.moved[edge]!
  const obstacles = sign * net.obstacles[edge]!
  if (onFloor === 0 && outline === 0 && moved === 0 && obstacles === 0) return null
  return { outline, moved, obstacles, floor: Math.abs(onFloor) }
}

function floorEdge(
  { edges, places }: Arrangement,
  half: number,
  bounds: Bounds,
  source: Source | undefined,
  depths: readonly number[],
): FloorEdge {
  const [a, b] = [startOf(edges, half), startOf(edges, half ^ 1)]
  const isWall = source && !source.isJoin
  return {
    ax: places.first[a]!,
    ay: places.second[a]!,
    bx: places.first[b]!,
    by: places.second[b]!,
    wall: source?.wall ?? -1,
    depth: isWall ? Math.max(0, depths[source.wall]!) : 0,
    direction: source?.direction ?? [0, 0],
    isJoin: source?.isJoin ?? false,
    bounds,
    next: -1,
    previous: -1,
  }
}

function linkNeighbours(
  arrangement: Arrangement,
  labels: Int32Array,
  floor: FloorEdge[],
  placeOf: ReadonlyMap<number, number>,
): void {
  for (const { halves } of traceBoundaries(arrangement, labels)) {
    halves.forEach((half, k) => {
      const here = placeOf.get(half)!
      const after = placeOf.get(halves[(k + 1) % halves.length]!)!
      floor[here]!.next = after
      floor[after]!.previous = here
    })
  }
}
