import { scaleLinear } from 'd3-scale'
import { area, line } from 'd3-shape'
import { BANDS_HZ } from '#acoustics/bands.ts'
import { SHOWN_LOSS_CAP_DB } from '#acoustics/curve.ts'
import type { SurfaceRating } from '#analysis/results.ts'
import { likelyHalf } from '#ui/charts/likely.ts'
import { placeLabels } from '#ui/charts/placeLabels.ts'

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

/** Transmission loss over the bands, with its likely range, the contour it is rated by, and its dips by name. */
export function LossCurve({ width, height, shown, shownName, present, presentName }: Props) {
  const x = scaleLinear([0, BANDS_HZ.length - 1], [LEFT + 6, width - RIGHT])
  const y = scaleLinear([0, SHOWN_LOSS_CAP_DB], [height - BOTTOM, TOP]).clamp(true)
  const path = line<number>((_, band) => x(band), y)
  const spread = shown.prediction.spreadBandDb
  const range = area<number>(
    (_, band) => x(band),
    (loss, band) => y(loss - likelyHalf(spread[band]!)),
    (loss, band) => y(loss + likelyHalf(spread[band]!)),
  )
  const contour = shown.evidence.stc.contour.flatMap((level, band): [number, number][] =>
    level === null || level > SHOWN_LOSS_CAP_DB ? [] : [[x(band), y(level)]],
  )
  return (
    <svg className="loss-curve" width={width} height={height} viewBox={`0 0 ${width} ${height}`} role="img">
      <title>{`Transmission loss over one-third octaves. ${curveWords(shown, shownName)}`}</title>
      <CurveAxes x={x} y={y} width={width} height={height} />
      <path className="curve-range" d={range([...shown.prediction.lossDb]) ?? ''} />
      <path className="curve-contour" d={line()(contour) ?? ''} />
      {present && <path className="curve-present" d={path([...present.prediction.lossDb]) ?? ''} />}
      <path className="curve-shown" d={path([...shown.prediction.lossDb]) ?? ''} />
      <CurveWords
        {...{ x, y, width, height }}
        shown={shown}
        names={[
          { rating: shown, text: shownName, isShown: true },
          ...(present ? [{ rating: present, text: presentName, isShown: false }] : []),
        ]}
      />
    </svg>
  )
}

/** The curve in words: what a chart says to somebody who cannot see it. */
export function curveWords(rating: SurfaceRating, name: string): string {
  const { lossDb, resonances } = rating.prediction
  const values = TICKS_HZ.map(
    (hz) => `${Math.min(SHOWN_LOSS_CAP_DB, Math.round(lossDb[BANDS_HZ.indexOf(hz)]!))} dB at ${hz} Hz`,
  )
  const dips = resonances.map(({ hz, cause }) => dipWords(hz, cause))
  return `${name}: ${values.join(', ')}.${dips.length > 0 ? ` Dips: ${dips.join('; ')}.` : ''}`
}

function dipWords(hz: number, cause: string): string {
  return `${cause}, ${hz < 1000 ? `${Math.round(hz)} Hz` : `${Math.round(hz / 100) / 10} kHz`}`
}

/** On the drawing there is room for two words. */
const SHORT_CAUSE = { 'mass-air-mass': 'air gap resonates', coincidence: 'coincidence' } as const

type Scale = (value: number) => number

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

interface WordsProps {
  readonly x: Scale
  readonly y: Scale
  readonly width: number
  readonly height: number
  readonly shown: SurfaceRating
  readonly names: readonly { readonly rating: SurfaceRating; readonly text: string; readonly isShown: boolean }[]
}

function CurveWords({ x, y, width, height, shown, names }: WordsProps) {
  const loss = shown.prediction.lossDb
  const dips = shown.prediction.resonances
    .map(({ hz, kind }) => ({ text: dipWords(hz, SHORT_CAUSE[kind]), place: bandPlace(hz) }))
    .filter(({ place }) => isShown(loss, place))
    .map(({ text, place }) => {
      const at = Math.max(0, Math.min(BANDS_HZ.length - 1, place))
      return { text, x: x(at), y: y(lossAt(loss, at)) }
    })
  const nameWishes = names.map(({ rating, text }, index) => {
    const band = index === 0 ? 13 : 9
    return { id: `name-${index}`, text, x: x(band), y: y(rating.prediction.lossDb[band]!), radius: 3 }
  })
  const end = shown.evidence.stc.contour.findLastIndex((level) => level !== null && level < SHOWN_LOSS_CAP_DB)
  const contourWish =
    end < 0
      ? []
      : [
          {
            id: 'contour',
            text: `STC ${shown.stc} contour`,
            x: x(end) - 4,
            y: y(shown.evidence.stc.contour[end]!),
            radius: 5,
          },
        ]
  const labels = placeLabels(
    [
      ...dips.map((dip, i) => ({ id: `dip-${i}`, text: dip.text, x: dip.x, y: dip.y, radius: 8 })),
      ...nameWishes,
      ...contourWish,
    ],
    {
      size: 13,
      within: { x: LEFT, y: 0, width: width - LEFT, height: height - BOTTOM },
      taken: names.flatMap(({ rating }) =>
        rating.prediction.lossDb.map((level, band) => ({ x: x(band) - 4, y: y(level) - 4, width: 8, height: 8 })),
      ),
    },
  )
  return (
    <g>
      {dips.map((dip) => (
        <circle key={dip.text} className="curve-dip" cx={dip.x} cy={dip.y} r={3} />
      ))}
      {labels.map((label) => (
        <text
          key={label.id}
          x={label.x}
          y={label.y}
          textAnchor={label.anchor}
          className={label.id === 'name-0' ? 'curve-name-shown' : 'curve-word'}
        >
          {label.text}
        </text>
      ))}
    </g>
  )
}

/** Where a frequency lies among the bands; bands are a tenth of a decade apart. */
function bandPlace(hz: number): number {
  return 10 * Math.log10(hz / BANDS_HZ[0]!)
}

/** Dips outside the bands, or above what is shown, have no place in the drawing. */
function isShown(loss: readonly number[], place: number): boolean {
  if (place < -0.5 || place > BANDS_HZ.length - 0.5) return false
  return lossAt(loss, Math.max(0, Math.min(BANDS_HZ.length - 1, place))) < SHOWN_LOSS_CAP_DB
}

function lossAt(loss: readonly number[], place: number): number {
  const below = Math.floor(place)
  const share = place - below
  return loss[below]! * (1 - share) + (loss[below + 1] ?? loss[below]!) * share
}
