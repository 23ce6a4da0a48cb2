import type { HeightField } from '#analysis/results.ts'
import { toTarget } from '#drawing/frame.ts'
import type { Box, Mark, Place } from '#drawing/model.ts'
import { growBox } from '#drawing/place.ts'
import type { PlanContext } from '#drawing/plan/planInput.ts'
import { isInside, middleOf, planPoints } from '#drawing/plan/rings.ts'
import { textMark, textWidth } from '#drawing/text.ts'
import { formatArea, formatLength } from '#units/format.ts'

/** Heights this near are written as one, mm. */
const SAME_HEIGHT_MM = 1

/** The room's name with its clear area and clear height, as near the middle as there is space. */
export function roomLabel(context: PlanContext): Mark[] {
  const { room, result, style, units, placer } = context
  if (result === null || result.clear.length === 0) return []
  const { floorAreaM2, clearHeightMm, drops } = result.ledger
  const area = `${formatArea(floorAreaM2.clear, units)} clear`
  const least = isOneHeight(result.heights) ? '' : 'from '
  const height = `${least}${formatLength(clearHeightMm.lowest, units)} high${drops.length > 0 ? ' away from drops' : ''}`
  const places = centres(context)
  const candidates = [[`${area} · ${height}`], [area, height], [area]].flatMap((lines) =>
    places.map((place) => block(context, lines, place)),
  )
  const found = placer.placeFirst(candidates)
  if (!found) return []
  const { x, top } = found
  const common = { anchor: 'middle', role: 'label' } as const
  return [
    textMark(room.name, x, top + style.heading * 0.8, { ...common, size: style.heading, weight: 600 }),
    ...found.lines.map((line, index) =>
      textMark(line, x, top + style.heading + style.text * (1.25 + 1.3 * index), {
        ...common,
        size: style.text,
        colour: 'soft',
      }),
    ),
  ]
}

/** Whether the room is as high everywhere away from drops as the paper can show. */
function isOneHeight({ patches }: HeightField): boolean {
  const away = patches.filter(({ drop }) => drop === null)
  const heights = away.flatMap(({ plan, plane }) =>
    plan.flatMap(({ outline }) => outline.map(([x, y]) => plane.atOrigin + plane.perX * x + plane.perY * y)),
  )
  return heights.length === 0 || Math.max(...heights) - Math.min(...heights) < SAME_HEIGHT_MM
}

function block({ room, style }: PlanContext, lines: readonly string[], [x, y]: Place) {
  const widths = lines.map((line) => textWidth(line, style.text, 400))
  const width = Math.max(textWidth(room.name, style.heading, 600), ...widths)
  const height = style.heading + style.text * (0.2 + 1.3 * lines.length)
  const box: Box = { x: x - width / 2, y: y - height / 2, width, height }
  return { x, top: box.y, lines, boxes: [growBox(box, style.air)] }
}

/** Places inside the largest clear part, from the middle outward. */
function centres({ result, room, frame }: PlanContext): Place[] {
  const ring = (result?.clear[0]?.outline ?? planPoints(room.corners)).map((point) => toTarget(frame, point))
  const [x, y] = middleOf(ring)
  const across = Math.max(...ring.map(([px]) => Math.abs(px - x)))
  const down = Math.max(...ring.map(([, py]) => Math.abs(py - y)))
  const steps = [-4, -3, -2, -1, 0, 1, 2, 3, 4]
  const grid = steps.flatMap((dx) => steps.map((dy) => [dx, dy] as const))
  grid.sort((p, q) => p[0] ** 2 + p[1] ** 2 - q[0] ** 2 - q[1] ** 2)
  return grid
    .map(([dx, dy]): Place => [x + dx * across * 0.19, y + dy * down * 0.19])
    .filter((place) => isInside(ring, place))
}
