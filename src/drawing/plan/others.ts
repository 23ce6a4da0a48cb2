import { toTarget } from '#drawing/frame.ts'
import type { Mark } from '#drawing/model.ts'
import { growBox } from '#drawing/place.ts'
import type { PlanContext } from '#drawing/plan/planInput.ts'
import { middleOf, planPoints } from '#drawing/plan/rings.ts'
import { textMark } from '#drawing/text.ts'

/** The project's other rooms, faint: where they lie, and what they are called. */
export function otherRoomMarks({ others = [], frame, style }: PlanContext): Mark[] {
  return others.flatMap((room): Mark[] => {
    if (room.corners.length < 3) return []
    const rings = [planPoints(room.corners).map((point) => toTarget(frame, point))]
    const stroke = { colour: 'hatch', width: style.fine } as const
    return [{ kind: 'polygon', role: 'other-room', surfaceId: room.id, rings, fill: null, stroke }]
  })
}

export function otherRoomLabels({ others = [], frame, style, placer }: PlanContext): Mark[] {
  return others.flatMap((room): Mark[] => {
    if (room.corners.length < 3) return []
    const ring = planPoints(room.corners).map((point) => toTarget(frame, point))
    const [x, y] = middleOf(ring)
    const common = {
      size: style.text,
      anchor: 'middle',
      colour: 'soft',
      role: 'other-room',
      surfaceId: room.id,
    } as const
    const candidates = [0, -2, 2, -4, 4].map((rows) => {
      const mark = textMark(room.name, x, y + rows * style.text, common)
      return { mark, boxes: [growBox(mark.box, style.air / 2)] }
    })
    const found = placer.placeFirst(candidates)
    return found ? [found.mark] : []
  })
}
