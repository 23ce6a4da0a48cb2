import { type FittedPlane, levelPlane, planeAt, planeThrough, shifted } from '#analysis/heights/plane.ts'
import type { Plane } from '#analysis/results.ts'
import type { CeilingShape, HeightPoint, Room } from '#analysis/room.ts'
import type { Point } from '#geometry/polygon.ts'
import type { Millimetres } from '#units/quantity.ts'

/** Part of the ceiling as drawn, with its own plane over the datum. */
export interface LevelPart {
  readonly id: string
  readonly name: string
  readonly ring: readonly Point[]
  readonly ceiling: Plane
}

/** The floor and the ceiling as they stand, as planes over the datum; of two parts that overlap the later one counts. */
export interface RoomLevels {
  readonly floor: Plane
  readonly ceiling: Plane
  readonly parts: readonly LevelPart[]
  /** Furthest a measured level lies from the plane laid through it and its like. */
  readonly worstMissMm: Millimetres
}

/** What stands on the floor: its thickness, and whether it is laid level or follows the floor below. */
export interface FloorBuilt {
  readonly thicknessMm: Millimetres
  readonly isLaidLevel: boolean
}

/**
 * The planes of a room: the floor through all its measured levels and its parts', every ceiling through its own; with
 * `ceilingShape: 'level'` each ceiling level at its own lowest.
 */
export function roomLevels(room: Room): RoomLevels {
  const floor = planeThrough(
    [...room.heights, ...room.ceilingParts.flatMap((part) => part.heights)].map((point) => ({
      xMm: point.xMm,
      yMm: point.yMm,
      levelMm: point.floorMm,
    })),
  )
  const main = ceilingThrough(room.heights, room.ceilingShape)
  const parts = room.ceilingParts.map(({ id, name, corners, heights }) => ({
    id,
    name,
    ring: corners.map((corner): Point => [corner.xMm, corner.yMm]),
    fitted: ceilingThrough(heights, room.ceilingShape),
  }))
  return {
    floor: floor.plane,
    ceiling: main.plane,
    parts: parts.map(({ id, name, ring, fitted }) => ({ id, name, ring, ceiling: fitted.plane })),
    worstMissMm: Math.max(floor.worstMissMm, main.worstMissMm, ...parts.map(({ fitted }) => fitted.worstMissMm)),
  }
}

function ceilingThrough(points: readonly HeightPoint[], shape: CeilingShape): FittedPlane {
  const levels = points.map(({ xMm, yMm, floorMm, heightMm }) => ({ xMm, yMm, levelMm: floorMm + heightMm }))
  if (shape === 'as-measured') return planeThrough(levels)
  return { plane: levelPlane(Math.min(...levels.map(({ levelMm }) => levelMm))), worstMissMm: 0 }
}

/**
 * The face of the new floor. It follows the fall of the old one, where a thickness t takes t / cos(angle) of height; laid
 * level it lies its thickness above the highest place of the old floor over the outline.
 */
export function newFloor(levels: RoomLevels, outline: readonly Point[], built: FloorBuilt): Plane {
  if (!built.isLaidLevel) return shifted(levels.floor, built.thicknessMm)
  return levelPlane(Math.max(...outline.map((corner) => planeAt(levels.floor, corner))) + built.thicknessMm)
}
