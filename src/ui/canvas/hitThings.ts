import type { Room } from '#analysis/room.ts'
import type { Point, Ring } from '#geometry/polygon.ts'
import type { Project, Underlay } from '#project/project.ts'
import type { Thing } from '#state/view.ts'
import { cornerPoints, distanceToSegment, type Handle, isInside } from '#ui/canvas/nearest.ts'
import type { PlanRoom } from '#ui/canvas/planRoom.ts'
import { partitionRing, type ThingShape, thingShape, thingsOf, turnable, turnHandle } from '#ui/canvas/thingShapes.ts'
import type { Millimetres } from '#units/quantity.ts'

/** A handle and where it stands. */
export interface HandlePlace {
  readonly handle: Handle
  readonly at: Point
}

/** How far before a footprint its turning handle stands, px. */
export const TURN_AWAY = 26

/**
 * The handles of the selected thing: ends of an opening, corners of a ring, one to turn a footprint by.
 * @param scale  px per mm
 */
export function handlesOf(room: PlanRoom, thing: Thing | null, scale: number): readonly HandlePlace[] {
  const shape = thing && thingShape(room, thing)
  if (!thing || !shape) return []
  if (shape.kind === 'run') {
    return [
      { handle: { kind: 'end', end: 'from' }, at: shape.ends[0] },
      { handle: { kind: 'end', end: 'to' }, at: shape.ends[1] },
    ]
  }
  if (shape.kind === 'place') return []
  const corners = shape.ring.map((at, index): HandlePlace => ({ handle: { kind: 'ring', index }, at }))
  const piece = turnable(room, thing)
  return piece ? [...corners, { handle: { kind: 'turn' }, at: turnHandle(piece, TURN_AWAY / scale) }] : corners
}

/**
 * The nearest handle within reach. Of a thing so small on the screen that its handles are within reach from everywhere,
 * the middle is left to take hold of the thing itself: else a door on a phone could be widened but never moved.
 */
export function handleAt(handles: readonly HandlePlace[], at: Point, reach: Millimetres): Handle | null {
  const middle = middleOf(handles)
  let best: Handle | null = null
  let least = reach
  for (const place of handles) {
    const away = distance(at, place.at)
    if (away > least || distance(at, middle) < MIDDLE_SHARE * distance(place.at, middle)) continue
    best = place.handle
    least = away
  }
  return best
}

/** How much of the way from its middle to a handle belongs to the thing. */
const MIDDLE_SHARE = 2 / 3

function middleOf(handles: readonly HandlePlace[]): Point {
  const ends = handles.filter(({ handle }) => handle.kind !== 'turn').map(({ at }) => at)
  const [x, y] = ends.reduce(([sumX, sumY], [endX, endY]) => [sumX + endX, sumY + endY], [0, 0])
  return [x / ends.length, y / ends.length]
}

function distance(a: Point, b: Point): Millimetres {
  return Math.hypot(a[0] - b[0], a[1] - b[1])
}

/** A thing under the pointer, and how much plan it covers: small things lie on top of large ones. */
interface Hit {
  readonly thing: Thing
  readonly size: number
}

/**
 * The smallest thing of the room under the pointer: a height point, an opening, else the ring with the least area.
 * A ceiling part is as large as a room and lies at a wall's depth below everything: only its edge is touched, else a press
 * in the middle of the room could never mean the room.
 */
export function thingAt(room: PlanRoom, at: Point, reach: Millimetres): Thing | null {
  let best: Hit | null = null
  for (const thing of thingsOf(room)) {
    const shape = thingShape(room, thing)
    if (!shape || !touches(shape, thing, at, reach)) continue
    const size = sizeOf(shape)
    if (best === null || size < best.size) best = { thing, size }
  }
  return best?.thing ?? null
}

function touches(shape: ThingShape, thing: Thing, at: Point, reach: Millimetres): boolean {
  switch (shape.kind) {
    case 'place':
      return Math.hypot(at[0] - shape.at[0], at[1] - shape.at[1]) <= reach
    case 'run':
      return distanceToSegment(at, ...shape.ends) <= reach && pastEnds(shape.ends, at) <= reach / 2
    default:
      return edgeDistance(shape.ring, at) <= reach / 2 || (thing.kind !== 'ceiling-part' && isInside(shape.ring, at))
  }
}

/** How far along its wall a place lies past an opening: there the wall and its corner are meant sooner than across it. */
function pastEnds([[fromX, fromY], [toX, toY]]: readonly [Point, Point], [x, y]: Point): Millimetres {
  const width = Math.hypot(toX - fromX, toY - fromY)
  const along = width === 0 ? 0 : ((x - fromX) * (toX - fromX) + (y - fromY) * (toY - fromY)) / width
  return Math.max(-along, along - width, 0)
}

function edgeDistance(ring: Ring, at: Point): Millimetres {
  return Math.min(...ring.map((from, i) => distanceToSegment(at, from, ring[(i + 1) % ring.length] ?? from)))
}

function sizeOf(shape: ThingShape): number {
  if (shape.kind === 'place') return 0
  if (shape.kind === 'run') return 1
  return Math.max(2, ringArea(shape.ring))
}

function ringArea(ring: Ring): number {
  let twice = 0
  ring.forEach(([x, y], i) => {
    const [nextX, nextY] = ring[(i + 1) % ring.length] ?? [x, y]
    twice += x * nextY - nextX * y
  })
  return Math.abs(twice) / 2
}

/** The partition whose thickness lies under the pointer. */
export function partitionAt({ partitions, rooms }: Project, at: Point): Thing | null {
  const hit = partitions.find((partition) => {
    const ring = partitionRing(partition, rooms)
    return ring !== null && isInside(ring, at)
  })
  return hit ? { kind: 'partition', id: hit.id } : null
}

/** Another room of the project under the pointer. */
export function otherRoomAt(rooms: readonly Room[], roomId: string, at: Point): string | null {
  return rooms.find((room) => room.id !== roomId && isInside(cornerPoints(room), at))?.id ?? null
}

/** The topmost picture under the pointer that is shown and not locked. */
export function underlayAt(underlays: readonly Underlay[], at: Point): Thing | null {
  const hit = underlays.findLast((picture) => picture.isShown && !picture.isLocked && isOnPicture(picture, at))
  return hit ? { kind: 'underlay', id: hit.id } : null
}

function isOnPicture({ xMm, yMm, angleDeg, widthPx, heightPx, mmPerPx }: Underlay, [x, y]: Point): boolean {
  const turn = (-angleDeg * Math.PI) / 180
  const [dx, dy] = [x - xMm, y - yMm]
  const across = dx * Math.cos(turn) - dy * Math.sin(turn)
  const up = dx * Math.sin(turn) + dy * Math.cos(turn)
  return Math.abs(across) <= (widthPx * mmPerPx) / 2 && Math.abs(up) <= (heightPx * mmPerPx) / 2
}
