import type { Bounds } from '#drawing/frame.ts'
import type { Point } from '#geometry/polygon.ts'
import { LARGEST_MM } from '#project/limits.ts'
import type { Underlay } from '#project/project.ts'
import type { Millimetres } from '#units/quantity.ts'
import { fail, ok, type Result } from '#units/result.ts'

/** Where a picture lies in the plan. */
export type Placement = Pick<Underlay, 'xMm' | 'yMm' | 'mmPerPx' | 'angleDeg'>
/** A picture's own size, pixels. */
export type PictureSize = Pick<Underlay, 'widthPx' | 'heightPx'>

/** How much wider than the room a picture is first laid, so that its margins are seen. */
const ROOM_ABOUT = 1.25
/** Two presses nearer than this are one place, pixels of the picture. */
const LEAST_APART_PX = 1

/** A first place for a picture: round the middle of the room, at a guessed scale. */
export function firstPlacement({ widthPx, heightPx }: PictureSize, room: Bounds): Placement {
  const across = Math.max((room.maxX - room.minX) / widthPx, (room.maxY - room.minY) / heightPx)
  return {
    xMm: (room.minX + room.maxX) / 2,
    yMm: (room.minY + room.maxY) / 2,
    mmPerPx: across * ROOM_ABOUT,
    angleDeg: 0,
  }
}

/** A place of the picture, pixels right and up from its middle, in the plan. */
export function inPlan(underlay: Placement, [right, up]: Point): Point {
  const [x, y] = turned([right * underlay.mmPerPx, up * underlay.mmPerPx], underlay.angleDeg)
  return [underlay.xMm + x, underlay.yMm + y]
}

/** A place in the plan, in pixels right and up from the picture's middle. */
export function inPicture(underlay: Placement, [x, y]: Point): Point {
  const [right, up] = turned([x - underlay.xMm, y - underlay.yMm], -underlay.angleDeg)
  return [right / underlay.mmPerPx, up / underlay.mmPerPx]
}

/** The picture's corners in the plan, from the lower left round to the upper left. */
export function pictureCorners(underlay: Placement & PictureSize): readonly Point[] {
  const [right, up] = [underlay.widthPx / 2, underlay.heightPx / 2]
  const corners: readonly Point[] = [
    [-right, -up],
    [right, -up],
    [right, up],
    [-right, up],
  ]
  return corners.map((corner) => inPlan(underlay, corner))
}

export function isOnPicture(underlay: Placement & PictureSize, at: Point): boolean {
  const [right, up] = inPicture(underlay, at)
  return Math.abs(right) <= underlay.widthPx / 2 && Math.abs(up) <= underlay.heightPx / 2
}

export interface Calibration {
  /** Two places of the plan, over the picture as it lies. */
  readonly from: Point
  readonly to: Point
  /** What the tape says between them. */
  readonly distanceMm: Millimetres
  /** Turn the picture so that the two lie level or plumb, whichever is nearer. */
  readonly squares: boolean
}

/** The picture scaled about the first point, so that the distance is true; a sentence where that cannot be. */
export function calibrate(underlay: Placement, calibration: Calibration): Result<Placement, string> {
  const { from, to, distanceMm, squares } = calibration
  const shown = Math.hypot(to[0] - from[0], to[1] - from[1])
  if (shown / underlay.mmPerPx < LEAST_APART_PX) {
    return fail('The two points are the same place; press them further apart. The picture stays as it lies.')
  }
  if (!(distanceMm > 0)) return fail('The distance has to be more than 0. The picture stays as it lies.')
  const ratio = distanceMm / shown
  const turn = squares ? turnToSquare(from, to) : 0
  const [x, y] = turned([underlay.xMm - from[0], underlay.yMm - from[1]], turn)
  const placed: Placement = {
    xMm: from[0] + x * ratio,
    yMm: from[1] + y * ratio,
    mmPerPx: underlay.mmPerPx * ratio,
    angleDeg: plainAngle(underlay.angleDeg + turn),
  }
  if (Math.max(Math.abs(placed.xMm), Math.abs(placed.yMm)) > LARGEST_MM || placed.mmPerPx > LARGEST_MM) {
    return fail('With this distance the picture would lie outside any plan; check the unit. It stays as it lies.')
  }
  return ok(placed)
}

/** Degrees to turn a line by until it lies level or plumb, -45 to 45. */
function turnToSquare(from: Point, to: Point): number {
  const angle = (Math.atan2(to[1] - from[1], to[0] - from[0]) * 180) / Math.PI
  return Math.round(angle / 90) * 90 - angle
}

/** The same direction, above -180 and up to 180. */
export function plainAngle(degrees: number): number {
  const plain = degrees - 360 * Math.ceil((degrees - 180) / 360)
  return plain === 0 ? 0 : plain
}

function turned([x, y]: Point, degrees: number): Point {
  const radians = (degrees * Math.PI) / 180
  return [x * Math.cos(radians) - y * Math.sin(radians), x * Math.sin(radians) + y * Math.cos(radians)]
}

/** How far above a picture its turning handle stands, px of the screen. */
const TURN_AWAY_PX = 26

/** Where the handle stands that turns a picture, in the plan. */
export function turnHandle(underlay: Placement & PictureSize, pxPerMm: number): Point {
  return inPlan(underlay, [0, underlay.heightPx / 2 + TURN_AWAY_PX / (pxPerMm * underlay.mmPerPx)])
}
