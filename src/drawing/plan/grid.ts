import { toPlan } from '#drawing/frame.ts'
import type { Mark } from '#drawing/model.ts'
import type { PlanContext } from '#drawing/plan/planInput.ts'
import { MM_PER_FOOT } from '#units/quantity.ts'

/** Most lines each way; a coarser grid is drawn instead. */
const MOST_LINES = 120

/** A light grid over the view, in whole feet or half metres, as fine as can be told apart. */
export function gridMarks({ frame, view, units, style }: PlanContext): Mark[] {
  if (view === undefined) return []
  const steps = units === 'mm' ? [100, 500, 1000, 5000, 10000] : [1, 2, 4, 10, 20, 40].map((feet) => feet * MM_PER_FOOT)
  const longest = Math.max(view.width, view.height)
  const step = steps.find((mm) => mm * frame.scale >= 28 && longest / (mm * frame.scale) <= MOST_LINES)
  if (step === undefined) return []
  const [left, top] = toPlan(frame, [view.x, view.y])
  const [right, bottom] = toPlan(frame, [view.x + view.width, view.y + view.height])
  const runs: number[][] = []
  for (let line = Math.ceil(left / step); line * step <= right; line++) {
    const x = frame.x + line * step * frame.scale
    runs.push([x, view.y, x, view.y + view.height])
  }
  for (let line = Math.ceil(bottom / step); line * step <= top; line++) {
    const y = frame.y - line * step * frame.scale
    runs.push([view.x, y, view.x + view.width, y])
  }
  return [{ kind: 'lines', role: 'grid', runs, stroke: { colour: 'line', width: style.hair * 0.7 } }]
}
