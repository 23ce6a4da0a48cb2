import type { Diagonal, Room } from '#analysis/room.ts'
import { cornerFromDiagonal, type NoTriangle, type SpannedCorner } from '#geometry/diagonal.ts'
import { fixed, formatThickness } from '#units/format.ts'
import type { LengthUnit, Millimetres } from '#units/quantity.ts'

/** A measured diagonal against the plan. */
export interface DiagonalFacts {
  readonly drawnMm: Millimetres
  /** Measured less drawn. */
  readonly differenceMm: Millimetres
  /** The corners it spans: those with one wall to each of its ends. */
  readonly corners: readonly { readonly number: number; readonly is: SpannedCorner | NoTriangle }[]
}

/** What a measured diagonal says of the plan; null where one of its corners is gone. */
export function diagonalFacts(room: Room, { from, to, measuredMm }: Omit<Diagonal, 'id'>): DiagonalFacts | null {
  const [first, last] = [from, to].map((id) => room.corners.findIndex((corner) => corner.id === id))
  if (first === undefined || last === undefined) return null
  const distance = (a: number, b: number) => {
    const [p, q] = [room.corners[a], room.corners[b]]
    return p && q ? Math.hypot(p.xMm - q.xMm, p.yMm - q.yMm) : Number.NaN
  }
  const drawnMm = distance(first, last)
  if (Number.isNaN(drawnMm)) return null
  const count = room.corners.length
  const between = [
    [first, last],
    [last, first],
  ].flatMap(([a = 0, b = 0]) => ((a + 2) % count === b ? [(a + 1) % count] : []))
  return {
    drawnMm,
    differenceMm: measuredMm - drawnMm,
    corners: between.map((at) => ({
      number: at + 1,
      is: cornerFromDiagonal(distance(first, at), distance(at, last), measuredMm),
    })),
  }
}

/** Corner 2 measures 90.4°: out of square by 0.4°, 1" open. */
export function spannedWords(number: number, corner: SpannedCorner | NoTriangle, unit: LengthUnit): string {
  if (corner === 'too-long') {
    return `Corner ${number}: the measured diagonal is longer than both walls in one line; measure one of the three again.`
  }
  if (corner === 'too-short') {
    return `Corner ${number}: the measured diagonal is shorter than the two walls leave; measure one of the three again.`
  }
  const angle = `Corner ${number} measures ${fixed(corner.angleDeg, 2)}°`
  const off = formatThickness(Math.abs(corner.outOfSquareMm), unit)
  if (Math.abs(corner.outOfSquareDeg) < SQUARE_DEG) return `${angle}: square.`
  if (Math.abs(corner.outOfSquareDeg) > FAR_FROM_SQUARE_DEG) return `${angle}.`
  const way = corner.outOfSquareDeg > 0 ? 'open' : 'closed in'
  return `${angle}: out of square by ${fixed(Math.abs(corner.outOfSquareDeg), 2)}°, ${off} ${way} at the far end of the wall.`
}

/** Less than this is square, degrees: 1 mm on 11 m. */
const SQUARE_DEG = 0.005

/** A corner further from a right angle than this was never meant to be one, degrees. */
const FAR_FROM_SQUARE_DEG = 15
