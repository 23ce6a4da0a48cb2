import { type ScaleLinear, scaleLinear } from 'd3-scale'
import type { Box } from '#drawing/model.ts'
import { textWidth } from '#drawing/text.ts'
import { frontier } from '#ui/charts/frontier.ts'
import { type LabelWish, labelBox, overlaps, type PlacedLabel, placeLabels } from '#ui/charts/placeLabels.ts'
import { type LengthUnit, type Millimetres, MM_PER_INCH } from '#units/quantity.ts'

/** One thing a surface could be, placed by the depth it takes and the quiet it gives. */
export interface RulerMark {
  readonly id: string
  readonly label: string
  /** The whole of it, as it is read aloud. */
  readonly sentence: string
  readonly depthMm: Millimetres
  readonly value: number
  readonly low: number
  readonly high: number
  /** Why it stands on the wrong ground, such as channel over a kept board; null: it does not. */
  readonly doubt: string | null
}

export interface RulerSize {
  readonly width: number
  readonly height: number
  /** Depth of the existing construction shown to the left of zero. */
  readonly existingMm: Millimetres
  /** Depths that must find room although no rating marks them; absent: none. */
  readonly unratedMm?: readonly Millimetres[] | undefined
  /** A value to be reached, drawn as a line; absent: none, and the scale is that of losses. */
  readonly target?: { readonly value: number; readonly text: string } | undefined
}

export interface RulerLayout {
  readonly x: ScaleLinear<number, number>
  readonly y: ScaleLinear<number, number>
  /** The part of the drawing that holds the marks. */
  readonly plot: { readonly left: number; readonly right: number; readonly top: number; readonly bottom: number }
  readonly depthTicks: readonly Millimetres[]
  readonly quietTicks: readonly number[]
  readonly frontierIds: readonly string[]
  readonly labels: readonly PlacedLabel[]
  /** Where the words about the empty corner stand; null: it is not empty here. */
  readonly emptyCorner: { readonly x: number; readonly y: number } | null
  /** The line of the target and where its name stands; null: there is none. */
  readonly target: { readonly y: number; readonly name: PlacedLabel } | null
}

export const MARK_RADIUS = 4.5
export const LABEL_SIZE = 13
/** Room for the numbers left of the plot. */
const LEFT = 70
const RIGHT = 16
const TOP = 12
/** Half the last number under the axis and its unit. */
const UNIT_ROOM = 40
/** Above the highest whisker, so that the empty corner has room for its words. */
const HEADROOM = 24
/** Shown above and below a target at least, so that near and far look so. */
const ROUND_TARGET = 5
/** A name over a mark hides it, over a whisker it only crosses it. */
const DOT_OVER_WHISKER = 10
/** How far apart the places are that are tried for the target's name. */
const NAME_STEP = 24
/** Room for the depths under the plot. */
const BOTTOM = 26
export const EMPTY_CORNER = 'more quiet for less depth: nothing here'

/** Where everything on the depth ruler stands. */
export function rulerLayout(
  marks: readonly RulerMark[],
  size: RulerSize,
  unit: LengthUnit,
  first: string | null,
): RulerLayout {
  const x = depthScale(marks, size)
  const y = quietScale(marks, size)
  const plot = {
    left: Math.min(x(0), x(Math.min(0, ...marks.map((mark) => mark.depthMm)))) - 8,
    right: size.width - RIGHT,
    top: TOP,
    bottom: size.height - BOTTOM,
  }
  const best = frontier(marks.map((mark) => ({ id: mark.id, depth: mark.depthMm, quiet: mark.value })))
  const frontierIds = best.map(({ id }) => id)
  const target = targetLine(marks, size.target, x, y, plot)
  const targetBox = target ? [labelBox(target.name, LABEL_SIZE)] : []
  const corner = emptyCorner(marks, x, y, plot, targetBox)
  const labels = placeLabels(labelWishes(marks, frontierIds, first, x, y), {
    size: LABEL_SIZE,
    within: { x: plot.left, y: 0, width: size.width - plot.left, height: plot.bottom },
    taken: [
      ...marks.map((mark) => ({ x: x(mark.depthMm) - 5, y: y(mark.value) - 5, width: 10, height: 10 })),
      ...(corner ? [cornerBox(corner)] : []),
      ...targetBox,
    ],
    crossed: marks.map((mark) => ({
      x: x(mark.depthMm) - 1.5,
      y: y(mark.high),
      width: 3,
      height: y(mark.low) - y(mark.high),
    })),
  })
  return {
    x,
    y,
    plot,
    // Millimetres are named after the last number, which needs room for that.
    depthTicks: depthTicks(x, unit === 'mm' ? size.width - UNIT_ROOM : plot.right, unit),
    quietTicks: y.ticks(Math.max(2, Math.floor(size.height / 38))).filter((tick) => tick % 1 === 0),
    frontierIds,
    labels,
    emptyCorner: corner,
    target,
  }
}

function depthScale(marks: readonly RulerMark[], size: RulerSize): ScaleLinear<number, number> {
  const depths = [...marks.map((mark) => mark.depthMm), ...(size.unratedMm ?? [])]
  const deepest = Math.max(76.2, ...depths)
  const least = Math.min(0, ...depths)
  const from = Math.min(least - 6, -size.existingMm)
  return scaleLinear()
    .domain([from, deepest * 1.08 + 6])
    .range([LEFT, size.width - RIGHT])
}

function quietScale(marks: readonly RulerMark[], size: RulerSize): ScaleLinear<number, number> {
  const { target } = size
  const low = Math.min(...marks.map((mark) => mark.low), target ? target.value - ROUND_TARGET : 30)
  const high = Math.max(...marks.map((mark) => mark.high), target ? target.value + ROUND_TARGET : 50)
  const bottom = Math.floor(low / 5) * 5
  const plotted = size.height - BOTTOM - TOP
  return scaleLinear()
    .domain([bottom, bottom + ((high - bottom) * plotted) / (plotted - HEADROOM)])
    .range([size.height - BOTTOM, TOP])
}

/** Whole inches or 25 mm apart, fewer where they would crowd. */
function depthTicks(x: ScaleLinear<number, number>, right: number, unit: LengthUnit): readonly Millimetres[] {
  const base = unit === 'mm' ? 25 : MM_PER_INCH
  const perBase = x(base) - x(0)
  const step = base * ([1, 2, 4, 8].find((times) => times * perBase >= 44) ?? 16)
  const ticks: Millimetres[] = []
  for (let depth = 0; x(depth) <= right; depth += step) ticks.push(depth)
  return ticks
}

function labelWishes(
  marks: readonly RulerMark[],
  frontierIds: readonly string[],
  first: string | null,
  x: ScaleLinear<number, number>,
  y: ScaleLinear<number, number>,
): readonly LabelWish[] {
  const least = marks.reduce<RulerMark | null>((a, b) => (a === null || b.depthMm < a.depthMm ? b : a), null)
  const rank = (mark: RulerMark) =>
    mark.id === first || mark.id === least?.id ? 0 : frontierIds.includes(mark.id) ? 1 : 2
  return [...marks]
    .sort((a, b) => rank(a) - rank(b) || a.depthMm - b.depthMm)
    .map((mark) => ({
      id: mark.id,
      text: mark.label,
      x: x(mark.depthMm),
      y: y(mark.value),
      radius: mark.id === first ? MARK_RADIUS + 5 : MARK_RADIUS,
      ...(rank(mark) < 2 ? { whisker: { top: y(mark.high), bottom: y(mark.low) } } : { mostCrossings: 1 }),
    }))
}

function cornerBox(corner: { x: number; y: number }) {
  const width = textWidth(EMPTY_CORNER, LABEL_SIZE, 400)
  return { x: corner.x, y: corner.y - LABEL_SIZE, width, height: LABEL_SIZE * 1.3 }
}

/** The target's line, its name along it where fewest marks and whiskers are in the way, at the right end if it may be. */
function targetLine(
  marks: readonly RulerMark[],
  target: RulerSize['target'],
  x: ScaleLinear<number, number>,
  y: ScaleLinear<number, number>,
  plot: RulerLayout['plot'],
): RulerLayout['target'] {
  if (!target) return null
  const at = y(target.value)
  const bars = marks.map((mark) => barOf(mark, x, y))
  const dots = marks.map((mark) => ({ x: x(mark.depthMm) - 7, y: y(mark.value) - 7, width: 14, height: 14 }))
  const inTheWay = (name: PlacedLabel) => {
    const box = labelBox(name, LABEL_SIZE)
    const hit = (others: readonly Box[]) => others.filter((other) => overlaps(box, other)).length
    return hit(bars) + DOT_OVER_WHISKER * hit(dots)
  }
  const name = namePlaces(target.text, at, plot).reduce((best, place) =>
    inTheWay(place) < inTheWay(best) ? place : best,
  )
  return { y: at, name }
}

/** Above and below the line, from its right end to the left one. */
function namePlaces(text: string, at: number, plot: RulerLayout['plot']): readonly [PlacedLabel, ...PlacedLabel[]] {
  const least = plot.left + textWidth(text, LABEL_SIZE, 400) + 4
  const place = (x: number, y: number): PlacedLabel => ({ id: 'target', text, x, y, anchor: 'end' })
  const steps = Math.max(0, Math.floor((plot.right - least) / NAME_STEP))
  const along = Array.from({ length: steps }, (_, step) => plot.right - (step + 1) * NAME_STEP)
  const [above, below] = [at - 4, at + LABEL_SIZE]
  return [
    place(plot.right, above),
    place(plot.right, below),
    ...along.flatMap((x) => [place(x, above), place(x, below)]),
  ]
}

/** What a mark and its whisker cover. */
function barOf(mark: RulerMark, x: ScaleLinear<number, number>, y: ScaleLinear<number, number>) {
  return { x: x(mark.depthMm) - 6, y: y(mark.high) - 2, width: 12, height: y(mark.low) - y(mark.high) + 4 }
}

/** The corner everyone wishes for, if no mark, whisker or other word reaches into the words. */
function emptyCorner(
  marks: readonly RulerMark[],
  x: ScaleLinear<number, number>,
  y: ScaleLinear<number, number>,
  plot: RulerLayout['plot'],
  others: readonly ReturnType<typeof labelBox>[],
): { x: number; y: number } | null {
  const corner = { x: x(0) + 10, y: plot.top + LABEL_SIZE + 2 }
  const box = cornerBox(corner)
  if (box.x + box.width > plot.right) return null
  const inTheWay = [...marks.map((mark) => barOf(mark, x, y)), ...others]
  return inTheWay.some((other) => overlaps(box, other)) ? null : corner
}
