import type { Point } from '#geometry/polygon.ts'
import { type LengthUnit, type Millimetres, MM_PER_INCH } from '#units/quantity.ts'

/** A line a dragged corner likes to lie on. */
export interface SnapLine {
  readonly through: Point
  /** Unit direction. */
  readonly along: Point
  /** Lower wins: right angles at neighbours before alignment with far corners. */
  readonly rank: number
}

export interface Snapped {
  readonly point: Point
  /** Lines that hold the point, from the corner they come from to the point. */
  readonly guides: readonly (readonly [Point, Point])[]
}

export interface SnapInput {
  readonly at: Point
  readonly lines: readonly SnapLine[]
  /** How near a line must pass to hold the point. */
  readonly tolerance: Millimetres
  /** Grid on which lengths and free places fall. */
  readonly step: Millimetres
  /** Nothing holds the point (Alt is down): it falls on whole millimetres or sixteenths of an inch. */
  readonly free: boolean
  readonly finest: Millimetres
}

/** Lengths fall on 10 mm or half inches. */
export function gridStep(unit: LengthUnit): Millimetres {
  return unit === 'mm' ? 10 : MM_PER_INCH / 2
}

/** With snapping released: whole millimetres or sixteenths of an inch. */
export function finestStep(unit: LengthUnit): Millimetres {
  return unit === 'mm' ? 1 : MM_PER_INCH / 16
}

/** Where a dragged corner comes to lie: where two lines meet, on one line at a whole step, or on the grid. */
export function snapPoint(input: SnapInput): Snapped {
  const { at, step } = input
  if (input.free) return { point: roundPoint(at, input.finest), guides: [] }
  const near = input.lines
    .map((line) => ({ line, distance: distanceTo(line, at) }))
    .filter(({ distance }) => distance <= input.tolerance)
    .sort((a, b) => a.line.rank - b.line.rank || a.distance - b.distance)
    .map(({ line }) => line)
  const [first] = near
  if (!first) return { point: roundPoint(at, step), guides: [] }
  for (const second of near.slice(1)) {
    const meeting = crossing(first, second)
    if (meeting && distance(meeting, at) <= 2 * input.tolerance) {
      return { point: meeting, guides: guidesOf([first, second], meeting) }
    }
  }
  const along = dot(first.along, [at[0] - first.through[0], at[1] - first.through[1]])
  const point = onLine(first, roundTo(along, step))
  return { point, guides: guidesOf([first], point) }
}

/** Lines for a corner that moves between two neighbours: level and plumb through all corners, square to the next walls. */
export function cornerLines(corners: readonly Point[], index: number): SnapLine[] {
  const count = corners.length
  const lines: SnapLine[] = []
  for (const direction of [-1, 1]) {
    const neighbour = corners[wrap(index + direction, count)]
    const beyond = corners[wrap(index + 2 * direction, count)]
    if (!neighbour || !beyond || count < 3) continue
    lines.push(...axes(neighbour, 0))
    lines.push(...square(beyond, neighbour))
  }
  corners.forEach((corner, other) => {
    if (other !== index) lines.push(...axes(corner, 2))
  })
  return lines
}

/** Lines for the next corner of an outline being drawn: level, plumb and square to the last wall, in line with earlier corners. */
export function drawingLines(points: readonly Point[]): SnapLine[] {
  const last = points.at(-1)
  if (!last) return []
  const before = points.at(-2)
  return [
    ...axes(last, 0),
    ...(before ? square(before, last) : []),
    ...points.slice(0, -1).flatMap((point) => axes(point, 2)),
  ]
}

/** How far a wall moves: to where it falls in line with another corner, or to the grid. */
export function snapDistance(
  distanceMm: Millimetres,
  levels: readonly Millimetres[],
  { tolerance, step, free, finest }: Pick<SnapInput, 'tolerance' | 'step' | 'free' | 'finest'>,
): Millimetres {
  if (free) return roundTo(distanceMm, finest)
  const best = [...levels].sort((a, b) => Math.abs(a - distanceMm) - Math.abs(b - distanceMm))[0]
  if (best !== undefined && Math.abs(best - distanceMm) <= tolerance) return best
  return roundTo(distanceMm, step)
}

export function roundTo(value: number, step: number): number {
  const rounded = Math.round(value / step) * step
  return rounded === 0 ? 0 : rounded
}

export function distance(a: Point, b: Point): Millimetres {
  return Math.hypot(a[0] - b[0], a[1] - b[1])
}

function axes(through: Point, rank: number): SnapLine[] {
  return [
    { through, along: [1, 0], rank },
    { through, along: [0, 1], rank },
  ]
}

/** The line through b square to the wall from a to b, where that wall is neither level nor plumb. */
function square(a: Point, b: Point): SnapLine[] {
  const length = distance(a, b)
  if (length < 1) return []
  const along: Point = [-(b[1] - a[1]) / length, (b[0] - a[0]) / length]
  const isOnAxis = Math.abs(along[0]) < 1e-6 || Math.abs(along[1]) < 1e-6
  return isOnAxis ? [] : [{ through: b, along, rank: 1 }]
}

function guidesOf(lines: readonly SnapLine[], point: Point): (readonly [Point, Point])[] {
  return lines.filter((line) => distance(line.through, point) > 1).map((line) => [line.through, point] as const)
}

function crossing(a: SnapLine, b: SnapLine): Point | null {
  const cross = a.along[0] * b.along[1] - a.along[1] * b.along[0]
  if (Math.abs(cross) < 0.2) return null
  const offset: Point = [b.through[0] - a.through[0], b.through[1] - a.through[1]]
  return onLine(a, (offset[0] * b.along[1] - offset[1] * b.along[0]) / cross)
}

function onLine(line: SnapLine, along: number): Point {
  return [line.through[0] + line.along[0] * along, line.through[1] + line.along[1] * along]
}

function distanceTo(line: SnapLine, point: Point): Millimetres {
  const offset: Point = [point[0] - line.through[0], point[1] - line.through[1]]
  return Math.abs(offset[0] * line.along[1] - offset[1] * line.along[0])
}

function dot(a: Point, b: Point): number {
  return a[0] * b[0] + a[1] * b[1]
}

function roundPoint(point: Point, step: number): Point {
  return [roundTo(point[0], step), roundTo(point[1], step)]
}

function wrap(index: number, count: number): number {
  return ((index % count) + count) % count
}
