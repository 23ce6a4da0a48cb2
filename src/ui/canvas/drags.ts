import type { Room } from '#analysis/room.ts'
import type { Point, Polygon } from '#geometry/polygon.ts'
import type { Command } from '#state/command.ts'
import { moveCorner } from '#state/commands/outline.ts'
import { moveWall } from '#state/commands/wall.ts'
import type { Measure } from '#ui/canvas/measures.ts'
import { cornerPoints } from '#ui/canvas/nearest.ts'
import type { PlanRoom } from '#ui/canvas/planRoom.ts'
import type { Press } from '#ui/canvas/pointer.ts'
import { cornerLines, finestStep, gridStep, ringPlaces, snapDistance, snapPoint } from '#ui/canvas/snap.ts'
import { cornerLabel } from '#ui/words.ts'
import { formatLength } from '#units/format.ts'
import type { LengthUnit, Millimetres } from '#units/quantity.ts'

/** What a drag starts from: the room as recorded. */
export interface DragSetting {
  readonly room: PlanRoom
  readonly units: LengthUnit
  /** px per mm. */
  readonly scale: number
  readonly start: Point
  /** What the linings leave of the room, under the scheme on the page; empty: not known. */
  readonly clear: readonly Polygon[]
  /** The project's other rooms. */
  readonly others: readonly Room[]
}

/** Where a drag has come to: the command a release would run, and what is said meanwhile. */
export interface DragStep {
  readonly command: Command
  readonly sentence: string
  readonly guides: readonly (readonly [Point, Point])[]
  /** Distances drawn meanwhile. */
  readonly measures?: readonly Measure[] | undefined
}

export type Drag = (press: Press) => DragStep

/** How near a line must pass to hold a dragged thing, px. */
export const HOLD = 9

/** A corner in the hand. */
export function cornerDrag({ room, units, scale, start, others }: DragSetting, cornerId: string): Drag | null {
  const points = cornerPoints(room)
  const index = room.corners.findIndex((corner) => corner.id === cornerId)
  const corner = points[index]
  if (!corner) return null
  const rings = others.map(cornerPoints)
  const lines = cornerLines(points, index, rings)
  const places = ringPlaces(rings, null)
  return ({ at, free }) => {
    const { point, guides } = snapPoint({
      at: [corner[0] + at[0] - start[0], corner[1] + at[1] - start[1]],
      lines,
      places,
      tolerance: HOLD / scale,
      step: gridStep(units),
      free,
      finest: finestStep(units),
    })
    return {
      command: moveCorner(room.id, cornerId, point[0], point[1]),
      sentence: `${cornerLabel(room, cornerId)}.`,
      guides,
    }
  }
}

/** A wall in the hand: it moves parallel to itself. */
export function wallDrag({ room, units, scale, start, others }: DragSetting, wallId: string): Drag | null {
  const points = cornerPoints(room)
  const index = room.walls.findIndex((wall) => wall.id === wallId)
  const from = points[index]
  const to = points[(index + 1) % points.length]
  if (!from || !to) return null
  const length = Math.hypot(to[0] - from[0], to[1] - from[1])
  const inward: Point = [-(to[1] - from[1]) / length, (to[0] - from[0]) / length]
  const across = (point: Point): Millimetres => (point[0] - from[0]) * inward[0] + (point[1] - from[1]) * inward[1]
  const levels = [...points, ...others.flatMap(cornerPoints)].map(across).filter((level) => Math.abs(level) > 1)
  const startLevel = across(start)
  return ({ at, free }) => {
    const distance = snapDistance(across(at) - startLevel, levels, {
      tolerance: HOLD / scale,
      step: gridStep(units),
      free,
      finest: finestStep(units),
    })
    const shift: Point = [inward[0] * distance, inward[1] * distance]
    const line = [from, to].map((point): Point => [point[0] + shift[0], point[1] + shift[1]])
    const isLevel = levels.some((level) => Math.abs(level - distance) < 0.01)
    const way = distance >= 0 ? 'into the room' : 'outward'
    return {
      command: moveWall(room.id, wallId, distance),
      sentence: `Wall ${index + 1} moved ${formatLength(Math.abs(distance), units)} ${way}.`,
      guides: isLevel && line[0] && line[1] ? [[line[0], line[1]]] : [],
    }
  }
}
