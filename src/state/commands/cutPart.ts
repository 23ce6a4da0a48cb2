import type { Corner, Opening, Room, Wall } from '#analysis/room.ts'
import type { OutlinePart } from '#geometry/cutOutline.ts'
import type { Point } from '#geometry/polygon.ts'
import type { Millimetres } from '#units/quantity.ts'

/** One of the two rooms a partition makes of one. */
export interface RoomPart {
  /** With what stands in its walls; what stands in the room is shared out apart. */
  readonly room: Room
  /** The wall that shows the partition. */
  readonly closingWall: string
  /** Surfaces of the former room and their counterparts under new ids. */
  readonly copies: ReadonlyMap<string, string>
}

/** What a part is called, and whether the walls that were cut keep their ids in it. */
export interface PartNaming {
  readonly id: string
  readonly name: string
  readonly ceilingId: string
  readonly floorId: string
  readonly keepsWallIds: boolean
  /** What the partition is built of. */
  readonly construction: string
  readonly give: (prefix: string) => string
}

/** What rounding may leave of a length, mm. */
const ROUNDING_MM = 1e-3

/** The room on one side of a partition: its corners, walls, openings and diagonals. */
export function partOfRoom(room: Room, part: OutlinePart, naming: PartNaming): RoomPart {
  const { give } = naming
  const count = room.corners.length
  const kept = (((part.lastEdge - part.firstEdge) % count) + count) % count
  const inner = Array.from({ length: kept }, (_, k) => room.corners[(part.firstEdge + 1 + k) % count]!)
  const corners = [newCorner(part.start, give), ...inner, newCorner(part.end, give)]
  const copies = new Map<string, string>()
  if (room.ceiling.id !== naming.ceilingId) copies.set(room.ceiling.id, naming.ceilingId)
  if (room.floor.id !== naming.floorId) copies.set(room.floor.id, naming.floorId)
  const walls = Array.from({ length: kept + 1 }, (_, k): Wall => {
    const wall = room.walls[(part.firstEdge + k) % count]!
    const isCut = k === 0 || k === kept
    const id = isCut && !naming.keepsWallIds ? give('wall') : wall.id
    if (id !== wall.id) copies.set(wall.id, id)
    return { ...wall, id, from: corners[k]!.id, to: corners[k + 1]!.id }
  })
  const closing = partitionWall(naming.construction, give('wall'), corners.at(-1)!.id, corners[0]!.id)
  const first = inner.findIndex(({ id }) => id === room.corners[0]?.id)
  const ring = turned(corners, [...walls, closing], Math.max(0, first) + 1)
  const surfaces = new Set([naming.ceilingId, naming.floorId, ...walls.map(({ id }) => id)])
  return {
    closingWall: closing.id,
    copies,
    room: {
      ...room,
      ...ring,
      id: naming.id,
      name: naming.name,
      ceiling: { ...room.ceiling, id: naming.ceilingId },
      floor: { ...room.floor, id: naming.floorId },
      openings: openingsOf(room, part, (id) => copies.get(id) ?? id),
      // What goes through a surface that was cut stays with the first room, whose surface keeps the id.
      ...(room.ducts && { ducts: room.ducts.filter(({ surface }) => surfaces.has(surface)) }),
      diagonals: room.diagonals.filter(({ from, to }) =>
        [from, to].every((id) => inner.some((corner) => corner.id === id)),
      ),
    },
  }
}

function newCorner([xMm, yMm]: Point, give: (prefix: string) => string): Corner {
  return { id: give('corner'), xMm, yMm }
}

/** The face a partition shows a room: bare, and what it is built of behind it. */
function partitionWall(existing: string, id: string, from: string, to: string): Wall {
  return { id, from, to, existing, farSide: 'own-house', measuredTo: 'structure', lining: null, outOfTrueMm: 0 }
}

/** The same ring, begun at another of its corners. */
export function turned(
  corners: readonly Corner[],
  walls: readonly Wall[],
  first: number,
): { readonly corners: readonly Corner[]; readonly walls: readonly Wall[] } {
  return {
    corners: [...corners.slice(first), ...corners.slice(0, first)],
    walls: [...walls.slice(first), ...walls.slice(0, first)],
  }
}

/** Openings that stand wholly in what is left of the room's walls on this side. */
function openingsOf(room: Room, part: OutlinePart, newId: (id: string) => string): readonly Opening[] {
  const count = room.corners.length
  const kept = (((part.lastEdge - part.firstEdge) % count) + count) % count
  const begins = distance(room.corners[part.firstEdge]!, part.start)
  const ends = distance(room.corners[part.lastEdge]!, part.end)
  return room.openings.flatMap((opening) => {
    const index = room.walls.findIndex((wall) => wall.id === opening.wall)
    const place = (((index - part.firstEdge) % count) + count) % count
    if (index < 0 || place > kept) return []
    const from = place === 0 ? opening.fromMm - begins : opening.fromMm
    if (from < -ROUNDING_MM) return []
    if (place === kept && from + opening.widthMm > ends + ROUNDING_MM) return []
    return [{ ...opening, wall: newId(opening.wall), fromMm: Math.max(0, from) }]
  })
}

function distance(corner: Corner, [x, y]: Point): Millimetres {
  return Math.hypot(x - corner.xMm, y - corner.yMm)
}
