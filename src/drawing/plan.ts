import { marksBox } from '#drawing/bounds.ts'
import type { Box, Mark } from '#drawing/model.ts'
import { createPlacer } from '#drawing/place.ts'
import { boxLabels, boxMarks } from '#drawing/plan/boxes.ts'
import { clearDimensions } from '#drawing/plan/clearDimensions.ts'
import { furnitureLabels, furnitureMarks } from '#drawing/plan/furniture.ts'
import { gridMarks } from '#drawing/plan/grid.ts'
import { jointMarks } from '#drawing/plan/joints.ts'
import { openingLabels } from '#drawing/plan/openingLabels.ts'
import { openingMarks } from '#drawing/plan/openings.ts'
import { otherRoomLabels, otherRoomMarks } from '#drawing/plan/others.ts'
import { outlineGround, outlineMarks, takeEdges } from '#drawing/plan/outline.ts'
import { outsideDimensions } from '#drawing/plan/outsideDimensions.ts'
import { ceilingPartLabels, ceilingPartMarks, heightLabels, heightMarks } from '#drawing/plan/overhead.ts'
import type { PlanContext, PlanInput } from '#drawing/plan/planInput.ts'
import { roomLabel } from '#drawing/plan/roomLabel.ts'
import { scaleBarMarks } from '#drawing/plan/scaleBar.ts'
import { shareBarMarks } from '#drawing/plan/shareBars.ts'
import { shareKeyMarks } from '#drawing/plan/shareKeyMarks.ts'
import { shareLabels } from '#drawing/plan/shareLabels.ts'
import { dropLabels, dropMarks, obstacleLabels, obstacleMarks } from '#drawing/plan/standing.ts'
import { clearEdges, clearGround, stripMarks } from '#drawing/plan/strips.ts'
import { tagMarks } from '#drawing/plan/tags.ts'
import { type WallLine, wallLines } from '#drawing/plan/wallLines.ts'

/** Height of a label with its air, over its text's size. */
const LABEL = 2

/**
 * The plan of a room under a scheme, in painting order. Works for any outline: what finds no room (a number beside a
 * tiny wall) is left out whole, shapes never are.
 */
export function planMarks(input: PlanInput): Mark[] {
  const selection = new Set(input.selection)
  const context: PlanContext = {
    ...input,
    walls: wallLines(input.room, input.result, input.frame),
    placer: createPlacer(input.style.text * LABEL, input.view),
    isSelected: (id) => selection.has(id),
  }
  const { show = {} } = input
  const shapes = [
    ...(show.grid === true ? gridMarks(context) : []),
    ...otherRoomMarks(context),
    ...outlineGround(context),
    ...clearGround(context),
    ...stripMarks(context),
    ...clearEdges(context),
    ...(show.words === false ? [] : jointMarks(context)),
    ...outlineMarks(context),
    ...obstacleMarks(context),
    ...(hasThings(context) ? [...furnitureMarks(context), ...boxMarks(context)] : []),
    ...(show.openings === false ? [] : openingMarks(context)),
    ...shareBarMarks(context),
  ]
  if (show.words === false) {
    return [...shapes, ...dropMarks(context), ...(show.scaleBar === false ? [] : scaleBar(context, shapes))]
  }
  takeEdges(context)
  return [...shapes, ...annotations(context)]
}

/** Before there is an outline nothing stands anywhere. */
function hasThings({ room, show }: PlanContext): boolean {
  return show?.things !== false && room.corners.length >= 3
}

/** Walls shorter than this many text sizes place their tags first: they have the least choice. */
const SHORT = 14

/** Words and dimensions; the order is the order in which they choose their place. */
function annotations(context: PlanContext): Mark[] {
  const { show = {} } = context
  const marks: Mark[] = []
  const things = hasThings(context)
  if (things) marks.push(...heightMarks(context), ...ceilingPartMarks(context))
  marks.push(...dropMarks(context), ...dropLabels(context))
  if (things) marks.push(...furnitureLabels(context), ...boxLabels(context))
  const clear = show.clearDimensions === false ? [] : clearDimensions(context)
  marks.push(...clear)
  const shares = shareLabels(context)
  marks.push(...shares)
  if (show.openings !== false) marks.push(...openingLabels(context, namedOpenings(context, shares)))
  if (show.tags !== false) marks.push(...tagMarks(context, shortFirst(context), textBoxes(clear)))
  if (show.roomLabel !== false) marks.push(...roomLabel(context))
  marks.push(...obstacleLabels(context))
  if (things) marks.push(...ceilingPartLabels(context), ...heightLabels(context))
  if (show.dimensions !== false) marks.push(...outsideDimensions(context))
  marks.push(...otherRoomLabels(context))
  const bar = show.scaleBar === false ? [] : scaleBar(context, marks)
  return [...marks, ...bar, ...shareKeyMarks(context, marks, bar)]
}

/** Openings whose names stand before their shares. */
function namedOpenings({ room }: PlanContext, shares: readonly Mark[]): ReadonlySet<string> {
  const told = new Map(shares.flatMap((mark) => (mark.kind === 'text' ? [[mark.surfaceId, mark.text]] : [])))
  return new Set(room.openings.filter(({ id, name }) => told.get(id)?.startsWith(name)).map(({ id }) => id))
}

function shortFirst({ walls, style }: PlanContext): WallLine[] {
  const isShort = ({ length }: WallLine): boolean => length < SHORT * style.text
  return [...walls.filter(isShort), ...walls.filter((wall) => !isShort(wall))]
}

function textBoxes(marks: readonly Mark[]): Box[] {
  return marks.flatMap((mark) => (mark.kind === 'text' ? [mark.box] : []))
}

/** In the lower left corner of the view; without a view under everything else, flush with the outline. */
function scaleBar({ walls, frame, style, units, view }: PlanContext, others: readonly Mark[]): Mark[] {
  if (view) {
    return scaleBarMarks(frame, view.x + style.text * 1.5, view.y + view.height - style.text * 2.2, style, units)
  }
  const box = marksBox(others)
  const left = Math.min(...walls.map(({ a }) => a[0]))
  const bottom = Math.max(...walls.map(({ a }) => a[1]), box ? box.y + box.height : Number.NEGATIVE_INFINITY)
  if (!Number.isFinite(left) || !Number.isFinite(bottom)) return []
  return scaleBarMarks(frame, left, bottom + style.text, style, units)
}
