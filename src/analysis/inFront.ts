import type { Room } from '#analysis/room.ts'
import type { Inset } from '#geometry/inset/insetRoom.ts'
import type { WallResult } from '#geometry/inset/types.ts'
import { isCounterClockwise, type OutlineEdge, outlineEdges } from '#geometry/outline.ts'
import type { Point, Ring } from '#geometry/polygon.ts'
import type { Millimetres } from '#units/quantity.ts'

/** A wall's lining that passes in front of an obstacle: the obstacle's side it covers and how much it takes there. */
export interface InFront {
  /** Place of the side among all edges of the inset: the outline's first, then obstacle by obstacle. */
  readonly edge: number
  readonly wall: number
  readonly depthMm: Millimetres
}

/** An obstacle nearer to a wall than this stands against it, mm. */
const AGAINST_MM = 0.1
/** Sine of the angle up to which two edges run alike. */
const ALIKE = 1e-3

/**
 * Where a wall's lining reaches further into the room than an obstacle that stands against that wall, boxed as it is, the
 * lining runs on in front of it: a pier behind studs that stand clear of it. Its other sides then need no box of their own.
 * @param depthsMm  what each wall's lining takes, in outline order
 */
export function liningsInFront(room: Room, depthsMm: readonly Millimetres[]): readonly InFront[] {
  if (room.obstacles.length === 0) return []
  const walls = edgesInside(ringOf(room.corners))
  const found: InFront[] = []
  let before = room.walls.length
  for (const { corners, liningMm } of room.obstacles) {
    const ring = ringOf(corners)
    const sides = edgesInside(ring)
    walls.forEach((wall, index) => {
      if (!standsAgainst(ring, wall)) return
      const reachMm = depthsMm[index] ?? 0
      const isBuried = ring.every((corner) => reachMm - aside(wall, corner) > liningMm)
      for (const side of sides) {
        const depthMm = coveredBy(wall, side, { reachMm, liningMm, isBuried })
        if (depthMm !== null) found.push({ edge: before + side.index, wall: index, depthMm })
      }
    })
    before += corners.length
  }
  return found
}

/** What a wall's lining takes in front of an obstacle's side; null: the side keeps its own box. */
function coveredBy(
  wall: OutlineEdge,
  side: OutlineEdge,
  lining: { readonly reachMm: Millimetres; readonly liningMm: Millimetres; readonly isBuried: boolean },
): Millimetres | null {
  if (!runsAlike(wall, side)) return lining.isBuried ? 0 : null
  const depthMm = lining.reachMm - aside(wall, side.from)
  return depthMm > lining.liningMm ? depthMm : null
}

/** The inset with every strip and face in front of an obstacle counted to the wall whose lining it is. */
export function countedToWalls(inset: Inset, inFront: readonly InFront[], room: Room): Inset {
  if (inFront.length === 0) return inset
  const walls = outlineEdges(ringOf(room.corners))
  const wallOf = new Map(inFront.map(({ edge, wall }) => [edge, wall]))
  const moved = <Thing extends { readonly wall: number }>(thing: Thing): Thing => {
    const wall = wallOf.get(thing.wall)
    return wall === undefined ? thing : { ...thing, wall }
  }
  return {
    ...inset,
    strips: inset.strips.map(moved),
    edges: inset.edges.map(moved),
    walls: inset.walls.map((entry) => {
      if (wallOf.has(entry.wall)) return { ...entry, clearLengthMm: 0, swallowed: false, areaMm2: 0, sections: [] }
      const added = inset.walls.filter((other) => wallOf.get(other.wall) === entry.wall)
      return added.reduce((sum, other) => together(sum, other, walls[entry.wall]!), entry)
    }),
  }
}

function together(sum: WallResult, added: WallResult, wall: OutlineEdge): WallResult {
  const along = ([x, y]: Point) =>
    ((wall.to[0] - wall.from[0]) * (x - wall.from[0]) + (wall.to[1] - wall.from[1]) * (y - wall.from[1])) /
    wall.lengthMm
  const sections = added.sections.map((section) => {
    const ends = [along(section.from), along(section.to)]
    return { ...section, s0Mm: Math.min(...ends), s1Mm: Math.max(...ends) }
  })
  return {
    ...sum,
    clearLengthMm: sum.clearLengthMm + added.clearLengthMm,
    swallowed: sum.swallowed && added.clearLengthMm === 0,
    areaMm2: sum.areaMm2 + added.areaMm2,
    sections: [...sum.sections, ...sections],
  }
}

function ringOf(corners: readonly { readonly xMm: Millimetres; readonly yMm: Millimetres }[]): Point[] {
  return corners.map(({ xMm, yMm }): Point => [xMm, yMm])
}

/** The sides of a ring with its inside on their left, each under its own index. */
function edgesInside(ring: Ring): readonly OutlineEdge[] {
  const edges = outlineEdges(ring)
  return isCounterClockwise(ring) ? edges : edges.map((edge) => ({ ...edge, from: edge.to, to: edge.from }))
}

/** How far a place lies on the inner side of an edge, mm. */
function aside({ from, to, lengthMm }: OutlineEdge, [x, y]: Point): number {
  return ((to[0] - from[0]) * (y - from[1]) - (to[1] - from[1]) * (x - from[0])) / lengthMm
}

/** Whether an obstacle touches a wall, or is let into it so that it reaches behind its face. */
function standsAgainst(ring: Ring, wall: OutlineEdge): boolean {
  const [ux, uy] = [(wall.to[0] - wall.from[0]) / wall.lengthMm, (wall.to[1] - wall.from[1]) / wall.lengthMm]
  const isBeside = ([x, y]: Point): boolean => {
    const along = (x - wall.from[0]) * ux + (y - wall.from[1]) * uy
    return along > -AGAINST_MM && along < wall.lengthMm + AGAINST_MM
  }
  return outlineEdges(ring).some(({ from, to }) => {
    const [a, b] = [aside(wall, from), aside(wall, to)]
    if (Math.abs(a) <= AGAINST_MM) return isBeside(from)
    if (a > 0 === b > 0) return false
    const share = a / (a - b)
    return isBeside([from[0] + share * (to[0] - from[0]), from[1] + share * (to[1] - from[1])])
  })
}

/** Whether an obstacle's side faces the room as the wall does: both have their inside on the left, so they run opposite. */
function runsAlike(wall: OutlineEdge, side: OutlineEdge): boolean {
  const [ax, ay] = [(wall.to[0] - wall.from[0]) / wall.lengthMm, (wall.to[1] - wall.from[1]) / wall.lengthMm]
  const [bx, by] = [(side.to[0] - side.from[0]) / side.lengthMm, (side.to[1] - side.from[1]) / side.lengthMm]
  return Math.abs(ax * by - ay * bx) < ALIKE && ax * bx + ay * by < 0 && aside(wall, side.from) > AGAINST_MM
}
