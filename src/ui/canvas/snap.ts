import type { Point, Ring } from '#geometry/polygon.ts'
import { type LengthUnit, type Millimetres, MM_PER_INCH } from '#units/quantity.ts'

/** A line a dragged corner likes to lie on. */
export interface SnapLine {
  readonly through: Point
  /** Unit direction. */
  readonly along: Point
  /** Lower wins: right angles at neighbours, then other walls' lines, then 45 degrees and alignment with far corners. */
  readonly rank: number
}

/** A place that holds a dragged corner by itself: another room's corner, the middle of a wall, the foot of a perpendicular. */
export interface SnapPlace {
  readonly at: Point
  /** Where the guide to it begins; null: it needs none. */
  readonly seenFrom: Point | null
}

export interface Snapped {
  readonly point: Point
  /** Lines that hold the point, from the corner they come from to the point. */
  readonly guides: readonly (readonly [Point, Point])[]
}

export interface SnapInput {
  readonly at: Point
  readonly lines: readonly SnapLine[]
  /** Absent: none. They hold before any line does. */
  readonly places?: readonly SnapPlace[] | undefined
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

/** Where a dragged corner comes to lie: on a place, where two lines meet, on one line at a whole step, or on the grid. */
export function snapPoint(input: SnapInput): Snapped {
  const { at, step } = input
  if (input.free) return { point: roundPoint(at, input.finest), guides: [] }
  const place = nearestPlace(input)
  if (place) return { point: place.at, guides: place.seenFrom ? [[place.seenFrom, place.at]] : [] }
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

function nearestPlace({ at, places = [], tolerance }: SnapInput): SnapPlace | null {
  let best: SnapPlace | null = null
  let least = tolerance
  for (const place of places) {
    const away = distance(place.at, at)
    if (away <= least) {
      best = place
      least = away
    }
  }
  return best
}

/**
 * Lines for a corner that moves between two neighbours: level, plumb and at 45 degrees through them, square to the next
 * walls and in line with them, level and plumb through all other corners and through the middles of walls.
 * @param others  outlines of the project's other rooms
 */
export function cornerLines(corners: readonly Point[], index: number, others: readonly Ring[] = []): SnapLine[] {
  const count = corners.length
  const lines: SnapLine[] = []
  for (const direction of [-1, 1]) {
    const neighbour = corners[wrap(index + direction, count)]
    const beyond = corners[wrap(index + 2 * direction, count)]
    if (!neighbour || !beyond || count < 3) continue
    lines.push(...axes(neighbour, 0), ...diagonals(neighbour, 2))
    lines.push(...square(beyond, neighbour), ...inLine(beyond, neighbour, 2))
  }
  corners.forEach((corner, other) => {
    if (other !== index) lines.push(...axes(corner, 3))
    const next = wrap(other + 1, count)
    const end = corners[next]
    if (end && other !== index && next !== index) lines.push(...axes(middleOf(corner, end), 4))
  })
  return [...lines, ...others.flatMap((ring) => ringLines(ring, 2))]
}

/**
 * Lines for the next corner of an outline being drawn: level, plumb, at 45 degrees and square to the last wall, in line
 * with earlier corners and along the walls of other rooms.
 */
export function drawingLines(points: readonly Point[], others: readonly Ring[] = []): SnapLine[] {
  const walls = others.flatMap((ring) => ringLines(ring, 2))
  const last = points.at(-1)
  if (!last) return walls
  const before = points.at(-2)
  return [
    ...axes(last, 0),
    ...(before ? square(before, last) : []),
    ...diagonals(last, 2),
    ...walls,
    ...points.slice(0, -1).flatMap((point) => axes(point, 3)),
  ]
}

/**
 * Places along the walls of outlines that hold a corner: their corners, the middles of their walls, and on each wall the
 * foot of the perpendicular from the last corner.
 */
export function ringPlaces(rings: readonly Ring[], last: Point | null): SnapPlace[] {
  return rings.flatMap((ring) =>
    ring.flatMap((from, i): SnapPlace[] => {
      const to = ring[(i + 1) % ring.length] ?? from
      const foot = last && footWithin(last, from, to)
      return [
        { at: from, seenFrom: null },
        { at: middleOf(from, to), seenFrom: from },
        ...(foot ? [{ at: foot, seenFrom: last }] : []),
      ]
    }),
  )
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

/** Both lines at 45 degrees through a place. */
function diagonals(through: Point, rank: number): SnapLine[] {
  return [
    { through, along: [Math.SQRT1_2, Math.SQRT1_2], rank },
    { through, along: [Math.SQRT1_2, -Math.SQRT1_2], rank },
  ]
}

/** The line a wall runs on, where it is neither level nor plumb: those its corners bring already. */
function inLine(a: Point, b: Point, rank: number): SnapLine[] {
  const length = distance(a, b)
  if (length < 1) return []
  const along: Point = [(b[0] - a[0]) / length, (b[1] - a[1]) / length]
  const isOnAxis = Math.abs(along[0]) < 1e-6 || Math.abs(along[1]) < 1e-6
  return isOnAxis ? [] : [{ through: b, along, rank }]
}

/** The lines that the walls of another outline run on. */
function ringLines(ring: Ring, rank: number): SnapLine[] {
  return ring.flatMap((from, i) => {
    const to = ring[(i + 1) % ring.length] ?? from
    const length = distance(from, to)
    return length < 1 ? [] : [{ through: from, along: [(to[0] - from[0]) / length, (to[1] - from[1]) / length], rank }]
  })
}

function middleOf(a: Point, b: Point): Point {
  return [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2]
}

/** Where the perpendicular from a place meets a wall; null beyond its ends or where it is no way off. */
function footWithin(at: Point, from: Point, to: Point): Point | null {
  const length = distance(from, to)
  if (length < 1) return null
  const along: Point = [(to[0] - from[0]) / length, (to[1] - from[1]) / length]
  const share = dot(along, [at[0] - from[0], at[1] - from[1]])
  const foot: Point = [from[0] + along[0] * share, from[1] + along[1] * share]
  return share <= 0 || share >= length || distance(foot, at) < 1 ? null : foot
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
