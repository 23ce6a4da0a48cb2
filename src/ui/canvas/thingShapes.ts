import type { Rectangular } from '#analysis/furniture/footprint.ts'
import type { Opening, Room } from '#analysis/room.ts'
import type { Point, Ring } from '#geometry/polygon.ts'
import type { Partition } from '#project/project.ts'
import type { Thing } from '#state/view.ts'
import { boxesOf, type PlanRoom } from '#ui/canvas/planRoom.ts'
import type { Millimetres } from '#units/quantity.ts'

/** What a thing looks like to a hand on the plan, mm: a run along a wall, a place, or a ring of corners. */
export type ThingShape =
  | { readonly kind: 'run'; readonly ends: readonly [Point, Point] }
  | { readonly kind: 'place'; readonly at: Point }
  | { readonly kind: 'ring'; readonly ring: Ring }

/** A wall's line with its direction, from its first corner. */
export interface WallRun {
  readonly id: string
  readonly index: number
  readonly from: Point
  readonly to: Point
  /** Unit direction from its first corner to its second. */
  readonly along: Point
  readonly length: Millimetres
}

export function wallRun(room: Room, wallId: string): WallRun | null {
  const index = room.walls.findIndex((wall) => wall.id === wallId)
  const from = room.corners[index]
  const to = room.corners[(index + 1) % room.corners.length]
  if (!from || !to) return null
  const length = Math.hypot(to.xMm - from.xMm, to.yMm - from.yMm)
  const along: Point = length > 0 ? [(to.xMm - from.xMm) / length, (to.yMm - from.yMm) / length] : [1, 0]
  return { id: wallId, index, from: [from.xMm, from.yMm], to: [to.xMm, to.yMm], along, length }
}

/** A place on a wall's line, so far from its first corner. */
export function placeOnWall({ from, along }: WallRun, mm: Millimetres): Point {
  return [from[0] + along[0] * mm, from[1] + along[1] * mm]
}

/** How far along a wall's line a place lies. */
export function alongWall({ from, along }: WallRun, at: Point): Millimetres {
  return (at[0] - from[0]) * along[0] + (at[1] - from[1]) * along[1]
}

export function openingEnds(room: Room, opening: Opening): readonly [Point, Point] | null {
  const run = wallRun(room, opening.wall)
  return run && [placeOnWall(run, opening.fromMm), placeOnWall(run, opening.fromMm + opening.widthMm)]
}

/** The footprint's four corners, counter-clockwise from its front left. */
export function furnitureRing({ xMm, yMm, widthMm, depthMm, angleDeg }: Rectangular): Ring {
  const turn = (angleDeg * Math.PI) / 180
  const [cos, sin] = [Math.cos(turn), Math.sin(turn)]
  const [w, d] = [widthMm / 2, depthMm / 2]
  const corners: Ring = [
    [-w, -d],
    [w, -d],
    [w, d],
    [-w, d],
  ]
  return corners.map(([x, y]): Point => [xMm + x * cos - y * sin, yMm + x * sin + y * cos])
}

/** The strip between the two walls a partition shows its rooms; null where a wall is gone. */
export function partitionRing(partition: Partition, rooms: readonly Room[]): Ring | null {
  const [first, second] = partition.sides.map((side) => {
    const room = rooms.find((candidate) => candidate.id === side.room)
    return room ? wallRun(room, side.wall) : null
  })
  if (!first || !second) return null
  return [first.from, first.to, second.from, second.to]
}

type OfRoom = Exclude<Thing['kind'], 'partition' | 'underlay'>

/** The shape of a thing of this room; null where there is none of that name. */
export function thingShape(room: PlanRoom, thing: Thing): ThingShape | null {
  switch (thing.kind) {
    case 'partition':
    case 'underlay':
      return null
    default:
      return roomThingShape(room, thing.kind, thing.id)
  }
}

function roomThingShape(room: PlanRoom, kind: OfRoom, id: string): ThingShape | null {
  switch (kind) {
    case 'opening': {
      const opening = room.openings.find((candidate) => candidate.id === id)
      const ends = opening && openingEnds(room, opening)
      return ends ? { kind: 'run', ends } : null
    }
    case 'height': {
      const point = heightPoint(room, id)
      return point ? { kind: 'place', at: [point.xMm, point.yMm] } : null
    }
    case 'furniture':
    case 'box': {
      const piece = turnable(room, { kind, id })
      return piece ? { kind: 'ring', ring: furnitureRing(piece) } : null
    }
    default: {
      const list = kind === 'obstacle' ? room.obstacles : kind === 'drop' ? room.drops : room.ceilingParts
      const found = list.find((candidate) => candidate.id === id)
      return found ? { kind: 'ring', ring: found.corners.map(({ xMm, yMm }): Point => [xMm, yMm]) } : null
    }
  }
}

/** What can be turned: a piece of furniture or a silencer box. */
export function turnable(room: PlanRoom, { kind, id }: Thing): Turnable | null {
  if (kind !== 'furniture' && kind !== 'box') return null
  const list: readonly Turnable[] = kind === 'furniture' ? room.furniture : boxesOf(room)
  return list.find((candidate) => candidate.id === id) ?? null
}

/** A turned rectangle with a name. */
export interface Turnable extends Rectangular {
  readonly id: string
  readonly name: string
}

export function heightPoint(room: Room, id: string) {
  const own = room.heights.find((point) => point.id === id)
  return own ?? room.ceilingParts.flatMap((part) => part.heights).find((point) => point.id === id)
}

/** Everything in the room that can be picked, in the order keys walk it. */
export function thingsOf(room: PlanRoom): readonly Thing[] {
  const all = <Kind extends Thing['kind']>(kind: Kind, list: readonly { readonly id: string }[]): Thing[] =>
    list.map(({ id }) => ({ kind, id }))
  return [
    ...all('opening', room.openings),
    ...all('obstacle', room.obstacles),
    ...all('drop', room.drops),
    ...all('ceiling-part', room.ceilingParts),
    ...all('height', room.heights),
    ...room.ceilingParts.flatMap((part) => all('height', part.heights)),
    ...all('furniture', room.furniture),
    ...all('box', boxesOf(room)),
  ]
}

export function isSameThing(a: Thing | null, b: Thing | null): boolean {
  return a === b || (a !== null && b !== null && a.kind === b.kind && a.id === b.id)
}

/** The middle of a shape's extent. */
export function shapeMiddle(shape: ThingShape): Point {
  if (shape.kind === 'place') return shape.at
  const points = shape.kind === 'run' ? shape.ends : shape.ring
  const xs = points.map(([x]) => x)
  const ys = points.map(([, y]) => y)
  return [(Math.min(...xs) + Math.max(...xs)) / 2, (Math.min(...ys) + Math.max(...ys)) / 2]
}

/** The middle of a footprint's front edge. */
export function frontMiddle(piece: Rectangular): Point {
  return turnHandle(piece, 0)
}

/** Where a footprint's turning handle stands: before its front, so far off. */
export function turnHandle(piece: Rectangular, away: Millimetres): Point {
  const turn = (piece.angleDeg * Math.PI) / 180
  const reach = piece.depthMm / 2 + away
  return [piece.xMm + Math.sin(turn) * reach, piece.yMm - Math.cos(turn) * reach]
}
