import { scaleLinear } from 'd3-scale'
import { area, line } from 'd3-shape'
import { BANDS_HZ } from '#acoustics/bands.ts'
import { SHOWN_LOSS_CAP_DB } from '#acoustics/curve.ts'
import { publishedStc } from '#analysis/published.ts'
import type { SurfaceRating } from '#analysis/results.ts'
import { bandPlace, CurveLabels, isShown, lossAt, type Scale } from '#ui/charts/CurveLabels.tsx'
import { likelyHalf } from '#ui/charts/likely.ts'
import type { Decibels } from '#units/quantity.ts'

const TICKS_HZ = [63, 125, 250, 500, 1000, 2000, 4000]
const LEFT = 46
const RIGHT = 12
const TOP = 10
const BOTTOM = 24

interface Props {
  readonly width: number
  readonly height: number
  /** What is drawn first: pointed at, else present. */
  readonly shown: SurfaceRating
  readonly shownName: string
  /** What stands in the scheme, where something else is pointed at. */
  readonly present: SurfaceRating | null
  readonly presentName: string
}

/**
 * Transmission loss over the bands with its likely range, the contour it is rated by, what it falls short of that
 * contour, the contour of a published value where there is one, and its dips by name.
 */
export function LossCurve({ width, height, shown, shownName, present, presentName }: Props) {
  const x = scaleLinear([0, BANDS_HZ.length - 1], [LEFT + 6, width - RIGHT])
  const y = scaleLinear([0, SHOWN_LOSS_CAP_DB], [height - BOTTOM, TOP]).clamp(true)
  const path = line<number>((_, band) => x(band), y)
  const { lossDb, spreadBandDb, resonances } = shown.prediction
  const range = area<number>(
    (_, band) => x(band),
    (loss, band) => y(loss - likelyHalf(spreadBandDb[band]!)),
    (loss, band) => y(loss + likelyHalf(spreadBandDb[band]!)),
  )
  const contour = contourPoints(shown.evidence.stc.contour, x, y)
  const print = publishedContour(shown)
  const dips = resonances.filter(({ hz }) => isShown(lossDb, bandPlace(hz)))
  const label = `Transmission loss of ${shownName} over one-third octaves, with its STC contour; in words and in a table below.`
  return (
    <svg
      className="loss-curve"
      width={width}
      height={height}
      viewBox={`0 0 ${width} ${height}`}
      role="img"
      aria-label={label}
    >
      <CurveAxes x={x} y={y} width={width} height={height} />
      <path className="curve-range" d={range([...lossDb]) ?? ''} />
      <Shortfalls shown={shown} x={x} y={y} />
      <path className="curve-contour" d={line()(contour) ?? ''} />
      {print && <path className="curve-published" d={line()(contourPoints(print, x, y)) ?? ''} />}
      {present && <path className="curve-present" d={path([...present.prediction.lossDb]) ?? ''} />}
      <path className="curve-shown" d={path([...lossDb]) ?? ''} />
      {dips.map(({ hz }) => {
        const place = bandPlace(hz)
        return <circle key={hz} className="curve-dip" cx={x(clampPlace(place))} cy={y(lossAt(lossDb, place))} r={3} />
      })}
      <CurveLabels
        {...{ x, y, shown, dips }}
        within={{ x: LEFT, y: 0, width: width - LEFT, height: height - BOTTOM }}
        published={print}
        names={[{ rating: shown, text: shownName }, ...(present ? [{ rating: present, text: presentName }] : [])]}
      />
    </svg>
  )
}

/** The same contour at the published value; null: none in print, or where the prediction's own contour lies. */
function publishedContour({ published, evidence, stc }: SurfaceRating): readonly (Decibels | null)[] | null {
  const print = publishedStc(published)
  if (print === null || print.stc === stc) return null
  return evidence.stc.contour.map((level) => (level === null ? null : level + print.stc - stc))
}

function contourPoints(contour: readonly (Decibels | null)[], x: Scale, y: Scale): [number, number][] {
  return contour.flatMap((level, band): [number, number][] =>
    level === null || level > SHOWN_LOSS_CAP_DB ? [] : [[x(band), y(level)]],
  )
}

/** Bars from the curve up to the contour, one a band, where the curve falls short of it. */
function Shortfalls({ shown, x, y }: { readonly shown: SurfaceRating; readonly x: Scale; readonly y: Scale }) {
  const { contour, shortfalls, limitingBandHz } = shown.evidence.stc
  const wide = (x(1) - x(0)) * 0.62
  return (
    <g>
      {shortfalls.map((short, band) => {
        const level = contour[band]
        if (short <= 0 || level == null) return null
        const isLimit = BANDS_HZ[band] === limitingBandHz
        return (
          <rect
            key={BANDS_HZ[band]}
            className={isLimit ? 'curve-short is-limit' : 'curve-short'}
            x={x(band) - wide / 2}
            y={y(level)}
            width={wide}
            height={Math.max(0, y(level - short) - y(level))}
          />
        )
      })}
    </g>
  )
}

function clampPlace(place: number): number {
  return Math.max(0, Math.min(BANDS_HZ.length - 1, place))
}

function CurveAxes({ x, y, width, height }: { x: Scale; y: Scale; width: number; height: number }) {
  return (
    <g>
      {[0, 20, 40, 60, 80].map((level) => (
        <g key={level}>
          <line className="chart-grid" x1={LEFT} x2={width - RIGHT} y1={y(level)} y2={y(level)} />
          <text className="chart-tick" x={LEFT - 6} y={y(level) + 4.5} textAnchor="end">
            {level === 80 ? '80 dB' : level}
          </text>
        </g>
      ))}
      {TICKS_HZ.map((hz) => (
        <text key={hz} className="chart-tick" x={x(BANDS_HZ.indexOf(hz))} y={height - 6} textAnchor="middle">
          {hz < 1000 ? hz : `${hz / 1000}k`}
        </text>
      ))}
    </g>
  )
}
