import type { CeilingPart, Drop, PlanPoint, Room } from '#analysis/room.ts'
import { intersection } from '#geometry/clip.ts'
import type { CutLine } from '#geometry/cutOutline.ts'
import { centroid } from '#geometry/outline.ts'
import type { Point, Ring } from '#geometry/polygon.ts'
import { ringOf } from '#state/commands/rings.ts'
import type { Millimetres } from '#units/quantity.ts'

/** What stands in or hangs over a room, and the heights measured there. */
export type Things = Pick<Room, 'heights' | 'ceilingParts' | 'obstacles' | 'drops' | 'furniture'>

interface Shared<Thing> {
  readonly left: readonly Thing[]
  readonly right: readonly Thing[]
}

/**
 * Shares out what stands in a room that is cut in two: each thing goes where its middle lies, and what hangs across the
 * partition is cut in two by it. Both rooms keep all heights, so that their ceilings stay the planes they were.
 */
export function shareThings(
  room: Room,
  line: CutLine,
  give: (prefix: string) => string,
): { readonly left: Things; readonly right: Things } {
  const side = acrossOf(line)
  const middle = ({ corners }: { readonly corners: readonly PlanPoint[] }) => side(centroid(ringOf(corners)) ?? [0, 0])
  const obstacles = byMiddle(room.obstacles, middle)
  const furniture = byMiddle(room.furniture, ({ xMm, yMm }) => side([xMm, yMm]))
  const drops = shareRings(room.drops, line, (drop: Drop) => ({ ...drop, id: give('drop') }))
  const ceilingParts = shareRings(room.ceilingParts, line, (part: CeilingPart) => ({
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

function byMiddle<Thing>(things: readonly Thing[], across: (thing: Thing) => Millimetres): Shared<Thing> {
  return { left: things.filter((thing) => across(thing) >= 0), right: things.filter((thing) => across(thing) < 0) }
}

/** Rings wholly on one side stay as they are; the first piece of one that is cut keeps its id. */
function shareRings<Thing extends { readonly corners: readonly PlanPoint[] }>(
  things: readonly Thing[],
  line: CutLine,
  copy: (thing: Thing) => Thing,
): Shared<Thing> {
  const side = acrossOf(line)
  const left: Thing[] = []
  const right: Thing[] = []
  for (const thing of things) {
    const ring = ringOf(thing.corners)
    const places = ring.map(side)
    if (Math.min(...places) >= 0) left.push(thing)
    else if (Math.max(...places) <= 0) right.push(thing)
    else {
      const cut = (keep: 1 | -1) => pieces(ring, line, keep).map((corners) => ({ ...thing, corners }))
      const [kept, ...others] = cut(1)
      const beyond = cut(-1)
      left.push(...(kept ? [kept, ...others.map(copy)] : []))
      right.push(...(kept ? beyond.map(copy) : beyond.map((piece, k) => (k === 0 ? piece : copy(piece)))))
    }
  }
  return { left, right }
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
