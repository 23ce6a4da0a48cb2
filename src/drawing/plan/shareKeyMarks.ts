import type { Room } from '#analysis/room.ts'
import { marksBox } from '#drawing/bounds.ts'
import type { Box, Mark, Place } from '#drawing/model.ts'
import { growBox } from '#drawing/place.ts'
import type { PlanContext } from '#drawing/plan/planInput.ts'
import { insideTest } from '#drawing/plan/rings.ts'
import { type NamedShare, type PlanShares, shareKey } from '#drawing/plan/shares.ts'
import { CAP_HEIGHT, DESCENT, LINE_HEIGHT, textMark, textWidth, wrapText } from '#drawing/text.ts'

/** Longest line of the key, in text sizes. */
const WIDEST = 46
/** Narrowest column it is set in where it stands beside the plan. */
const NARROWEST = 9

/**
 * What the numbers are shares of, and what has no place on the plan: at the foot of the view, else in a column beside the
 * room; without a view under everything else. Where a view has no room for it at all it is left to whoever shows the view.
 * @param drawn  all that is drawn so far but the scale bar
 */
export function shareKeyMarks(context: PlanContext, drawn: readonly Mark[], scaleBar: readonly Mark[]): Mark[] {
  const { shares, view, style, show } = context
  if (!shares || show?.shareKey === false) return []
  const key = shareKeyText(context.room, shares, drawn)
  if (!view) return underAll(context, key, [...drawn, ...scaleBar])
  const bar = marksBox(scaleBar)
  if (bar) context.placer.take(growBox(bar, style.air))
  const isInside = insideTest(context.walls.map(({ a }) => a))
  const beside = ({ box }: Block): boolean => !isInside([box.x + box.width / 2, box.y + box.height / 2])
  const found = context.placer.placeFirst(blocks(context, view, bar, key), beside)
  return found ? linesAt(context, found.lines, [found.box.x, found.box.y]) : []
}

/** The words that belong to a plan with shares, as it was drawn. */
export function shareKeyText(room: Room, shares: PlanShares, drawn: readonly Mark[]): string {
  return shareKey(shares, unplaced(room, shares, drawn))
}

/** Walls and openings whose numbers are not on the plan. */
function unplaced(room: Room, { onPlan }: PlanShares, drawn: readonly Mark[]): readonly NamedShare[] {
  const placed = new Set(
    drawn.flatMap((mark) => (mark.kind === 'text' && mark.role === 'share' ? [mark.surfaceId] : [])),
  )
  return [...onPlan]
    .filter(([id]) => !placed.has(id))
    .map(([id, share]) => {
      const wall = room.walls.findIndex((candidate) => candidate.id === id)
      const opening = room.openings.find((candidate) => candidate.id === id)
      return { label: opening?.name ?? `Wall ${wall + 1}`, share }
    })
}

interface Block {
  readonly lines: readonly string[]
  readonly box: Box
  readonly boxes: readonly Box[]
}

function* blocks(context: PlanContext, view: Box, bar: Box | null, key: string): Generator<Block> {
  const { style } = context
  const edge = style.text
  const foot = bar ? bar.x + bar.width + 2 * style.text : view.x + edge
  const bottom = view.y + view.height - style.text * 0.5
  const wide = Math.min(WIDEST * style.text, view.x + view.width - edge - foot)
  if (wide >= NARROWEST * style.text)
    yield blockAt(context, key, wide, (size) => [view.x + view.width - edge - size.width, bottom - size.height])
  for (const columns of [18, 13, NARROWEST]) {
    for (const right of [true, false]) {
      for (let down = 0; down * style.text * 2 < view.height; down++) {
        yield blockAt(context, key, columns * style.text, ({ width, height }) => [
          right ? view.x + view.width - edge - width : view.x + edge,
          bottom - height - down * style.text * 2,
        ])
      }
    }
  }
}

function blockAt(
  { style }: PlanContext,
  key: string,
  width: number,
  at: (size: { readonly width: number; readonly height: number }) => Place,
): Block {
  const lines = wrapText(key, width, style.text, 400)
  const size = {
    width: Math.max(...lines.map((line) => textWidth(line, style.text, 400))),
    height: ((lines.length - 1) * LINE_HEIGHT + CAP_HEIGHT + DESCENT) * style.text,
  }
  const [x, y] = at(size)
  const box = { x, y, ...size }
  return { lines, box, boxes: [growBox(box, style.air * 0.5)] }
}

function underAll(context: PlanContext, key: string, drawn: readonly Mark[]): Mark[] {
  const box = marksBox(drawn)
  if (!box) return []
  const { style } = context
  const width = Math.max(box.width, style.text * 18)
  return linesAt(context, wrapText(key, width, style.text, 400), [box.x, box.y + box.height + style.text])
}

function linesAt({ style }: PlanContext, lines: readonly string[], [x, y]: Place): Mark[] {
  const size = style.text
  return lines.map((line, index) =>
    textMark(line, x, y + (CAP_HEIGHT + index * LINE_HEIGHT) * size, { size, colour: 'ink', role: 'share' }),
  )
}
