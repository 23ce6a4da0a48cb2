import { footprintOf } from '#analysis/furniture/footprint.ts'
import { type Faces, floorTakesAt } from '#analysis/heights/faces.ts'
import type { Drop, Room } from '#analysis/room.ts'
import type { Scheme, SilencerBox } from '#analysis/scheme.ts'
import { difference } from '#geometry/clip.ts'
import { perimeter } from '#geometry/outline.ts'
import type { Point, Polygon } from '#geometry/polygon.ts'

/** A silencer box of a scheme with its corners in the plan. */
export interface PlacedBox {
  readonly box: SilencerBox
  readonly footprint: readonly Point[]
}

/** The silencer boxes a scheme puts into a room. */
export function boxesIn({ id }: Pick<Room, 'id'>, { boxes }: Pick<Scheme, 'boxes'>): readonly PlacedBox[] {
  return (boxes ?? []).filter(({ room }) => room === id).map((box) => ({ box, footprint: footprintOf(box) }))
}

/** A box with nothing under it stands on the floor and takes floor; any other one hangs and takes height. */
export function stands({ box }: Pick<PlacedBox, 'box'>): boolean {
  return box.undersideMm === 0
}

/** A piece of floor thinner than this is no floor, mm. @source our own choice */
const THINNEST_MM = 1

/** The clear plan beside the boxes that stand in it, largest part first. */
export function besideBoxes(clear: readonly Polygon[], boxes: readonly PlacedBox[]): readonly Polygon[] {
  const standing = boxes.filter(stands).map(({ footprint }) => ({ outline: footprint, holes: [] }))
  if (standing.length === 0) return clear
  return difference(clear, standing)
    .filter(({ outline, areaMm2 }) => 2 * areaMm2 > THINNEST_MM * perimeter(outline))
    .sort((a, b) => b.areaMm2 - a.areaMm2)
}

/** The room with its hanging boxes among what hangs from the ceiling; the same room where there are none. */
export function underBoxes(room: Room, faces: Faces, boxes: readonly PlacedBox[]): Room {
  const hanging = boxes.filter((placed) => !stands(placed))
  return hanging.length === 0 ? room : { ...room, drops: [...room.drops, ...hanging.map((one) => asDrop(one, faces))] }
}

/** A drop's underside counts from the old floor, a box's from the new one. */
function asDrop({ box, footprint }: PlacedBox, faces: Faces): Drop {
  return {
    id: box.id,
    name: box.name,
    corners: footprint.map(([xMm, yMm]) => ({ xMm, yMm })),
    undersideMm: box.undersideMm + floorTakesAt(faces, [box.xMm, box.yMm]),
    boxBelowMm: 0,
    boxSidesMm: 0,
  }
}
