import type { MovedRing } from '#geometry/inset/moveOutward.ts'

/** By how much each area's winding number rises from the right of an edge to its left. */
export interface Bounds {
  readonly outline: number
  readonly moved: number
  readonly obstacles: number
  readonly floor: number
}

/**
 * An edge of the floor before linings, with the floor on its left; or an edge that only bounds areas in the ledger
 * (a moved wall's old line, a wall behind an obstacle), for which `bounds.floor` is 0.
 */
export interface FloorEdge {
  readonly ax: number
  readonly ay: number
  readonly bx: number
  readonly by: number
  /** The caller's wall, -1 for edges that bound no floor. */
  readonly wall: number
  /** How far the lining reaches into the room, in steps; 0 where the wall stays bare. */
  readonly depth: number
  readonly direction: readonly [x: number, y: number]
  /** It joins two walls of which one was moved, and is no wall itself. */
  readonly isJoin: boolean
  readonly bounds: Bounds
  /** Neighbours along the floor's boundary, as places in the list; -1 for edges that bound no floor. */
  next: number
  previous: number
}

/**
 * The rings of a room on the grid, the floor on their left: the outline counter-clockwise, obstacles clockwise.
 * `moved...` are the same rings after walls of negative depth moved out, and the same objects where none did.
 */
export interface GridRoom {
  readonly outline: MovedRing
  readonly movedOutline: MovedRing
  readonly obstacles: readonly MovedRing[]
  readonly movedObstacles: readonly MovedRing[]
  /** Depth in steps by wall number. */
  readonly depths: readonly number[]
}

/** The floor's edges where nothing stands in the room and no wall moves: the outline's. */
export function floorOfOutline({ outline, depths }: GridRoom): FloorEdge[] {
  const n = outline.xs.length
  return outline.walls.map((wall, k) => ({
    ax: outline.xs[k]!,
    ay: outline.ys[k]!,
    bx: outline.xs[(k + 1) % n]!,
    by: outline.ys[(k + 1) % n]!,
    wall,
    depth: depths[wall]!,
    direction: outline.directions[k]!,
    isJoin: false,
    bounds: { outline: 1, moved: 1, obstacles: 0, floor: 1 },
    next: (k + 1) % n,
    previous: (k + n - 1) % n,
  }))
}
