import { type ScaleLinear, scaleLinear } from 'd3-scale'
import { line } from 'd3-shape'
import type { SchemeResult } from '#analysis/results.ts'
import { frontier } from '#ui/charts/frontier.ts'
import { placeLabels } from '#ui/charts/placeLabels.ts'
import { SchemeSign, schemeDash } from '#ui/charts/SchemeSign.tsx'
import { formatArea } from '#units/format.ts'
import { type LengthUnit, SQUARE_FEET_PER_M2 } from '#units/quantity.ts'

const WIDTH = 420
const HEIGHT = 190
const LEFT = 70
const RIGHT = 14
const TOP = 12
const BOTTOM = 40

export interface TradeMark {
  /** Place among the schemes: decides shape and line pattern. */
  readonly index: number
  readonly name: string
  readonly result: SchemeResult
}

interface Props {
  readonly marks: readonly TradeMark[]
  readonly units: LengthUnit
}

interface Point {
  readonly mark: TradeMark
  readonly depth: number
  readonly quiet: number
  readonly low: number
  readonly high: number
}

/** Floor area lost against the lowest rated surface, one sign a scheme. */
export function TradeOff({ marks, units }: Props) {
  const points = marks.flatMap((mark) => pointOf(mark, units))
  if (points.length === 0) return null
  const most = Math.max(1, ...points.map(({ depth }) => depth))
  const x = scaleLinear([Math.min(0, ...points.map(({ depth }) => depth)), most * 1.15], [LEFT, WIDTH - RIGHT])
  const low = Math.floor(Math.min(...points.map((point) => point.low)) / 5) * 5
  const high = Math.ceil(Math.max(...points.map((point) => point.high)) / 5) * 5
  const y = scaleLinear([low, high], [HEIGHT - BOTTOM, TOP])
  const best = frontier(points)
  return (
    <svg className="trade-off" width={WIDTH} height={HEIGHT} viewBox={`0 0 ${WIDTH} ${HEIGHT}`} role="img">
      <title>{points.map((point) => sentence(point, units)).join('; ')}</title>
      <TradeAxes x={x} y={y} units={units} />
      <path
        className="chart-frontier"
        d={line()(best.map(({ depth, quiet }): [number, number] => [x(depth), y(quiet)])) ?? ''}
      />
      {points.map((point) => (
        <g key={point.mark.index}>
          <line
            className="ruler-whisker"
            strokeDasharray={schemeDash(point.mark.index)}
            x1={x(point.depth)}
            x2={x(point.depth)}
            y1={y(point.low)}
            y2={y(point.high)}
          />
          <g transform={`translate(${x(point.depth)} ${y(point.quiet)})`}>
            <SchemeSign index={point.mark.index} />
          </g>
        </g>
      ))}
      <TradeLabels points={points} x={x} y={y} />
    </svg>
  )
}

/** B2 of "B2 clips, low-profile ceiling": the table beside the chart says the rest. */
function shortSign(name: string): string {
  return /^[A-Z]\d?(?= )/.exec(name)?.[0] ?? name
}

function pointOf(mark: TradeMark, units: LengthUnit): readonly Point[] {
  const lowest = mark.result.surfaces.find(({ id }) => id === mark.result.lowestRated?.surfaceId)
  const rating = lowest?.rating
  if (!rating) return []
  const { existing, obstacles, clear } = mark.result.ledger.floorAreaM2
  const lost = existing - obstacles - clear
  return [
    {
      mark,
      depth: units === 'mm' ? lost : lost * SQUARE_FEET_PER_M2,
      quiet: rating.stc,
      low: rating.likely[0],
      high: rating.likely[1],
    },
  ]
}

function sentence({ mark, quiet, low, high, depth }: Point, units: LengthUnit): string {
  const lost = formatArea(units === 'mm' ? depth : depth / SQUARE_FEET_PER_M2, units)
  return `${mark.name}: loses ${lost}, lowest rated surface STC ${quiet}, likely ${low}-${high}`
}

interface Scales {
  readonly x: ScaleLinear<number, number>
  readonly y: ScaleLinear<number, number>
}

function TradeAxes({ x, y, units }: Scales & { readonly units: LengthUnit }) {
  return (
    <g>
      {y.ticks(4).map((tick) => (
        <g key={tick}>
          <line className="chart-grid" x1={LEFT} x2={WIDTH - RIGHT} y1={y(tick)} y2={y(tick)} />
          <text className="chart-tick" x={LEFT - 8} y={y(tick) + 4.5} textAnchor="end">
            {tick}
          </text>
        </g>
      ))}
      <text className="chart-tick chart-soft" x={4} y={TOP + 4}>
        STC
      </text>
      <line className="chart-axis" x1={LEFT} x2={WIDTH - RIGHT} y1={HEIGHT - BOTTOM} y2={HEIGHT - BOTTOM} />
      {x.ticks(5).map((tick) => (
        <text key={tick} className="chart-tick" x={x(tick)} y={HEIGHT - BOTTOM + 18} textAnchor="middle">
          {tick}
        </text>
      ))}
      <text className="chart-tick chart-soft" x={WIDTH - RIGHT} y={HEIGHT - 5} textAnchor="end">
        floor lost, {units === 'mm' ? 'm²' : 'ft²'}; lowest rated surface, likely range
      </text>
    </g>
  )
}

function TradeLabels({ points, x, y }: Scales & { readonly points: readonly Point[] }) {
  const labels = placeLabels(
    points.map((point) => ({
      id: String(point.mark.index),
      text: shortSign(point.mark.name),
      x: x(point.depth),
      y: y(point.quiet),
      radius: 7,
    })),
    {
      size: 13,
      within: { x: LEFT, y: 0, width: WIDTH - LEFT, height: HEIGHT - BOTTOM },
      taken: points.map((point) => ({ x: x(point.depth) - 7, y: y(point.quiet) - 7, width: 14, height: 14 })),
    },
  )
  return (
    <g className="ruler-labels">
      {labels.map((label) => (
        <text key={label.id} x={label.x} y={label.y} textAnchor={label.anchor}>
          {label.text}
        </text>
      ))}
    </g>
  )
}
