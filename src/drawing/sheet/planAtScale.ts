import { marksBox } from '#drawing/bounds.ts'
import type { Frame } from '#drawing/frame.ts'
import type { Box, Mark } from '#drawing/model.ts'
import { scaleBarMarks } from '#drawing/plan/scaleBar.ts'
import { shareKeyText } from '#drawing/plan/shareKeyMarks.ts'
import { planShares } from '#drawing/plan/shares.ts'
import { planMarks } from '#drawing/plan.ts'
import { markedReceiver } from '#drawing/sheet/heard.ts'
import { type SheetScale, standardScales } from '#drawing/sheet/scales.ts'
import type { SheetInput } from '#drawing/sheet/sheetInput.ts'
import { SHEET_STYLE as STYLE } from '#drawing/style.ts'
import { LINE_HEIGHT, textMark, textWidth, wrapText } from '#drawing/text.ts'

export interface PlanOnSheet {
  readonly marks: readonly Mark[]
  readonly scale: SheetScale
}

/** The plan at the largest standard scale that fits; underneath its scale bar, its scale, and what its shares are of. */
export function planAtScale(input: SheetInput, area: Box): PlanOnSheet {
  const scales = standardScales(input.units)
  const base = { ...planOf(input), style: STYLE, show: { scaleBar: false, shareKey: false } }
  for (const [index, scale] of scales.entries()) {
    const frame: Frame = { scale: 1 / scale.ratio, x: 0, y: 0 }
    const marks = planMarks({ ...base, frame })
    const key = base.shares ? shareKeyText(input.room, base.shares, marks) : ''
    const foot = footOf(input, scale, frame, key, area)
    const box = marksBox(marks)
    const fits = box === null || (box.width <= area.width && box.height <= area.height - foot.height)
    if (!fits && index < scales.length - 1) continue
    const moved: Frame = {
      ...frame,
      x: area.x + area.width / 2 - (box ? box.x + box.width / 2 : 0),
      y: area.y + (area.height - foot.height) / 2 - (box ? box.y + box.height / 2 : 0),
    }
    return { scale, marks: [...planMarks({ ...base, frame: moved }), ...foot.marks] }
  }
  throw new Error('unreachable: the last scale is always taken')
}

/** What the plan on a sheet shows: of somebody who hears the room also by which way. */
function planOf({ room, result, units, heard }: SheetInput) {
  const marked = heard && markedReceiver(heard)
  return { room, result, units, shares: (marked && planShares(marked.answer, room)) ?? undefined }
}

/** Of the width under a plan, what the words beside the scale have to have; else they stand over it. */
const KEY_SHARE = 0.4

interface Foot {
  readonly height: number
  readonly marks: readonly Mark[]
}

function footOf({ units }: SheetInput, scale: SheetScale, frame: Frame, key: string, area: Box): Foot {
  const size = STYLE.text
  const y = area.y + area.height - size * 2
  const bar = scaleBarMarks(frame, area.x + 1, y, STYLE, units)
  const beside = area.x + size * 2 + (marksBox(bar)?.width ?? 0)
  const baseline = y + size * 0.55
  const usual: Foot = {
    height: size * 3.4,
    marks: [...bar, textMark(scale.text, beside, baseline, { size, colour: 'soft', role: 'scale-bar' })],
  }
  if (key === '') return usual
  const left = beside + textWidth(scale.text, size, 400) + size * 3
  const isBeside = area.x + area.width - left >= area.width * KEY_SHARE
  const from = isBeside ? left : area.x
  const lines = wrapText(key, area.x + area.width - from, size, 400)
  const last = isBeside ? baseline + size * 1.1 : baseline - size * 2.4
  const up = (index: number): number => last - (lines.length - 1 - index) * size * LINE_HEIGHT
  const text = lines.map((line, index) => textMark(line, from, up(index), { size, role: 'share' }))
  return {
    height: Math.max(usual.height, area.y + area.height - up(0) + size * 2),
    marks: [...usual.marks, ...text],
  }
}
