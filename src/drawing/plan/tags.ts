import type { SurfaceResult } from '#analysis/results.ts'
import type { Box, Mark, Place } from '#drawing/model.ts'
import type { ColourToken } from '#drawing/palette.ts'
import { boxesMeet, growBox } from '#drawing/place.ts'
import type { PlanContext } from '#drawing/plan/planInput.ts'
import { insideTest, isSeen } from '#drawing/plan/rings.ts'
import { onWall, type WallLine } from '#drawing/plan/wallLines.ts'
import type { PlanStyle } from '#drawing/style.ts'
import { CAP_HEIGHT, DESCENT, minusSign, textMark, textWidth } from '#drawing/text.ts'
import { formatLength } from '#units/format.ts'

/** Where a tag could stand: its circle, and which side its words are on. */
interface TagPlace {
  readonly centre: Place
  readonly lines: readonly string[]
  readonly side: Side
  readonly boxes: readonly Box[]
  /** What the words cover; null: there are none. */
  readonly words: Box | null
  readonly overThin: boolean
  /** Outside the outline, where only a bare number may stand. */
  readonly isOutside: boolean
}

/** Along: the words run upward from the circle, as on a drawing's right-hand side. */
type Side = 'left' | 'right' | 'along'

/** Line height of the words over their size. */
const LINE = 1.25
/** Shares along the wall at which a tag is tried. */
const SHARES = [0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8, 0.12, 0.88, 0.25, 0.75, 0.35, 0.65, 0.16, 0.84]

/** What the tags of a drawing say beside their numbers, the richest first: never a rating without its range. */
type Wording = 'full' | 'narrow' | 'narrowest' | 'depth' | 'number'

/** A wall with as much beside its openings, mm and text sizes, is one whose words decide the wording of all. */
const TELLING = { mm: 1200, texts: 10 }

/**
 * Wall numbers in circles inside the room, with depth and rating beside. All walls are told in the same manner: the
 * richest for which every wall of some length finds room; a wall that still finds none has its bare number.
 * @param apart  boxes of dimension texts; words beside them would read as theirs
 */
export function tagMarks(context: PlanContext, walls: readonly WallLine[], apart: readonly Box[]): Mark[] {
  const close = apart.map((box) => growBox(box, context.style.text))
  for (const wording of wordingsFor(context)) {
    const placer = context.placer.trial()
    const last = wording === 'depth' || wording === 'number'
    const placed = placeAll({ ...context, placer }, walls, { wording, close, last })
    if (placed === null) continue
    for (const { place } of placed) for (const box of place.boxes) context.placer.take(box)
    return placed.flatMap(({ wall, place }) => drawTag(context, wall, place))
  }
  return []
}

interface Manner {
  readonly wording: Wording
  readonly close: readonly Box[]
  /** There is no shorter wording: a long wall may go without words. */
  readonly last: boolean
}

function wordingsFor({ result, show }: PlanContext): readonly Wording[] {
  return result === null || show?.ratings === false ? ['number'] : ['full', 'narrow', 'narrowest', 'depth']
}

interface Placed {
  readonly wall: WallLine
  readonly place: TagPlace
}

/** In a room of more walls than this, one that is shorter than its tag goes without. */
const MANY_WALLS = 60

/** A place for each wall's tag; null when a telling wall has no room for its words. */
function placeAll(context: PlanContext, walls: readonly WallLine[], manner: Manner): Placed[] | null {
  const isInside = insideTest(context.walls.map(({ a }) => a))
  const shortest = walls.length > MANY_WALLS ? 2 * context.style.tagRadius : 0
  const fits = ({ centre, words, isOutside }: TagPlace): boolean =>
    isOutside || (isInside(centre) && !(words && manner.close.some((box) => boxesMeet(box, words))))
  const placed: Placed[] = []
  for (const wall of walls) {
    if (wall.length < shortest || !isNearView(context, wall)) continue
    const ways = linesOf(context, wall, manner.wording)
    const inside = ways.reduce<TagPlace | undefined>(
      (found, lines) => found ?? context.placer.placeFirst(candidates(context, wall, blockOf(context, lines)), fits),
      undefined,
    )
    if (!inside && ways.length > 0 && !manner.last && isTelling(context, wall)) return null
    const place = inside ?? context.placer.placeFirst(bareNumbers(context, wall), fits) ?? onTheWall(context, wall)
    if (place) placed.push({ wall, place })
  }
  return placed
}

/** A tag can stand in the view: what no one sees is not placed. */
function isNearView({ view, style }: PlanContext, { a, b, depth }: WallLine): boolean {
  return isSeen(view, [a, b], style.firstRow * 2 + Math.abs(depth))
}

function isTelling({ room, style, frame }: PlanContext, { id, lengthMm }: WallLine): boolean {
  const openings = room.openings.filter(({ wall }) => wall === id)
  const free = openings.reduce((rest, { widthMm }) => rest - widthMm, lengthMm)
  return free >= TELLING.mm && free * frame.scale >= TELLING.texts * style.text
}

/** What stands beside a tag: depth taken and rating, in one or two lines. */
export function tagLines(surface: SurfaceResult, units: PlanContext['units']): [string, string] {
  const depth = surface.netDepthMm === 0 ? 'as it stands' : minusSign(formatLength(surface.netDepthMm, units))
  const { rating } = surface
  if (rating === null) return [depth, 'not rated']
  return [depth, `STC ${rating.stc}, likely ${rating.likely[0]}–${rating.likely[1]}`]
}

/** Close to the wall before far, the middle of the wall before its ends; words level before words turned. */
function* candidates(context: PlanContext, wall: WallLine, block: Block): Generator<TagPlace> {
  const { tagRadius, air } = context.style
  const face = Math.max(wall.depth, 0)
  for (const turned of block.lines.length > 0 && Math.abs(wall.inward[0]) > 0.9 ? [false, true] : [false]) {
    for (const away of [tagRadius + air * 1.5, (tagRadius + air * 1.5) * 2.2, tagRadius + air * 0.85]) {
      yield* alongWall(context, wall, face + away, block, turned)
    }
  }
}

/** Inside as with words; at last outside, where a number must stand alone. */
function* bareNumbers(context: PlanContext, wall: WallLine): Generator<TagPlace> {
  const bare = blockOf(context, [])
  yield* candidates(context, wall, bare)
  for (const rows of [0.45, 0.7, 1.1, 1.6]) {
    for (const place of alongWall(context, wall, -context.style.firstRow * rows, bare, false)) {
      yield { ...place, isOutside: true }
    }
  }
}

/** Where nothing is free, the number stands on the wall itself; a wall shorter than its tag has none. */
function onTheWall(context: PlanContext, wall: WallLine): TagPlace | undefined {
  if (wall.length < 2 * context.style.tagRadius) return undefined
  return tagPlace(context, onWall(wall, wall.length / 2, 0), blockOf(context, []), 'right')
}

/** The words in two lines, else in one; narrow: in two even ones or three; empty: none are said. */
function linesOf({ units }: PlanContext, { result }: WallLine, wording: Wording): readonly (readonly string[])[] {
  if (result === null || wording === 'number') return []
  const [depth, full] = tagLines(result, units)
  if (wording === 'depth') return [[depth]]
  // A range without its name says nothing: narrow parts the words elsewhere and drops none.
  if (wording === 'narrow') return [`${depth}, ${full}`.split(/, (?=likely)/)]
  if (wording === 'narrowest') return [[depth, ...full.split(/, (?=likely)/)]]
  return [[depth, full], [`${depth}, ${full}`]]
}

/** The words of a tag and what they cover, measured once. */
interface Block {
  readonly lines: readonly string[]
  readonly width: number
  readonly height: number
}

function blockOf({ style }: PlanContext, lines: readonly string[]): Block {
  return {
    lines,
    width: Math.max(0, ...lines.map((line, index) => textWidth(line, style.text, weightOf(lines, index)))),
    height: (CAP_HEIGHT + 2 * DESCENT + (lines.length - 1) * LINE) * style.text,
  }
}

function* alongWall(
  context: PlanContext,
  wall: WallLine,
  t: number,
  block: Block,
  turned: boolean,
): Generator<TagPlace> {
  const level: Side[] = wall.inward[0] < -0.3 ? ['left', 'right'] : ['right', 'left']
  const sides: Side[] = turned ? ['along'] : block.lines.length === 0 ? ['right'] : level
  const tried: number[] = []
  for (const share of SHARES) {
    const s = wall.length * share
    if (tried.some((other) => Math.abs(other - s) < context.style.air / 2)) continue
    tried.push(s)
    const centre = onWall(wall, s, t)
    // Asked first: where the circle has no room, words need not be measured out.
    if (!context.placer.isFree(circleBox(context.style, centre), block.lines.length === 0)) continue
    for (const side of sides) yield tagPlace(context, centre, block, side)
  }
}

function tagPlace({ style }: PlanContext, centre: Place, { lines, width, height }: Block, side: Side): TagPlace {
  const boxes = [circleBox(style, centre)]
  const common = { centre, lines, side, boxes, isOutside: false }
  if (lines.length === 0) return { ...common, words: null, overThin: true }
  const words = wordsBox(centre, style.tagRadius + style.air, width, height, side)
  boxes.push(growBox(words, style.air / 2))
  return { ...common, words, overThin: false }
}

/** What the circle of a tag covers, with its air. */
function circleBox({ tagRadius, air }: PlanStyle, [x, y]: Place): Box {
  const reach = tagRadius + air / 2
  return { x: x - reach, y: y - reach, width: 2 * reach, height: 2 * reach }
}

function wordsBox([x, y]: Place, start: number, width: number, height: number, side: Side): Box {
  switch (side) {
    case 'right':
      return { x: x + start, y: y - height / 2, width, height }
    case 'left':
      return { x: x - start - width, y: y - height / 2, width, height }
    case 'along':
      return { x: x - height / 2, y: y - start - width, width: height, height: width }
  }
}

/** A depth in a line of its own stands out. */
function weightOf(lines: readonly string[], index: number): 400 | 600 {
  return lines.length > 1 && index === 0 && !lines[0]!.includes(',') ? 600 : 400
}

function drawTag({ style, isSelected }: PlanContext, wall: WallLine, { centre, lines, side }: TagPlace): Mark[] {
  const selected = isSelected(wall.id)
  const [x, y] = centre
  const common = { role: 'tag', surfaceId: wall.id } as const
  const marks: Mark[] = [
    {
      ...common,
      kind: 'circle',
      x,
      y,
      radius: style.tagRadius,
      fill: selected ? 'accent' : 'clear',
      stroke: { colour: selected ? 'accent' : 'ink', width: style.medium },
    },
    textMark(String(wall.index + 1), x, y + (CAP_HEIGHT * style.text) / 2, {
      ...common,
      size: style.text,
      weight: 600,
      anchor: 'middle',
      colour: selected ? 'on-accent' : 'ink',
    }),
  ]
  const colour = selected ? 'accent' : 'ink'
  marks.push(
    ...lines.map((line, index) => word(style, { line, index, lines, centre, side, colour, surfaceId: wall.id })),
  )
  return marks
}

interface Word {
  readonly line: string
  readonly index: number
  readonly lines: readonly string[]
  readonly centre: Place
  readonly side: Side
  readonly colour: ColourToken
  readonly surfaceId: string
}

function word(style: PlanStyle, { line, index, lines, centre, side, colour, surfaceId }: Word): Mark {
  const down = (index - (lines.length - 1) / 2) * style.text * LINE + (CAP_HEIGHT * style.text) / 2
  const start = style.tagRadius + style.air
  const common = { size: style.text, weight: weightOf(lines, index), colour, role: 'label', surfaceId } as const
  const [x, y] = centre
  switch (side) {
    case 'right':
      return textMark(line, x + start, y + down, common)
    case 'left':
      return textMark(line, x - start, y + down, { ...common, anchor: 'end' })
    case 'along':
      return textMark(line, x + down, y - start, { ...common, rotation: -90 })
  }
}
