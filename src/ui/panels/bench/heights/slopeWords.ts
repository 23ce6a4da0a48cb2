import type { Plane } from '#analysis/results.ts'
import { fixed, formatThickness } from '#units/format.ts'
import { type LengthUnit, MM_PER_FOOT } from '#units/quantity.ts'

/** Less than this is level: a millimetre on 20 m. */
const LEVEL = 5e-5

/** How a plane lies: rises to the right and up the page by 8.3 mm in a metre (0.48°). */
export function slopeWords({ perX, perY }: Pick<Plane, 'perX' | 'perY'>, unit: LengthUnit): string {
  const slope = Math.hypot(perX, perY)
  if (slope < LEVEL) return 'level'
  const inFoot = unit === 'ft-in' ? `, ${formatThickness(slope * MM_PER_FOOT, unit)} in a foot` : ''
  const degrees = (Math.atan(slope) * 180) / Math.PI
  return `rises ${wayUp(perX, perY)} by ${fixed(slope * 1000, 1)} mm in a metre${inFoot} (${fixed(degrees, 2)}°)`
}

/** Towards which side of the page it rises; a part of less than a tenth is not worth a word. */
function wayUp(perX: number, perY: number): string {
  const most = Math.max(Math.abs(perX), Math.abs(perY))
  const across = Math.abs(perX) < most / 10 ? [] : [perX > 0 ? 'to the right' : 'to the left']
  const along = Math.abs(perY) < most / 10 ? [] : [perY > 0 ? 'up the page' : 'down the page']
  return [...across, ...along].join(' and ')
}
