import type { CeilingPart, Drop, PlanPoint, Room } from '#analysis/room.ts'
import { intersection } from '#geometry/clip.ts'
import type { CutLine } from '#geometry/cutOutline.ts'
import { centroid, contains } from '#geometry/outline.ts'
import type { Point, Ring } from '#geometry/polygon.ts'
import { ringOf } from '#state/commands/rings.ts'
import type { Millimetres } from '#units/quantity.ts'

/** What stands in or hangs over a room, and the heights measured there. */
export type Things = Pick<Room, 'heights' | 'ceilingParts' | 'obstacles' | 'drops' | 'furniture'>

interface Shared<Thing> {
  readonly left: readonly Thing[]
  readonly right: readonly Thing[]
}

/** The line a room was cut along, and the outlines of the two rooms it leaves. */
export interface TwoRooms {
  readonly line: CutLine
  readonly left: Ring
  readonly right: Ring
}

/**
 * Shares out what stands in a room that is cut in two: each thing goes into the room its middle lies in, and what hangs
 * over both is cut in two by the partition. Both rooms keep all heights, so that their ceilings stay the planes they were.
 */
export function shareThings(
  room: Room,
  two: TwoRooms,
  give: (prefix: string) => string,
): { readonly left: Things; readonly right: Things } {
  const middle = ({ corners }: { readonly corners: readonly PlanPoint[] }) =>
    centroid(ringOf(corners)) ?? ([0, 0] as const)
  const obstacles = byMiddle(room.obstacles, two, middle)
  const furniture = byMiddle(room.furniture, two, ({ xMm, yMm }) => [xMm, yMm])
  const drops = shareRings(room.drops, two, (drop: Drop) => ({ ...drop, id: give('drop') }))
  const ceilingParts = shareRings(room.ceilingParts, two, (part: CeilingPart) => ({
    ...part,
    id: give('part'),
    heights: part.heights.map((point) => ({ ...point, id: give('height') })),
  }))
  const copied = room.heights.map((point) => ({ ...point, id: give('height') }))
  return {
    left: {
      heights: room.heights,
      obstacles: obstacles.left,
      furniture: furniture.left,
      drops: drops.left,
      ceilingParts: ceilingParts.left,
    },
    right: {
      heights: copied,
      obstacles: obstacles.right,
      furniture: furniture.right,
      drops: drops.right,
      ceilingParts: ceilingParts.right,
    },
  }
}

/** How far a place lies to the left of the line. */
function acrossOf({ from, to }: CutLine): (point: Point) => Millimetres {
  const length = Math.hypot(to[0] - from[0], to[1] - from[1])
  const [ux, uy] = [(to[0] - from[0]) / length, (to[1] - from[1]) / length]
  return ([x, y]) => (y - from[1]) * ux - (x - from[0]) * uy
}

/** A place in neither room, such as in the partition, counts to the room on its side of the line. */
function byMiddle<Thing>(
  things: readonly Thing[],
  { line, left, right }: TwoRooms,
  middle: (thing: Thing) => Point,
): Shared<Thing> {
  const across = acrossOf(line)
  const isLeft = (place: Point) => contains(left, place) || (!contains(right, place) && across(place) >= 0)
  return {
    left: things.filter((thing) => isLeft(middle(thing))),
    right: things.filter((thing) => !isLeft(middle(thing))),
  }
}

/**
 * Rings over one room only stay as they are; the first piece of one over both keeps its id. The line goes on beyond the
 * room's walls, so a piece on its left can hang over a far wing of the room on its right, or over both.
 */
function shareRings<Thing extends { readonly corners: readonly PlanPoint[] }>(
  things: readonly Thing[],
  two: TwoRooms,
  copy: (thing: Thing) => Thing,
): Shared<Thing> {
  const left: Thing[] = []
  const right: Thing[] = []
  for (const thing of things) {
    for (const [k, { which, corners }] of piecesByRoom(thing.corners, two).entries()) {
      const piece = corners === thing.corners ? thing : { ...thing, corners }
      const room = which === 'left' ? left : right
      room.push(k === 0 ? piece : copy(piece))
    }
  }
  return { left, right }
}

function piecesByRoom(
  corners: readonly PlanPoint[],
  two: TwoRooms,
): readonly { readonly which: WhichRoom; readonly corners: readonly PlanPoint[] }[] {
  const [only, other] = roomsUnder(ringOf(corners), two)
  if (only && !other) return [{ which: only, corners }]
  return partedAt(corners, two.line).flatMap((piece) => {
    const under = roomsUnder(ringOf(piece.corners), two)
    return (under.length > 0 ? under : [piece.side]).map((which) => ({ which, corners: piece.corners }))
  })
}

type WhichRoom = 'left' | 'right'

/** The rooms a ring hangs over. */
function roomsUnder(ring: Ring, { left, right }: TwoRooms): readonly WhichRoom[] {
  const isOver = (outline: Ring) => intersection([{ outline: ring, holes: [] }], [{ outline, holes: [] }]).length > 0
  return [...(isOver(left) ? (['left'] as const) : []), ...(isOver(right) ? (['right'] as const) : [])]
}

/** A ring as it is where the line does not cross it; else its pieces beyond the partition's two faces. */
function partedAt(
  corners: readonly PlanPoint[],
  line: CutLine,
): readonly { readonly corners: readonly PlanPoint[]; readonly side: WhichRoom }[] {
  const ring = ringOf(corners)
  const places = ring.map(acrossOf(line))
  if (Math.min(...places) >= 0) return [{ corners, side: 'left' }]
  if (Math.max(...places) <= 0) return [{ corners, side: 'right' }]
  const beyond = (side: WhichRoom) =>
    pieces(ring, line, side === 'left' ? 1 : -1).map((piece) => ({ corners: piece, side }))
  return [...beyond('left'), ...beyond('right')]
}

/** The pieces of a ring beyond the partition's face on one side: 1 left, -1 right. */
function pieces(ring: Ring, line: CutLine, side: 1 | -1): readonly (readonly PlanPoint[])[] {
  const { from, to } = line
  const length = Math.hypot(to[0] - from[0], to[1] - from[1])
  const [ux, uy] = [(to[0] - from[0]) / length, (to[1] - from[1]) / length]
  const far = 1 + Math.max(...ring.map(([x, y]) => Math.hypot(x - from[0], y - from[1])))
  const near = side > 0 ? line.leftMm : -line.rightMm
  const at = (along: Millimetres, across: Millimetres): Point => [
    from[0] + ux * along - uy * across,
    from[1] + uy * along + ux * across,
  ]
  const beyond = near + side * far
  const half = { outline: [at(-far, near), at(far, near), at(far, beyond), at(-far, beyond)], holes: [] }
  return intersection([{ outline: ring, holes: [] }], [half]).map(({ outline }) =>
    outline.map(([xMm, yMm]) => ({ xMm, yMm })),
  )
}
