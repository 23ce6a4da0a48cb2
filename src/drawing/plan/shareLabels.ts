import { shareWords } from '#analysis/paths/answerWords.ts'
import type { Mark, TextMark } from '#drawing/model.ts'
import { growBox } from '#drawing/place.ts'
import { readingAngle } from '#drawing/plan/dimension.ts'
import type { PlanContext } from '#drawing/plan/planInput.ts'
import { barReach, type ShareBar, shareBars } from '#drawing/plan/shareBars.ts'
import { onWall } from '#drawing/plan/wallLines.ts'
import { CAP_HEIGHT, DESCENT, textMark, textWidth } from '#drawing/text.ts'

/** Where along a stretch its number is tried after its middle, 0..1. */
const ALONG = [0.4, 0.6, 0.3, 0.7, 0.2, 0.8]

/** Numbers outside the bars: an opening's with its name, a wall's once, beside its longest stretch. */
export function shareLabels(context: PlanContext): Mark[] {
  const bars = [...shareBars(context)].sort((one, other) => order(one) - order(other))
  const marked = new Set<string>()
  return bars.flatMap((bar): Mark[] => {
    if (marked.has(bar.id)) return []
    const mark = placeLabel(context, bar)
    if (!mark) return []
    marked.add(bar.id)
    return [mark]
  })
}

/** Openings choose first, they have the least room; then the longest stretches. */
function order({ isOpening, s0, s1 }: ShareBar): number {
  return (isOpening ? -1e6 : 0) - (s1 - s0)
}

function placeLabel(context: PlanContext, bar: ShareBar): TextMark | undefined {
  const candidates = textsOf(context, bar).flatMap((text) => labelMarks(context, bar, text))
  const { air } = context.style
  return context.placer.placeFirst(candidates.map((mark) => ({ mark, boxes: [growBox(mark.box, air * 0.2)] })))?.mark
}

/** An opening's name stands before its number where it does not take the place of its wall's. */
function textsOf({ room, style, shares }: PlanContext, { id, wall, s0, s1, share }: ShareBar): readonly string[] {
  const number = shareWords(share)
  const opening = room.openings.find((candidate) => candidate.id === id)
  if (!opening) return [number]
  const full = `${opening.name} ${number}`
  const isTooLong = textWidth(full, style.text, 600) > s1 - s0
  return isTooLong && shares?.onPlan.has(wall.id) ? [number] : [full, number]
}

function labelMarks({ style, isSelected }: PlanContext, bar: ShareBar, text: string): TextMark[] {
  const { id, wall, share } = bar
  const rotation = readingAngle(wall.a, wall.b)
  const angle = (rotation * Math.PI) / 180
  const roomIsAbove = Math.sin(angle) * wall.inward[0] - Math.cos(angle) * wall.inward[1] > 0
  const size = style.text
  const out = barReach(style, share) + style.air * 0.75 + (roomIsAbove ? CAP_HEIGHT : DESCENT) * size
  const colour = isSelected(id) ? 'accent' : 'ink'
  const common = { size, weight: 600, anchor: 'middle', rotation, colour, role: 'share', surfaceId: id } as const
  return middles(bar, textWidth(text, size, 600), style.air).map((s) =>
    textMark(text, ...onWall(wall, s, -out), common),
  )
}

/** An opening's name may be longer than the opening, and a number longer than its bar; none goes past a corner. */
function middles({ s0, s1, isOpening, wall }: ShareBar, width: number, air: number): readonly number[] {
  const middle = (s0 + s1) / 2
  const half = width / 2
  const within = Math.min(Math.max(middle, half + air), Math.max(wall.length - half - air, half + air))
  if (isOpening) {
    const aside = (s1 - s0) / 2 + half + air
    return [within, middle + aside, middle - aside]
  }
  const others = ALONG.map((along) => s0 + (s1 - s0) * along)
  return [within, ...others.filter((s) => s - s0 >= half && s1 - s >= half)]
}
