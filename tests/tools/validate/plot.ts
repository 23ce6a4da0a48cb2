import { scaleLinear } from 'd3-scale'
import { leaveOneOut } from '../anchor/evaluate.ts'
import { physicsError, ratedRows } from './physics.ts'

const SIDE = 420
const MARGIN = 48
const RANGE = [20, 75] as const

type Point = readonly [published: number, predicted: number]

function panel(x0: number, title: string, points: readonly Point[]): string {
  const x = scaleLinear(RANGE, [x0 + MARGIN, x0 + SIDE - 12])
  const y = scaleLinear(RANGE, [SIDE - MARGIN, 28])
  const line = (by: number, dash: string) =>
    `<line x1="${x(RANGE[0])}" y1="${y(RANGE[0] + by)}" x2="${x(RANGE[1])}" y2="${y(RANGE[1] + by)}" stroke="#777" ${dash}/>`
  const ticks = [20, 30, 40, 50, 60, 70].map(
    (tick) =>
      `<text x="${x(tick)}" y="${SIDE - MARGIN + 18}" text-anchor="middle">${tick}</text><text x="${x0 + MARGIN - 8}" y="${y(tick) + 4}" text-anchor="end">${tick}</text>`,
  )
  const dots = points.map(
    ([published, predicted]) =>
      `<circle cx="${x(published).toFixed(1)}" cy="${y(predicted).toFixed(1)}" r="2.6" fill="#1d5b79" fill-opacity="0.55"/>`,
  )
  return [
    `<text x="${x(47.5)}" y="16" text-anchor="middle" font-weight="bold">${title}</text>`,
    line(0, ''),
    line(3, 'stroke-dasharray="4 4"'),
    line(-3, 'stroke-dasharray="4 4"'),
    ...ticks,
    `<text x="${x(47.5)}" y="${SIDE - 8}" text-anchor="middle">published STC</text>`,
    ...dots,
  ].join('\n')
}

/** Predicted against published STC, calculated alone and anchored without the row; dashed: 3 STC off. */
export function validationPlot(): string {
  const rows = ratedRows()
  const unseen = new Map(leaveOneOut().map(({ id, error }) => [id, error]))
  const physics = rows.map((one): Point => [one.row.stc!, one.row.stc! + physicsError(one)])
  const anchored = rows.flatMap(({ row }): Point[] =>
    unseen.has(row.id) ? [[row.stc!, row.stc! + unseen.get(row.id)!]] : [],
  )
  return `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${2 * SIDE} ${SIDE}" font-family="sans-serif" font-size="12">
<rect width="100%" height="100%" fill="#fff"/>
${panel(0, `calculated alone, ${physics.length} rows`, physics)}
${panel(SIDE, `anchored without the row, ${anchored.length} rows`, anchored)}
</svg>
`
}
