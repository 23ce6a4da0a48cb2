import { toTarget } from '#drawing/frame.ts'
import type { Box, Mark, Place } from '#drawing/model.ts'
import { growBox } from '#drawing/place.ts'
import type { PlanContext } from '#drawing/plan/planInput.ts'
import { middleOf, planPoints } from '#drawing/plan/rings.ts'
import { textMark, textWidth } from '#drawing/text.ts'
import { formatArea, formatLength } from '#units/format.ts'

/** The room's name with its clear area and lowest clear height, as near the middle as there is space. */
export function roomLabel(context: PlanContext): Mark[] {
  const { room, result, style, units, placer } = context
  if (result === null || result.clear.length === 0) return []
  const { floorAreaM2, clearHeightMm } = result.ledger
  const figures = `${formatArea(floorAreaM2.clear, units)} clear · ${formatLength(clearHeightMm.lowest, units)} high`
  const width = Math.max(textWidth(room.name, style.heading, 600), textWidth(figures, style.text, 400))
  const height = style.heading + style.text * 1.5
  const candidates = centres(context).map(([x, y]) => {
    const box: Box = { x: x - width / 2, y: y - height / 2, width, height }
    return { x, y, boxes: [growBox(box, style.air)] }
  })
  const found = placer.placeFirst(candidates)
  if (!found) return []
  const top = found.y - height / 2
  const common = { anchor: 'middle', role: 'label' } as const
  return [
    textMark(room.name, found.x, top + style.heading * 0.8, { ...common, size: style.heading, weight: 600 }),
    textMark(figures, found.x, top + height - style.text * 0.25, { ...common, size: style.text, colour: 'soft' }),
  ]
}

/** Places inside the largest clear part, from the middle outward. */
function centres({ result, room, frame }: PlanContext): Place[] {
  const ring = (result?.clear[0]?.outline ?? planPoints(room.corners)).map((point) => toTarget(frame, point))
  const [x, y] = middleOf(ring)
  const across = Math.max(...ring.map(([px]) => Math.abs(px - x)))
  const down = Math.max(...ring.map(([, py]) => Math.abs(py - y)))
  const places: Place[] = []
  for (const share of [0, 0.2, 0.35, 0.5, 0.65]) {
    for (const [dx, dy] of [
      [0, -1],
      [0, 1],
      [-1, 0],
      [1, 0],
      [-1, 1],
      [1, 1],
      [-1, -1],
      [1, -1],
    ] as const) {
      const place: Place = [x + dx * across * share, y + dy * down * share]
      if (isInside(ring, place)) places.push(place)
      if (share === 0) break
    }
  }
  return places
}

function isInside(ring: readonly Place[], [x, y]: Place): boolean {
  let inside = false
  ring.forEach(([x1, y1], index) => {
    const [x2, y2] = ring[(index + 1) % ring.length]!
    if (y1 > y !== y2 > y && x < x1 + ((y - y1) / (y2 - y1)) * (x2 - x1)) inside = !inside
  })
  return inside
}
