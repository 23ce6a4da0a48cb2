import { clipSpans } from '#drawing/clipSpans.ts'
import { toTarget } from '#drawing/frame.ts'
import type { Mark, Place } from '#drawing/model.ts'
import { growBox } from '#drawing/place.ts'
import type { PlanContext } from '#drawing/plan/planInput.ts'
import { insideTest, middleOf, planPoints } from '#drawing/plan/rings.ts'
import { textMark } from '#drawing/text.ts'
import { formatLength } from '#units/format.ts'

/** Columns and piers, solid with diagonals; one that the scheme takes out only dashed. */
export function obstacleMarks({ room, result, frame, style, isSelected, placer }: PlanContext): Mark[] {
  const marks: Mark[] = []
  for (const obstacle of room.obstacles) {
    const ring = planPoints(obstacle.corners).map((point) => toTarget(frame, point))
    if (ring.length < 3) continue
    const colour = isSelected(obstacle.id) ? 'accent' : 'wall'
    const common = { role: 'obstacle', surfaceId: obstacle.id } as const
    if (isOut(result, obstacle.id)) {
      const dash = [style.text * 0.4, style.text * 0.25]
      marks.push({ ...common, kind: 'polygon', rings: [ring], fill: null, stroke: { colour, width: style.fine, dash } })
      takeRing(placer.takeLine, ring)
      continue
    }
    marks.push({
      ...common,
      kind: 'polygon',
      rings: [ring],
      fill: 'solid',
      stroke: { colour, width: style.heavy * 0.6 },
    })
    const runs = diagonals(ring, Math.max(style.closest * 2.2, style.hair * 6))
    if (runs.length > 0) marks.push({ ...common, kind: 'lines', runs, stroke: { colour, width: style.hair } })
    takeRing(placer.takeLine, ring)
  }
  return marks
}

/** The scheme takes it out of the room. */
function isOut(result: PlanContext['result'], id: string): boolean {
  return result?.takenOut?.includes(id) === true
}

function diagonals(ring: readonly Place[], spacing: number): number[][] {
  const xs = ring.map(([x]) => x)
  const ys = ring.map(([, y]) => y)
  const top = Math.min(...ys)
  const height = Math.max(...ys) - top
  const runs: number[][] = []
  const step = Math.max(spacing * Math.SQRT2, (Math.max(...xs) - Math.min(...xs) + height) / 40)
  for (let x = Math.min(...xs) + step / 2; x < Math.max(...xs) + height; x += step) {
    for (const [from, to] of clipSpans([ring], x, top, -1, 1)) runs.push([x - from, top + from, x - to, top + to])
  }
  return runs
}

/** Beams and ducts overhead: dashed, with the height under them. */
export function dropMarks(context: PlanContext): Mark[] {
  const { room, frame, style, placer, isSelected } = context
  const marks: Mark[] = []
  for (const drop of room.drops) {
    const ring = planPoints(drop.corners).map((point) => toTarget(frame, point))
    if (ring.length < 3) continue
    const colour = isSelected(drop.id) ? 'accent' : 'soft'
    const dash = [style.text * 0.55, style.text * 0.3]
    marks.push({
      kind: 'polygon',
      role: 'drop',
      surfaceId: drop.id,
      rings: [ring],
      fill: null,
      stroke: { colour, width: style.fine, dash },
    })
    takeRing((x1, y1, x2, y2) => placer.takeLine(x1, y1, x2, y2, true), ring)
  }
  return marks
}

/** What hangs there and how high it leaves the room, in its own outline or beside it. */
export function dropLabels(context: PlanContext): Mark[] {
  const { room, result, frame, units } = context
  const marks: Mark[] = []
  for (const drop of room.drops) {
    const ring = planPoints(drop.corners).map((point) => toTarget(frame, point))
    if (ring.length < 3) continue
    const clear = result?.ledger.drops.find(({ id }) => id === drop.id)?.clearHeightMm
    const height = formatLength(clear ?? drop.undersideMm, units)
    const label = overheadLabel(context, ring, `${drop.name}, ${height} under`, drop.id)
    if (label) marks.push(label)
  }
  return marks
}

/** Names of columns and piers, beside them: inside the room where there is a place, for outside run the dimensions. */
export function obstacleLabels({ room, result, frame, style, placer, walls }: PlanContext): Mark[] {
  const marks: Mark[] = []
  const isInside = insideTest(walls.map(({ a }) => a))
  for (const obstacle of room.obstacles) {
    const ring = planPoints(obstacle.corners).map((point) => toTarget(frame, point))
    if (ring.length < 3) continue
    const [x, y] = middleOf(ring)
    const out = isOut(result, obstacle.id)
    const words = out ? `${obstacle.name}, taken out` : obstacle.name
    const lining = (out ? 0 : obstacle.liningMm) * frame.scale + style.air * 1.5
    const right = Math.max(...ring.map(([px]) => px)) + lining
    const left = Math.min(...ring.map(([px]) => px)) - lining
    const over = Math.min(...ring.map(([, py]) => py)) - lining
    const under = Math.max(...ring.map(([, py]) => py)) + lining
    const places = [
      [right, y + style.text * 0.36, 'start'],
      [left, y + style.text * 0.36, 'end'],
      [right, over, 'start'],
      [right, under + style.text * 0.75, 'start'],
      [left, over, 'end'],
      [left, under + style.text * 0.75, 'end'],
      [x, over - style.text, 'middle'],
      [x, under + style.text * 1.75, 'middle'],
    ] as const
    const candidates = places.map(([px, py, anchor]) => {
      const textStyle = { size: style.text, anchor, colour: 'soft', role: 'label', surfaceId: obstacle.id } as const
      const mark = textMark(words, px, py, textStyle)
      return { mark, boxes: [growBox(mark.box, style.air / 4)] }
    })
    const isIn = ({ mark: { box } }: (typeof candidates)[number]) => isInside([box.x + box.width / 2, box.y])
    const label = placer.placeFirst(candidates, isIn) ?? placer.placeFirst(candidates)
    if (label) marks.push(label.mark)
  }
  return marks
}

/** From one end to the other, as shares of the width: the middle is left to dimensions where there is a choice. */
const SHIFTS = Array.from({ length: 19 }, (_, step) => (step - 9) * 0.05)

/** Words about something overhead, in its outline or just over or under it. */
export function overheadLabel({ style, placer }: PlanContext, ring: readonly Place[], text: string, surfaceId: string) {
  const [x, y] = middleOf(ring)
  const xs = ring.map(([px]) => px)
  const ys = ring.map(([, py]) => py)
  const across = Math.max(...xs) - Math.min(...xs)
  const inside = y + style.text * 0.36
  const over = Math.min(...ys) - style.text * 0.45
  const under = Math.max(...ys) + style.text * 1.1
  const candidates = [inside, over, under].flatMap((baseline) =>
    SHIFTS.map((shift) => {
      const textStyle = { size: style.text, anchor: 'middle', colour: 'soft', role: 'label', surfaceId } as const
      const mark = textMark(text, x + shift * across, baseline, textStyle)
      return { mark, boxes: [growBox(mark.box, style.air / 2)] }
    }),
  )
  return placer.placeFirst(candidates)?.mark
}

function takeRing(takeLine: (x1: number, y1: number, x2: number, y2: number) => void, ring: readonly Place[]): void {
  ring.forEach((corner, index) => {
    const next = ring[(index + 1) % ring.length]!
    takeLine(corner[0], corner[1], next[0], next[1])
  })
}
