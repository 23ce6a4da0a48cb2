import type { Frame } from '#drawing/frame.ts'
import type { Mark } from '#drawing/model.ts'
import type { PlanStyle } from '#drawing/style.ts'
import { textMark } from '#drawing/text.ts'
import { type LengthUnit, MM_PER_FOOT } from '#units/quantity.ts'

const FEET = [1, 2, 4, 8, 16, 32, 64, 128]
const METRES = [0.5, 1, 2, 5, 10, 20, 50]

/** A bar of whole feet or metres near `target` long, its left end at x, y; half of it black. */
export function scaleBarMarks(frame: Frame, x: number, y: number, style: PlanStyle, units: LengthUnit): Mark[] {
  const unitMm = units === 'mm' ? 1000 : MM_PER_FOOT
  const target = style.text * 11
  const steps = units === 'mm' ? METRES : FEET
  const whole = steps.reduce((best, step) =>
    Math.abs(step * unitMm * frame.scale - target) < Math.abs(best * unitMm * frame.scale - target) ? step : best,
  )
  const length = whole * unitMm * frame.scale
  const height = style.text * 0.36
  const cell = (from: number, to: number, fill: 'ink' | 'clear'): Mark => ({
    kind: 'polygon',
    role: 'scale-bar',
    rings: [
      [
        [x + length * from, y],
        [x + length * to, y],
        [x + length * to, y + height],
        [x + length * from, y + height],
      ],
    ],
    fill,
    stroke: { colour: 'ink', width: style.fine },
  })
  const label = (share: number): Mark =>
    textMark(lengthText(whole * share, units), x + length * share, y + height + style.text * 1.05, {
      size: style.text,
      anchor: 'middle',
      role: 'scale-bar',
    })
  return [cell(0, 0.5, 'ink'), cell(0.5, 1, 'clear'), label(0), label(0.5), label(1)]
}

function lengthText(value: number, units: LengthUnit): string {
  if (value === 0) return '0'
  if (units === 'mm') return `${value} m`
  return value < 1 ? `${value * 12}"` : `${value}'`
}
