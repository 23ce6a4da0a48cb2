import type { Point, Ring } from '#geometry/polygon.ts'
import type { Millimetres } from '#units/quantity.ts'

/** How far a survey that was walked round misses the corner it began at. */
export interface Misclosure {
  /** The end of the last wall, seen from the first corner. */
  readonly xMm: Millimetres
  readonly yMm: Millimetres
  readonly distanceMm: Millimetres
  /** Summed length of the walls as measured. */
  readonly perimeterMm: Millimetres
  /** The perimeter over the distance, as surveyors give it: 1 in so many; null where it closes to the dot. */
  readonly oneIn: number | null
}

/** The end of a survey still counts as the first corner within this share of the perimeter: our choice. */
const NEAR_SHARE = 0.02
/** ... and within this, however large the room is, mm: our choice, less than the shortest wall worth measuring. */
const NEAR_MM = 300
/** Corners closer than this are one, mm. */
const SAME_MM = 1
/** A triangle walked round and back. */
const LEAST_CORNERS = 4

/**
 * What a survey misses by.
 * @param corners  mm, in the order walked, the end of the last wall among them
 */
export function misclosureOf(corners: Ring): Misclosure {
  const [first, last] = [corners[0], corners.at(-1)]
  const perimeterMm = runLengths(corners).at(-1) ?? 0
  if (!first || !last) return { xMm: 0, yMm: 0, distanceMm: 0, perimeterMm, oneIn: null }
  const [xMm, yMm] = [last[0] - first[0], last[1] - first[1]]
  const distanceMm = Math.hypot(xMm, yMm)
  return { xMm, yMm, distanceMm, perimeterMm, oneIn: distanceMm === 0 ? null : perimeterMm / distanceMm }
}

/** Whether the last wall came back to the first corner, to the millimetre. */
export function returnsToFirst(corners: Ring): boolean {
  return corners.length >= LEAST_CORNERS && misclosureOf(corners).distanceMm < SAME_MM
}

/**
 * Whether the last wall was meant to end on the first corner and does not quite: within 2 % of the perimeter and 300 mm
 * (both our choice), but more than the millimetre within which two corners are one.
 */
export function nearlyCloses(corners: Ring): boolean {
  if (corners.length < LEAST_CORNERS) return false
  const { distanceMm, perimeterMm } = misclosureOf(corners)
  return distanceMm >= SAME_MM && distanceMm <= Math.min(NEAR_SHARE * perimeterMm, NEAR_MM)
}

/**
 * The survey with its misclosure spread over all walls: every corner moves against it in proportion to the length run so
 * far, so that each wall changes in proportion to its own length and the last corner lands on the first.
 * @returns as many corners as given; the last is the first
 * @source compass rule of plane surveying (linear adjustment of a traverse), standard textbook matter, memory
 */
export function spreadMisclosure(corners: Ring): Point[] {
  const { xMm, yMm, perimeterMm } = misclosureOf(corners)
  const [first] = corners
  if (!first || perimeterMm === 0) return [...corners]
  return runLengths(corners).map((run, index) => {
    const [x, y] = corners[index] ?? first
    const share = run / perimeterMm
    return index === corners.length - 1 ? first : ([x - share * xMm, y - share * yMm] as const)
  })
}

/** The survey with the end of its last wall put on the first corner: only the last wall changes. */
export function moveEndOntoFirst(corners: Ring): Point[] {
  const [first] = corners
  return first && corners.length > 1 ? [...corners.slice(0, -1), first] : [...corners]
}

/** Length of each wall walked, from corner to corner, mm. */
export function wallLengths(corners: Ring): Millimetres[] {
  return corners.slice(1).map(([x, y], index) => {
    const [fromX, fromY] = corners[index] ?? [x, y]
    return Math.hypot(x - fromX, y - fromY)
  })
}

/** Length walked before each corner, mm. */
function runLengths(corners: Ring): Millimetres[] {
  let run = 0
  return corners.length === 0 ? [] : [0, ...wallLengths(corners).map((length) => (run += length))]
}
