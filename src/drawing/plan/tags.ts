import type { SurfaceResult } from '#analysis/results.ts'
import type { Box, Mark, Place } from '#drawing/model.ts'
import type { ColourToken } from '#drawing/palette.ts'
import { growBox } from '#drawing/place.ts'
import type { PlanContext } from '#drawing/plan/planInput.ts'
import { onWall, type WallLine } from '#drawing/plan/wallLines.ts'
import type { PlanStyle } from '#drawing/style.ts'
import { CAP_HEIGHT, minusSign, textMark, textWidth } from '#drawing/text.ts'
import { formatLength } from '#units/format.ts'

/** Where a tag could stand: its circle, and which side its words are on. */
interface TagPlace {
  readonly centre: Place
  readonly lines: readonly string[]
  readonly side: Side
  readonly boxes: readonly Box[]
  readonly overThin: boolean
}

/** Along: the words run upward from the circle, as on a drawing's right-hand side. */
type Side = 'left' | 'right' | 'along'

/** Line height of the words over their size. */
const LINE = 1.25
/** Shares along the wall at which a tag is tried. */
const SHARES = [0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8, 0.12, 0.88, 0.25, 0.75]

/** Wall numbers in circles inside the room, with depth and rating beside where there is space. */
export function tagMarks(context: PlanContext, walls: readonly WallLine[]): Mark[] {
  return walls.flatMap((wall) => {
    const place = context.placer.placeFirst(candidates(context, wall)) ?? onTheWall(context, wall)
    return place ? drawTag(context, wall, place) : []
  })
}

/** What stands beside a tag: depth taken and rating, in one or two lines. */
export function tagLines(surface: SurfaceResult, units: PlanContext['units']): [string, string] {
  const depth = surface.netDepthMm === 0 ? 'as it stands' : minusSign(formatLength(surface.netDepthMm, units))
  const { rating } = surface
  if (rating === null) return [depth, 'not rated']
  return [depth, `STC ${rating.stc}, likely ${rating.likely[0]}–${rating.likely[1]}`]
}

/** Most words first, near before far, the middle of the wall before its ends; at last the bare number outside. */
function* candidates(context: PlanContext, wall: WallLine): Generator<TagPlace> {
  const { style } = context
  const away = style.tagRadius + style.air * 1.5
  const face = Math.max(wall.depth, 0)
  for (const lines of wordings(context, wall)) {
    yield* alongWall(context, wall, face + away, lines)
    yield* alongWall(context, wall, face + away * 2.2, lines)
  }
  for (const rows of [0.45, 0.7, 1.1, 1.6]) yield* alongWall(context, wall, -style.firstRow * rows, [])
}

/** Where nothing is free, the number stands on the wall itself; a wall shorter than its tag has none. */
function onTheWall(context: PlanContext, wall: WallLine): TagPlace | undefined {
  if (wall.length < 2 * context.style.tagRadius) return undefined
  return tagPlace(context, onWall(wall, wall.length / 2, 0), [], 'right')
}

function wordings({ units, show }: PlanContext, { result }: WallLine): (readonly string[])[] {
  if (result === null || show?.ratings === false) return [[]]
  const [depth, rating] = tagLines(result, units)
  // Shorter, but never a rating without its range.
  const brief = rating.replace(/, likely (.*)$/, ' ($1)')
  return [[depth, rating], [depth, brief], [depth], []]
}

function* alongWall(context: PlanContext, wall: WallLine, t: number, lines: readonly string[]): Generator<TagPlace> {
  const sides: Side[] = wall.inward[0] < -0.3 ? ['left', 'right'] : ['right', 'left']
  if (lines.length === 1 && Math.abs(wall.inward[0]) > 0.9) sides.push('along')
  for (const share of SHARES) {
    for (const side of sides) yield tagPlace(context, onWall(wall, wall.length * share, t), lines, side)
  }
}

function tagPlace({ style }: PlanContext, centre: Place, lines: readonly string[], side: Side): TagPlace {
  const reach = style.tagRadius
  const circle: Box = { x: centre[0] - reach, y: centre[1] - reach, width: 2 * reach, height: 2 * reach }
  const boxes = [growBox(circle, style.air / 2)]
  if (lines.length > 0) {
    const width = Math.max(...lines.map((line, index) => textWidth(line, style.text, weightOf(lines, index))))
    const height = lines.length * style.text * LINE
    boxes.push(growBox(wordsBox(centre, reach + style.air, width, height, side), style.air / 2))
  }
  return { centre, lines, side, boxes, overThin: lines.length === 0 }
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

function weightOf(lines: readonly string[], index: number): 400 | 600 {
  return lines.length > 1 && index === 0 ? 600 : 400
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
