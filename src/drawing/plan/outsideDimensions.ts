import { toTarget } from '#drawing/frame.ts'
import type { Mark, Place } from '#drawing/model.ts'
import { dimensionMarks, readingAngle } from '#drawing/plan/dimension.ts'
import type { PlanContext } from '#drawing/plan/planInput.ts'
import { isSeen } from '#drawing/plan/rings.ts'
import { onWall, type WallLine } from '#drawing/plan/wallLines.ts'
import { formatLength } from '#units/format.ts'

/** A stretch of a dimension chain: ends as measured on the drawing, and the length they stand for. */
interface Stretch {
  readonly from: Place
  readonly to: Place
  readonly lengthMm: number
  readonly surfaceId?: string | undefined
  /** The free end of a chain, where a long text may stand. */
  readonly beyond?: 'start' | 'end' | 'neither' | undefined
}

/** Walls that look the same way out, and how far out the whole outline reaches that way. */
interface Side {
  readonly outward: Place
  readonly reach: number
  readonly walls: readonly WallLine[]
}

/** Within half a degree of square. */
const SQUARE = Math.cos((0.5 * Math.PI) / 180)

/**
 * Dimensions outside the outline, in rows: openings, wall by wall, overall. Walls seen from one of the four sides are
 * chained along it; hidden and slanting ones carry their own.
 */
export function outsideDimensions(context: PlanContext): Mark[] {
  const { walls } = context
  const longest = walls.reduce<WallLine | null>(
    (best, wall) => (best && best.length >= wall.length ? best : wall),
    null,
  )
  if (longest === null) return []
  const [x, y] = longest.along
  const outwards: Place[] = [
    [-longest.inward[0], -longest.inward[1]],
    [longest.inward[0], longest.inward[1]],
    [x, y],
    [-x, -y],
  ]
  const sides = outwards.map((outward) => sideOf(walls, outward))
  const chained = new Set(sides.flatMap((side) => side.walls))
  const marks = sides.flatMap((side, index) => sideMarks(context, side, sides[index ^ 1]!))
  for (const wall of walls) {
    if (!chained.has(wall)) marks.push(...ownDimensions(context, wall))
  }
  return marks
}

function reachOf([x, y]: Place, outward: Place): number {
  return x * outward[0] + y * outward[1]
}

function sideOf(walls: readonly WallLine[], outward: Place): Side {
  const reach = Math.max(...walls.map(({ a }) => reachOf(a, outward)))
  const acrossway: Place = [-outward[1], outward[0]]
  const spans = walls.map((wall) => spanOf(wall, outward, acrossway))
  const facing = spans.filter(({ wall }) => -reachOf(wall.inward, outward) > SQUARE)
  const visible = facing
    .filter((span) => !spans.some((other) => other !== span && hides(other, span)))
    .map(({ wall }) => wall)
  visible.sort((p, q) => reachOf(p.a, acrossway) - reachOf(q.a, acrossway))
  return { outward, reach, walls: visible }
}

/** A wall as one side sees it: the stretch it covers, and how far out it stands. */
interface Span {
  readonly wall: WallLine
  readonly low: number
  readonly high: number
  readonly out: number
}

function spanOf(wall: WallLine, outward: Place, acrossway: Place): Span {
  const [from, to] = [reachOf(wall.a, acrossway), reachOf(wall.b, acrossway)]
  const out = Math.max(reachOf(wall.a, outward), reachOf(wall.b, outward))
  return { wall, low: Math.min(from, to), high: Math.max(from, to), out }
}

/** Something of `other` stands further out over the same stretch. */
function hides(other: Span, span: Span): boolean {
  return Math.min(span.high, other.high) - Math.max(span.low, other.low) >= 0.5 && other.out > span.out + 0.5
}

function sideMarks(context: PlanContext, side: Side, opposite: Side): Mark[] {
  const rows: Stretch[][] = []
  const openings = side.walls.flatMap((wall) => openingStretches(context, wall))
  if (openings.length > 0) rows.push(openings)
  const chain = side.walls.map(({ a, b, lengthMm, id }) => ({ from: a, to: b, lengthMm, surfaceId: id }))
  if (chain.length > 0) rows.push(chain)
  const overall = overallStretch(side, context.frame.scale)
  if (overall && side.walls.length > 1 && !spansAlone(opposite, overall)) rows.push([overall])
  const marks: Mark[] = []
  let offset = Math.max(firstRow(context, side), swungOut(context, side) + context.style.rowStep)
  for (const row of rows) {
    const drawn = row.flatMap((stretch) => stretchMarks(context, stretch, side, offset))
    if (drawn.length > 0) offset += context.style.rowStep
    marks.push(...drawn)
  }
  return marks
}

/** What a row of numbers beside bars takes of the first row of dimensions, over the text's size. */
const BESIDE_BARS = 0.45

/** From the outline to the first row; further where shares are marked and the row's text would stand towards them. */
function firstRow({ style, shares }: PlanContext, { outward, walls }: Side): number {
  const [wall] = walls
  if (!shares || !wall) return style.firstRow
  const angle = (readingAngle(wall.a, wall.b) * Math.PI) / 180
  const isTowards = Math.sin(angle) * outward[0] - Math.cos(angle) * outward[1] < 0
  return isTowards ? style.firstRow + style.text * BESIDE_BARS : style.firstRow
}

/** How far leaves that open out of the room reach beyond the outline on one side, target units. */
function swungOut({ result, frame, show, room }: PlanContext, side: Side): number {
  if (show?.openings === false || result === null) return 0
  const walls = new Set(side.walls.map(({ id }) => id))
  const openings = new Set(room.openings.filter(({ wall }) => walls.has(wall)).map(({ id }) => id))
  return result.openings
    .filter(({ id }) => openings.has(id))
    .flatMap(({ door }) => door?.leaves ?? [])
    .filter(({ swing }) => swing === 'out')
    .flatMap(({ leaf, sweep }) => [...leaf, ...sweep])
    .reduce((most, point) => Math.max(most, reachOf(toTarget(frame, point), side.outward) - side.reach), 0)
}

/** One wall of the other side already tells the whole length. */
function spansAlone(side: Side, overall: Stretch): boolean {
  return side.walls.length === 1 && Math.abs(side.walls[0]!.lengthMm - overall.lengthMm) < 0.5
}

function overallStretch(side: Side, scale: number): Stretch | null {
  const first = side.walls[0]
  const last = side.walls[side.walls.length - 1]
  if (!first || !last) return null
  const acrossway: Place = [-side.outward[1], side.outward[0]]
  const ends = [first.a, first.b, last.a, last.b].sort((p, q) => reachOf(p, acrossway) - reachOf(q, acrossway))
  const from = ends[0]!
  const to = ends[3]!
  return { from, to, lengthMm: (reachOf(to, acrossway) - reachOf(from, acrossway)) / scale }
}

/** Corner, jamb, jamb, corner along a wall with openings; measured from outside the openings' names. */
function openingStretches({ room, frame, show, style, shares }: PlanContext, wall: WallLine): Stretch[] {
  if (show?.openings === false) return []
  const clearOfNames = -style.text * (shares ? 2.3 : 1.5)
  const cuts = room.openings
    .filter((opening) => opening.wall === wall.id && opening.kind !== 'vent')
    .flatMap(({ fromMm, widthMm }) => [fromMm, fromMm + widthMm])
    .filter((cut) => cut > 0.5 && cut < wall.lengthMm - 0.5)
    .sort((p, q) => p - q)
  if (cuts.length === 0) return []
  const stops = [0, ...cuts, wall.lengthMm]
  const stretches: Stretch[] = []
  for (let index = 0; index + 1 < stops.length; index++) {
    const start = stops[index]!
    const end = stops[index + 1]!
    if (end - start < 0.5) continue
    const from = onWall(wall, start * frame.scale, clearOfNames)
    stretches.push({
      from,
      to: onWall(wall, end * frame.scale, clearOfNames),
      lengthMm: end - start,
      surfaceId: wall.id,
      beyond: freeEnd(index, stops.length - 2),
    })
  }
  return stretches
}

function freeEnd(index: number, last: number): 'start' | 'end' | 'neither' {
  if (index === 0) return 'start'
  return index === last ? 'end' : 'neither'
}

function stretchMarks(context: PlanContext, stretch: Stretch, side: Side, offset: number): Mark[] {
  const at = (place: Place, reach: number): Place => {
    const by = reach - reachOf(place, side.outward)
    return [place[0] + side.outward[0] * by, place[1] + side.outward[1] * by]
  }
  const outermost = (place: Place): Place => at(place, furthestInLine(context.walls, place, side.outward))
  const { from, to } = stretch
  const ends = [at(from, side.reach + offset), at(to, side.reach + offset)] as const
  // A text may stand beyond an end of its line.
  if (!isSeen(context.view, ends, context.style.text * LONGEST_TEXT)) return []
  return marksOf(context, { ...stretch, from: outermost(from), to: outermost(to) }, ends[0], ends[1])
}

/** No length is written wider than this, over the text's size. */
const LONGEST_TEXT = 8

/** How far out the outline reaches straight ahead of a place: extension lines start there, not along a wall. */
function furthestInLine(walls: readonly WallLine[], place: Place, outward: Place): number {
  const acrossway: Place = [-outward[1], outward[0]]
  const line = reachOf(place, acrossway)
  let furthest = reachOf(place, outward)
  for (const { a } of walls) {
    if (Math.abs(reachOf(a, acrossway) - line) < 0.5) furthest = Math.max(furthest, reachOf(a, outward))
  }
  return furthest
}

/** A wall's own rows: its openings, then its length, which goes further out where something stands in its way. */
function ownDimensions(context: PlanContext, wall: WallLine): Mark[] {
  const { style } = context
  const outward: Place = [-wall.inward[0], -wall.inward[1]]
  const side: Side = { outward, reach: reachOf(wall.a, outward), walls: [wall] }
  const swung = swungOut(context, side)
  const first = Math.max(firstRow(context, side) - style.firstRow * 0.2, swung > 0 ? swung + style.rowStep : 0)
  const openings = openingStretches(context, wall).flatMap((stretch) => stretchMarks(context, stretch, side, first))
  const next = openings.length > 0 ? first + style.rowStep : first
  const stretch = { from: wall.a, to: wall.b, lengthMm: wall.lengthMm, surfaceId: wall.id }
  const lines = [next, next + style.rowStep, next + 2 * style.rowStep].map(
    (offset) => [onWall(wall, 0, -offset), onWall(wall, wall.length, -offset)] as const,
  )
  // Where every line meets a name, it is drawn all the same: a length matters more.
  const clear = lines.filter(([from, to]) => context.placer.isFreeLine(from, to, style.tick))
  for (const [from, to] of [...clear, ...lines]) {
    const marks = marksOf(context, stretch, from, to)
    if (marks.length > 0) return [...openings, ...marks]
  }
  return openings
}

function marksOf({ style, units, placer, isSelected }: PlanContext, stretch: Stretch, from: Place, to: Place): Mark[] {
  const selected = stretch.surfaceId !== undefined && isSelected(stretch.surfaceId)
  const input = {
    from,
    to,
    measured: [stretch.from, stretch.to] as const,
    text: formatLength(stretch.lengthMm, units),
    colour: selected ? ('accent' as const) : ('soft' as const),
    role: 'dimension' as const,
    surfaceId: stretch.surfaceId,
    beyond: stretch.beyond,
    style,
  }
  return dimensionMarks(input, placer) ?? []
}
