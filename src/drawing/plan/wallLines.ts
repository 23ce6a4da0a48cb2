import type { SchemeResult, SurfaceResult } from '#analysis/results.ts'
import type { Room } from '#analysis/room.ts'
import type { Frame } from '#drawing/frame.ts'
import { toTarget } from '#drawing/frame.ts'
import type { Place } from '#drawing/model.ts'
import type { Point } from '#geometry/polygon.ts'

/** A wall as it lies on the target: a start, a direction along it and one into the room. */
export interface WallLine {
  readonly index: number
  readonly id: string
  /** Ends in the plan, mm. */
  readonly from: Point
  readonly to: Point
  readonly lengthMm: number
  /** Ends on the target. */
  readonly a: Place
  readonly b: Place
  /** Target units. */
  readonly length: number
  /** Unit directions on the target: along the wall, and into the room. */
  readonly along: Place
  readonly inward: Place
  /** How far its new face stands inside (outside, negative), mm and target units. */
  readonly depthMm: number
  readonly depth: number
  readonly result: SurfaceResult | null
}

/** Every wall of the outline with a length, in outline order. */
export function wallLines(room: Room, result: SchemeResult | null, frame: Frame): WallLine[] {
  const corners = room.corners.map((corner): Point => [corner.xMm, corner.yMm])
  const turn = signedArea(corners) >= 0 ? 1 : -1
  const surfaces = new Map(result?.surfaces.map((surface) => [surface.id, surface]))
  const lines: WallLine[] = []
  room.walls.forEach((wall, index) => {
    const from = corners[index]
    const to = corners[(index + 1) % corners.length]
    if (from === undefined || to === undefined) return
    const lengthMm = Math.hypot(to[0] - from[0], to[1] - from[1])
    if (!(lengthMm > 0)) return
    const along: Place = [(to[0] - from[0]) / lengthMm, -(to[1] - from[1]) / lengthMm]
    const surface = surfaces.get(wall.id) ?? null
    const depthMm = surface?.netDepthMm ?? 0
    lines.push({
      index,
      id: wall.id,
      from,
      to,
      lengthMm,
      a: toTarget(frame, from),
      b: toTarget(frame, to),
      length: lengthMm * frame.scale,
      along,
      inward: [along[1] * turn, -along[0] * turn],
      depthMm,
      depth: depthMm * frame.scale,
      result: surface,
    })
  })
  return lines
}

/** Place at `s` along the wall and `t` into the room, target units. */
export function onWall(wall: WallLine, s: number, t: number): Place {
  return [wall.a[0] + wall.along[0] * s + wall.inward[0] * t, wall.a[1] + wall.along[1] * s + wall.inward[1] * t]
}

/** Area of a ring, mm2; positive counter-clockwise in the plan. */
export function signedArea(points: readonly Point[]): number {
  let twice = 0
  points.forEach(([x, y], index) => {
    const [nextX, nextY] = points[(index + 1) % points.length]!
    twice += x * nextY - nextX * y
  })
  return twice / 2
}
