import type { Room } from '#analysis/room.ts'
import type { Point } from '#geometry/polygon.ts'
import type { Thing } from '#state/view.ts'
import type { Millimetres } from '#units/quantity.ts'

/** A part of the selected thing that can be taken hold of. */
export type Handle =
  | { readonly kind: 'ring'; readonly index: number }
  | { readonly kind: 'end'; readonly end: 'from' | 'to' }
  | { readonly kind: 'turn' }

/** What lies under the pointer. */
export type Target =
  | { readonly kind: 'corner'; readonly id: string }
  | { readonly kind: 'handle'; readonly thing: Thing; readonly handle: Handle }
  | { readonly kind: 'thing'; readonly thing: Thing }
  | { readonly kind: 'wall'; readonly id: string }
  /** Another room of the project. */
  | { readonly kind: 'room'; readonly id: string }
  | { readonly kind: 'inside' }
  | { readonly kind: 'outside' }

export interface Reach {
  /** How near a corner or a wall's line counts as touched. */
  readonly corner: Millimetres
  readonly wall: Millimetres
}

/**
 * What the pointer touches of the room itself: a corner that shows a handle, else the nearest wall, else the room or the
 * paper.
 * @param handles  ids of the corners that can be taken hold of
 * @param depths  how far each wall's assembly reaches into the room: its strip counts as the wall
 */
export function targetAt(
  room: Room,
  at: Point,
  reach: Reach,
  handles: ReadonlySet<string>,
  depths: readonly Millimetres[],
): Target {
  const corner = nearestCorner(room, at, reach.corner, handles)
  if (corner) return { kind: 'corner', id: corner }
  const points = cornerPoints(room)
  const inside = isInside(points, at)
  const wall = nearestWall(points, at, (index) => Math.max(reach.wall, inside ? (depths[index] ?? 0) : 0))
  const id = wall === null ? undefined : room.walls[wall]?.id
  if (id !== undefined) return { kind: 'wall', id }
  return { kind: inside ? 'inside' : 'outside' }
}

export function isSameTarget(a: Target | null, b: Target | null): boolean {
  return a === b || (a !== null && b !== null && targetKey(a) === targetKey(b))
}

function targetKey(target: Target): string {
  return JSON.stringify(target)
}

export function cornerPoints(room: Room): readonly Point[] {
  return room.corners.map((corner): Point => [corner.xMm, corner.yMm])
}

function nearestCorner(room: Room, at: Point, reach: Millimetres, among: ReadonlySet<string>): string | null {
  let best: string | null = null
  let least = reach
  for (const { id, xMm, yMm } of room.corners) {
    const away = Math.hypot(at[0] - xMm, at[1] - yMm)
    if (among.has(id) && away <= least) {
      best = id
      least = away
    }
  }
  return best
}

/** Index of the nearest wall within its own reach; null for none. */
export function nearestWall(points: readonly Point[], at: Point, reach: (index: number) => Millimetres): number | null {
  let best: number | null = null
  let least = Number.POSITIVE_INFINITY
  points.forEach((from, index) => {
    const away = distanceToSegment(at, from, points[(index + 1) % points.length] ?? from)
    if (away <= reach(index) && away < least) {
      best = index
      least = away
    }
  })
  return best
}

export function distanceToSegment(at: Point, from: Point, to: Point): Millimetres {
  const foot = footOnSegment(at, from, to)
  return Math.hypot(at[0] - foot[0], at[1] - foot[1])
}

/** The place of a segment nearest to another place. */
export function footOnSegment(at: Point, from: Point, to: Point): Point {
  const dx = to[0] - from[0]
  const dy = to[1] - from[1]
  const squared = dx * dx + dy * dy
  const share = squared === 0 ? 0 : ((at[0] - from[0]) * dx + (at[1] - from[1]) * dy) / squared
  const held = Math.min(1, Math.max(0, share))
  return [from[0] + held * dx, from[1] + held * dy]
}

/** Even-odd: a place on the outline itself may fall on either side. */
export function isInside(points: readonly Point[], [x, y]: Point): boolean {
  let inside = false
  points.forEach(([ax, ay], index) => {
    const [bx, by] = points[(index + 1) % points.length] ?? [ax, ay]
    if (ay > y !== by > y && x < ax + ((y - ay) / (by - ay)) * (bx - ax)) inside = !inside
  })
  return inside
}
