import type { Point, Ring } from '#geometry/polygon.ts'
import { distance, roundTo } from '#ui/canvas/snap.ts'
import type { Millimetres } from '#units/quantity.ts'

/** An edge that a moved thing likes to lie against. */
export type Edge = readonly [from: Point, to: Point]

export interface ShapeSnapInput {
  /** Corners of the thing where it stood. */
  readonly ring: Ring
  /** How far the hand has moved it. */
  readonly shift: Point
  readonly edges: readonly Edge[]
  readonly tolerance: Millimetres
  readonly step: Millimetres
  readonly finest: Millimetres
  readonly free: boolean
}

export interface SnappedShift {
  readonly shift: Point
  readonly guides: readonly Edge[]
}

/** Way from a corner to the line of an edge, along its normal. */
interface Pull {
  readonly normal: Point
  readonly away: Millimetres
  readonly edge: Edge
}

/** Where a moved thing comes to lie: against one edge or in the corner of two, its first corner else on the grid. */
export function snapShift(input: ShapeSnapInput): SnappedShift {
  const { ring, shift, step, finest, free } = input
  const first = ring[0] ?? [0, 0]
  const onGrid = (grid: Millimetres): Point => [
    roundTo(first[0] + shift[0], grid) - first[0],
    roundTo(first[1] + shift[1], grid) - first[1],
  ]
  if (free) return { shift: onGrid(finest), guides: [] }
  const pulls = pullsOf(input)
  const [one] = pulls
  if (!one) return { shift: onGrid(step), guides: [] }
  const held: Point = [shift[0] + one.normal[0] * one.away, shift[1] + one.normal[1] * one.away]
  const two = pulls.find((pull) => Math.abs(cross(pull.normal, one.normal)) > 0.2)
  if (!two) return { shift: slideToStep(held, one.normal, first, step), guides: [one.edge] }
  return { shift: bothHeld(shift, one, two), guides: [one.edge, two.edge] }
}

/** What holds a corner of the ring within reach, nearest first. */
function pullsOf({ ring, shift, edges, tolerance }: ShapeSnapInput): Pull[] {
  const moved = ring.map(([x, y]): Point => [x + shift[0], y + shift[1]])
  const pulls: Pull[] = []
  for (const edge of edges) {
    const length = distance(...edge)
    if (length < 1) continue
    const along: Point = [(edge[1][0] - edge[0][0]) / length, (edge[1][1] - edge[0][1]) / length]
    const normal: Point = [-along[1], along[0]]
    let least: Pull | null = null
    for (const corner of moved) {
      const offset: Point = [corner[0] - edge[0][0], corner[1] - edge[0][1]]
      const share = offset[0] * along[0] + offset[1] * along[1]
      const away = -(offset[0] * normal[0] + offset[1] * normal[1])
      if (share < -tolerance || share > length + tolerance || Math.abs(away) > tolerance) continue
      if (least === null || Math.abs(away) < Math.abs(least.away)) least = { normal, away, edge }
    }
    if (least) pulls.push(least)
  }
  return pulls.sort((a, b) => Math.abs(a.away) - Math.abs(b.away))
}

/** The shift that meets both edges' lines. */
function bothHeld(shift: Point, one: Pull, two: Pull): Point {
  const turn = cross(one.normal, two.normal)
  return [
    shift[0] + (one.away * two.normal[1] - two.away * one.normal[1]) / turn,
    shift[1] + (two.away * one.normal[0] - one.away * two.normal[0]) / turn,
  ]
}

/** Along a level or plumb edge the thing keeps to the grid; along any other it lies where the hand has it. */
function slideToStep(shift: Point, normal: Point, first: Point, step: Millimetres): Point {
  const rounded = (axis: 0 | 1) => roundTo(first[axis] + shift[axis], step) - first[axis]
  if (Math.abs(normal[0]) < 1e-6) return [rounded(0), shift[1]]
  if (Math.abs(normal[1]) < 1e-6) return [shift[0], rounded(1)]
  return shift
}

function cross(a: Point, b: Point): number {
  return a[0] * b[1] - a[1] * b[0]
}
