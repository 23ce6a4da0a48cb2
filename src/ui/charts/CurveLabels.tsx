import { BANDS_HZ, bandIndex } from '#acoustics/bands.ts'
import { SHOWN_LOSS_CAP_DB } from '#acoustics/curve.ts'
import type { Resonance } from '#acoustics/layered/namedResonances.ts'
import { publishedStc } from '#analysis/published.ts'
import type { SurfaceRating } from '#analysis/results.ts'
import type { Box } from '#drawing/model.ts'
import { decibels, dipWords } from '#ui/charts/curveWords.ts'
import { type LabelWish, placeLabels } from '#ui/charts/placeLabels.ts'
import type { Decibels, Hertz } from '#units/quantity.ts'

/** Bands or dB to pixels. */
export type Scale = (value: number) => number

interface Props {
  readonly x: Scale
  readonly y: Scale
  /** Labels stay inside. */
  readonly within: Box
  readonly shown: SurfaceRating
  /** Those that lie on the drawing. */
  readonly dips: readonly Resonance[]
  /** Contour of the published value, where it is drawn. */
  readonly published: readonly (Decibels | null)[] | null
  /** The curves, the one shown first. */
  readonly names: readonly { readonly rating: SurfaceRating; readonly text: string }[]
}

/** Every name on the drawing, each where it meets nothing: contour, dips, curves, the band that limits. */
export function CurveLabels(props: Props) {
  const { x, y, within, names } = props
  const [shownBoxes = [], ...otherBoxes] = names.map(({ rating }) =>
    rating.prediction.lossDb.map((level, band): Box => ({ x: x(band) - 4, y: y(level) - 4, width: 8, height: 8 })),
  )
  // A contour's name beside the other contour would be read as that one's; no name may lie on the curve shown.
  const contours = [props.shown.evidence.stc.contour, props.published ?? []].flatMap((contour) =>
    contour.flatMap((level, band): Box[] =>
      level === null ? [] : [{ x: x(band - 0.5), y: y(level) - 2, width: x(1) - x(0), height: 4 }],
    ),
  )
  const crossed = [...contours, ...otherBoxes.flat()]
  const labels = placeLabels(wishesOf(props), { size: 13, within, taken: shownBoxes, crossed })
  return (
    <g>
      {labels.map((label) => (
        <text
          key={label.id}
          x={label.x}
          y={label.y}
          textAnchor={label.anchor}
          className={CLASSES.get(label.id) ?? 'curve-word'}
        >
          {label.text}
        </text>
      ))}
    </g>
  )
}

const CLASSES: ReadonlyMap<string, string> = new Map([
  ['name-0', 'curve-name-shown'],
  ['limit', 'curve-word-short'],
])

/** The rarer first: what is named in no other place must find room before the curves' own names. */
function wishesOf(props: Props): readonly LabelWish[] {
  const { x, y, shown, dips, names, published } = props
  const { lossDb } = shown.prediction
  return [
    ...contourWish('contour', shown.evidence.stc.contour, contourName(shown), props),
    ...dips.map((dip, i) => {
      const place = bandPlace(dip.hz)
      const at = Math.max(0, Math.min(BANDS_HZ.length - 1, place))
      return { id: `dip-${i}`, text: dipWords(dip), x: x(at), y: y(lossAt(lossDb, at)), radius: 8 }
    }),
    ...limitWish(props),
    ...(published ? contourWish('published', published, `published ${publishedStc(shown.published)?.stc}`, props) : []),
    ...names.map(({ rating, text }, index) => {
      const band = nameBand(rating.prediction.lossDb, index === 0 ? 13 : 9)
      return { id: `name-${index}`, text, x: x(band), y: y(rating.prediction.lossDb[band]!), radius: 3 }
    }),
  ]
}

/** Where a curve's name has room: at the band wished for, or before the curve has climbed to the top. */
function nameBand(loss: readonly Decibels[], wished: number): number {
  const high = loss.findIndex((level) => level > NAME_BELOW_DB)
  return high < 0 ? wished : Math.max(0, Math.min(wished, high - 1))
}

/** Higher up a name would leave the drawing or meet the curve's flat top. */
const NAME_BELOW_DB: Decibels = 64

function contourName({ stc, published }: SurfaceRating): string {
  return publishedStc(published)?.stc === stc ? `STC ${stc} contour, as published` : `STC ${stc} contour`
}

function contourWish(
  id: string,
  contour: readonly (Decibels | null)[],
  text: string,
  { x, y }: Pick<Props, 'x' | 'y'>,
): readonly LabelWish[] {
  const end = contour.findLastIndex((level) => level !== null && level < SHOWN_LOSS_CAP_DB)
  return end < 0 ? [] : [{ id, text, x: x(end) - 4, y: y(contour[end]!), radius: 5 }]
}

/** The band that holds the rating back, beside its bar. */
function limitWish({ x, y, shown }: Props): readonly LabelWish[] {
  const { limitedBy, limitingBandHz, shortfalls, contour } = shown.evidence.stc
  const band = bandIndex(limitingBandHz)
  const short = shortfalls[band]!
  const level = contour[band]
  if (short <= 0 || level == null || limitedBy !== 'band') return []
  return [{ id: 'limit', text: `${decibels(short)} short`, x: x(band), y: y(level - short / 2), radius: 7 }]
}

/** Where a frequency lies among the bands; bands are a tenth of a decade apart. */
export function bandPlace(hz: Hertz): number {
  return 10 * Math.log10(hz / BANDS_HZ[0]!)
}

/** Dips outside the bands, or above what is shown, have no place in the drawing. */
export function isShown(loss: readonly Decibels[], place: number): boolean {
  if (place < -0.5 || place > BANDS_HZ.length - 0.5) return false
  return lossAt(loss, place) < SHOWN_LOSS_CAP_DB
}

/** Loss between the bands, on the line that is drawn. */
export function lossAt(loss: readonly Decibels[], place: number): Decibels {
  const at = Math.max(0, Math.min(loss.length - 1, place))
  const below = Math.floor(at)
  const share = at - below
  return loss[below]! * (1 - share) + (loss[below + 1] ?? loss[below]!) * share
}
