import type { Opening } from '#analysis/room.ts'
import type { Mark } from '#drawing/model.ts'
import { growBox } from '#drawing/place.ts'
import { type Cut, cutsOf } from '#drawing/plan/cuts.ts'
import { readingAngle } from '#drawing/plan/dimension.ts'
import type { PlanContext } from '#drawing/plan/planInput.ts'
import { onWall } from '#drawing/plan/wallLines.ts'
import { textBox, textMark, textWidth } from '#drawing/text.ts'
import { formatLength } from '#units/format.ts'
import type { LengthUnit } from '#units/quantity.ts'

/**
 * Names of openings, set along the wall: outside, else inside, else beside the opening.
 * @param named  openings whose names are on the plan already
 */
export function openingLabels(context: PlanContext, named: ReadonlySet<string>): Mark[] {
  const { style, placer } = context
  const marks: Mark[] = []
  for (const cut of cutsOf(context)) {
    // Its share carries its name already.
    if (named.has(cut.opening.id)) continue
    const name = openingWords(cut.opening, context.units)
    const rotation = readingAngle(cut.wall.a, cut.wall.b)
    const candidates = labelPlaces(context, cut, name, rotation).map(([s, t]) => {
      const [x, y] = onWall(cut.wall, s, t)
      const box = textBox(name, { x, y }, style.text, 400, 'middle', rotation)
      return { x, y, boxes: [growBox(box, style.air * 0.2)] }
    })
    const found = placer.placeFirst(candidates)
    if (!found) continue
    const colour = cut.selected ? 'accent' : 'soft'
    const textStyle = { size: style.text, anchor: 'middle', rotation, colour, role: 'label' } as const
    marks.push(textMark(name, found.x, found.y, { ...textStyle, surfaceId: cut.opening.id }))
  }
  return marks
}

/** Middle of the baseline, along and across the wall. */
function labelPlaces(
  { style }: PlanContext,
  { wall, s0, s1 }: Cut,
  name: string,
  rotation: number,
): [number, number][] {
  const angle = (rotation * Math.PI) / 180
  const roomIsAbove = Math.sin(angle) * wall.inward[0] - Math.cos(angle) * wall.inward[1] > 0
  const ascent = style.text * 0.75
  const descent = style.text * 0.24
  const outside = -(style.heavy + style.air + (roomIsAbove ? ascent : descent))
  const inside = Math.max(wall.depth, 0) + style.air + (roomIsAbove ? descent : ascent)
  const middle = (s0 + s1) / 2
  const width = textWidth(name, style.text, 400)
  const beside = (s1 - s0) / 2 + width / 2 + style.air * 1.5
  return [
    [middle, outside],
    [middle, inside],
    [middle + beside, outside],
    [middle - beside, outside],
  ]
}

/** Its name, and of a round vent its diameter. */
function openingWords({ kind, shape, name, widthMm }: Opening, units: LengthUnit): string {
  return kind === 'vent' && shape === 'round' ? `${name}, Ø ${formatLength(widthMm, units)}` : name
}
