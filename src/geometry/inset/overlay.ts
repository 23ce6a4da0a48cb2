import { giveCrumbs } from '#geometry/inset/crumbs.ts'
import { addCutLines } from '#geometry/inset/cutLines.ts'
import type { Bounds, FloorEdge } from '#geometry/inset/floorEdges.ts'
import { NOBODY, ownFaces } from '#geometry/inset/ownership.ts'
import { addStripSides, stripsOf, type WallStrip } from '#geometry/inset/strips.ts'
import { type Arrangement, arrange } from '#geometry/overlay/arrange.ts'
import { UNLABELLED } from '#geometry/overlay/readBack.ts'
import { addSegment, createSegments } from '#geometry/overlay/segments.ts'
import { edgeWeights, windingNumbers } from '#geometry/overlay/winding.ts'

/** Label of faces that stay clear; strips carry their wall's number. */
export const CLEAR = -2

/** Everything the answer is read from: the drawing, what each face is, and whose. Segment k < floor.length is floor edge k. */
export interface Overlay {
  readonly arrangement: Arrangement
  readonly floor: readonly FloorEdge[]
  readonly strips: readonly WallStrip[]
  /** Strip that fills each face, or NOBODY. */
  readonly owner: Int32Array
  /** CLEAR, the wall that fills the face, or UNLABELLED outside the floor. */
  readonly labels: Int32Array
  /** Face by face: 1 in the room before or after walls moved, and how often the outline and the obstacles run round it. */
  readonly inside: { readonly room: Int32Array; readonly outline: Int32Array; readonly obstacles: Int32Array }
  readonly outlineNet: Int32Array
}

/** Draws floor and strips over each other and settles who owns each face; null when the drawing contradicts itself. */
export function overlayStrips(floor: readonly FloorEdge[]): Overlay | null {
  const segments = createSegments()
  for (const edge of floor) addSegment(segments, edge.ax, edge.ay, edge.bx, edge.by)
  const strips = stripsOf(floor)
  for (const strip of strips) addStripSides(segments, strip)
  addCutLines(segments, strips)
  const arrangement = arrange(segments)
  if (!arrangement) return null
  const outlineNet = edgeWeights(
    arrangement,
    floor.map((edge) => edge.bounds.outline),
  )
  const outline = windingNumbers(arrangement, outlineNet)
  /** Winding numbers of another area; most often it is bounded by the outline's edges and costs nothing. */
  const around = (area: keyof Bounds): Int32Array | null => {
    if (floor.every(({ bounds }) => bounds[area] === bounds.outline)) return outline
    const weights = floor.map(({ bounds }) => bounds[area])
    return windingNumbers(arrangement, edgeWeights(arrangement, weights))
  }
  const onFloor = around('floor')
  const moved = around('moved')
  const obstacles = floor.some(({ bounds }) => bounds.obstacles !== 0)
    ? around('obstacles')
    : new Int32Array(arrangement.faces.count)
  if (!onFloor || !outline || !moved || !obstacles) return null
  const room = outline.map((winding, face) => Number(winding > 0 || moved[face]! > 0))
  const owner = ownFaces(arrangement, wallEdges(arrangement, floor), strips)
  giveCrumbs(arrangement, onFloor, owner)
  const labels = onFloor.map((winding, face) => {
    if (winding <= 0) return UNLABELLED
    return owner[face] === NOBODY ? CLEAR : strips[owner[face]!]!.wall
  })
  return { arrangement, floor, strips, owner, labels, inside: { room, outline, obstacles }, outlineNet }
}

/** Marks the edges that carry a wall, also where two walls fell on each other. */
function wallEdges({ edges, chainStart, chain }: Arrangement, floor: readonly FloorEdge[]): Uint8Array {
  const isWall = new Uint8Array(edges.count)
  floor.forEach((edge, k) => {
    if (edge.bounds.floor === 0) return
    for (let c = chainStart[k]!; c < chainStart[k + 1]!; c++) isWall[chain[c]! >> 1] = 1
  })
  return isWall
}
