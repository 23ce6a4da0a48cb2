import type { CeilingPart, HeightPoint, Room } from '#analysis/room.ts'
import { type Frame, toTarget } from '#drawing/frame.ts'
import type { Mark, Place } from '#drawing/model.ts'
import { growBox } from '#drawing/place.ts'
import type { PlanContext } from '#drawing/plan/planInput.ts'
import { insideTest, planPoints, polygonRings } from '#drawing/plan/rings.ts'
import { overheadLabel } from '#drawing/plan/standing.ts'
import type { WallLine } from '#drawing/plan/wallLines.ts'
import { CAP_HEIGHT, textMark } from '#drawing/text.ts'
import { intersection } from '#geometry/clip.ts'
import { formatLength } from '#units/format.ts'
import type { LengthUnit } from '#units/quantity.ts'

/** Parts of the ceiling with heights of their own: a dash-dot outline. */
export function ceilingPartMarks({ room, frame, style, isSelected, placer }: PlanContext): Mark[] {
  return room.ceilingParts.flatMap((part): Mark[] => {
    const rings = shownRings(room, part, frame, isSelected(part.id))
    if (rings.length === 0) return []
    for (const ring of rings) {
      ring.forEach(([x, y], index) => {
        const next = ring[(index + 1) % ring.length]!
        placer.takeLine(x, y, next[0], next[1], true)
      })
    }
    const colour = isSelected(part.id) ? 'accent' : 'soft'
    const dash = [style.text * 0.8, style.text * 0.25, style.text * 0.12, style.text * 0.25]
    const stroke = { colour, width: style.fine, dash } as const
    return [{ kind: 'polygon', role: 'ceiling-part', surfaceId: part.id, rings, fill: null, stroke }]
  })
}

/** A part as far as it lies over the room; one in the hand whole, so that its handles stand at its corners. */
function shownRings(room: Room, part: CeilingPart, frame: Frame, whole: boolean): Place[][] {
  const ring = planPoints(part.corners)
  if (ring.length < 3) return []
  if (whole) return [ring.map((point) => toTarget(frame, point))]
  const over = intersection([{ outline: ring, holes: [] }], [{ outline: planPoints(room.corners), holes: [] }])
  return over.flatMap((shape) => polygonRings(frame, shape))
}

/** Name and measured height of each part. */
export function ceilingPartLabels(context: PlanContext): Mark[] {
  return context.room.ceilingParts.flatMap((part): Mark[] => {
    const [ring] = shownRings(context.room, part, context.frame, context.isSelected(part.id))
    if (!ring) return []
    const label = overheadLabel(context, ring, `${part.name}, ${heightWords(part, context.units)}`, part.id)
    return label ? [label] : []
  })
}

function heightWords({ heights }: CeilingPart, units: LengthUnit): string {
  const all = heights.map(({ heightMm }) => heightMm)
  const [low, high] = [formatLength(Math.min(...all), units), formatLength(Math.max(...all), units)]
  return low === high ? `${low} high` : `${low} to ${high} high`
}

/** Half a cross, over the text's size. */
const CROSS = 0.35

/** Where heights were measured: a small cross with the height. One height alone is the room's, and its label says it. */
export function heightMarks(context: PlanContext): Mark[] {
  const { frame, style, placer, isSelected } = context
  return shownHeights(context).map(({ id, xMm, yMm }) => {
    const [x, y] = toTarget(frame, [xMm, yMm])
    const reach = style.text * CROSS
    placer.take({ x: x - reach, y: y - reach, width: 2 * reach, height: 2 * reach })
    const runs = [
      [x - reach, y - reach, x + reach, y + reach],
      [x - reach, y + reach, x + reach, y - reach],
    ]
    const colour = isSelected(id) ? 'accent' : 'soft'
    return { kind: 'lines', role: 'height', surfaceId: id, runs, stroke: { colour, width: style.medium } }
  })
}

export function heightLabels(context: PlanContext): Mark[] {
  const { frame, style, units, placer, isSelected } = context
  const isInside = insideTest(context.walls.map(({ a }) => a))
  return shownHeights(context).flatMap(({ id, xMm, yMm, heightMm }): Mark[] => {
    const [x, y] = toTarget(frame, [xMm, yMm])
    const away = style.text * (CROSS + 0.4)
    const colour = isSelected(id) ? 'accent' : 'soft'
    const level = y + (CAP_HEIGHT * style.text) / 2
    const places = [
      [x + away, level, 'start'],
      [x - away, level, 'end'],
      [x, y - away, 'middle'],
      [x, y + away + CAP_HEIGHT * style.text, 'middle'],
      [x + away, y - away, 'start'],
      [x + away, y + away + CAP_HEIGHT * style.text, 'start'],
      [x - away, y - away, 'end'],
      [x - away, y + away + CAP_HEIGHT * style.text, 'end'],
    ] as const
    const candidates = places.map(([px, py, anchor]) => {
      const textStyle = { size: style.text, anchor, colour, role: 'height', surfaceId: id } as const
      const mark = textMark(formatLength(heightMm, units), px, py, textStyle)
      return { mark, boxes: [growBox(mark.box, style.air / 4)] }
    })
    // Outside the outline stand the dimensions.
    const found = placer.placeFirst(candidates, ({ mark }) => isInside([mark.box.x + mark.box.width / 2, mark.box.y]))
    return found ? [found.mark] : []
  })
}

/** A room that was cut in two keeps what was measured beyond the partition: there it is drawn only in the hand. */
function shownHeights({ room, walls, frame, isSelected }: PlanContext): readonly HeightPoint[] {
  const all = allHeights(room)
  const isInside = insideTest(walls.map(({ a }) => a))
  const isHere = (point: Place) => isInside(point) || walls.some((wall) => isAt(wall, point, WALL_MM * frame.scale))
  return all.filter(({ id, xMm, yMm }) => isSelected(id) || (all.length > 1 && isHere(toTarget(frame, [xMm, yMm]))))
}

/** A height measured this near a wall, on whichever side the survey closed, is the room's. */
const WALL_MM = 150

/** Within a distance of a wall, target units. */
function isAt({ a, along, length }: WallLine, [x, y]: Place, reach: number): boolean {
  const run = Math.max(0, Math.min(length, (x - a[0]) * along[0] + (y - a[1]) * along[1]))
  return Math.hypot(x - a[0] - along[0] * run, y - a[1] - along[1] * run) <= reach
}

function allHeights({ heights, ceilingParts }: Room): readonly HeightPoint[] {
  return [...heights, ...ceilingParts.flatMap((part) => part.heights)]
}
