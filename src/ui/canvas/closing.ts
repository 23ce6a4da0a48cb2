import type { Point } from '#geometry/polygon.ts'
import { moveEndOntoFirst, spreadMisclosure, wallLengths } from '#geometry/survey.ts'
import { degrees } from '#ui/canvas/drawWords.ts'
import type { Millimetres } from '#units/quantity.ts'
import { unreachable } from '#units/result.ts'

/** What becomes of a survey that does not quite meet: spread over all walls, its last corner moved, or a short wall kept. */
export type ClosingWay = 'spread' | 'move' | 'keep'

/** The corners of the room, the first not repeated; null closes what was drawn as it is. */
export function closedOutline(points: readonly Point[], way: ClosingWay | null): readonly Point[] {
  if (way === null || way === 'keep') return points
  return walkedBack(points, way).slice(0, -1)
}

/** One wall as measured and as closed. */
export interface ClosingRow {
  readonly wall: number
  /** null: the short wall that nobody measured. */
  readonly measuredMm: Millimetres | null
  readonly closedMm: Millimetres
  /** How far the wall turns, degrees counter-clockwise. */
  readonly turn: number
}

/** Every wall before and after closing in this way, in order. */
export function closingRows(points: readonly Point[], way: ClosingWay): ClosingRow[] {
  const measured = wallLengths(points)
  const closed = walkedBack(points, way)
  return wallLengths(closed).map((closedMm, index) => {
    const isMeasured = index < measured.length
    return {
      wall: index + 1,
      measuredMm: isMeasured ? (measured[index] ?? null) : null,
      closedMm,
      turn: isMeasured ? turnOf(points, closed, index) : 0,
    }
  })
}

/** Corners in order, the last of them the first again. */
function walkedBack(points: readonly Point[], way: ClosingWay): readonly Point[] {
  switch (way) {
    case 'spread':
      return spreadMisclosure(points)
    case 'move':
      return moveEndOntoFirst(points)
    case 'keep':
      return [...points, ...points.slice(0, 1)]
    default:
      return unreachable(way)
  }
}

function turnOf(before: readonly Point[], after: readonly Point[], index: number): number {
  const [a, b, c, d] = [before[index], before[index + 1], after[index], after[index + 1]]
  if (!a || !b || !c || !d) return 0
  const turn = degrees(c, d) - degrees(a, b)
  return ((turn + 540) % 360) - 180
}
