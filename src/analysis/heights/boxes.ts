import type { RoomLevels } from '#analysis/heights/levels.ts'
import { planeAt } from '#analysis/heights/plane.ts'
import type { Drop } from '#analysis/room.ts'
import { insetRoom } from '#geometry/inset/insetRoom.ts'
import { centroid } from '#geometry/outline.ts'
import type { Point, Polygon } from '#geometry/polygon.ts'
import type { Millimetres } from '#units/quantity.ts'

/** A drop as it ends up: its box in plan, and the level of its boxed underside over the datum. */
export interface DropBox {
  readonly id: string
  readonly name: string
  readonly plan: readonly Polygon[]
  readonly bottomMm: Millimetres
}

/** Drops with their boxing. An underside is level; its height was measured from the floor at the drop's middle. */
export function dropBoxes(levels: RoomLevels, drops: readonly Drop[]): readonly DropBox[] {
  return drops.map((drop) => {
    const bareMm = bareUnderside(levels, drop)
    return { id: drop.id, name: drop.name, plan: grown(drop), bottomMm: bareMm - drop.boxBelowMm }
  })
}

/** Level of a drop's bare underside over the datum. */
export function bareUnderside(levels: RoomLevels, drop: Drop): Millimetres {
  return planeAt(levels.floor, centroid(outlineOf(drop)) ?? [0, 0]) + drop.undersideMm
}

/** The drop's outline moved outward by its boxing at the sides; as drawn, where its sides would run into each other. */
function grown(drop: Drop): readonly Polygon[] {
  const outline = outlineOf(drop)
  const grownBy = (mm: Millimetres) => insetRoom({ outline, depthsMm: outline.map(() => -mm), obstacles: [] })
  const box = grownBy(drop.boxSidesMm)
  if (box.ok) return box.value.clear
  const bare = grownBy(0)
  return bare.ok ? bare.value.clear : []
}

function outlineOf(drop: Drop): Point[] {
  return drop.corners.map((corner): Point => [corner.xMm, corner.yMm])
}
