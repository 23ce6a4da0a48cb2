import type { Mark, Place, Role } from '#drawing/model.ts'
import type { ColourToken } from '#drawing/palette.ts'
import { growBox } from '#drawing/place.ts'
import type { PlanContext } from '#drawing/plan/planInput.ts'
import { middleOf } from '#drawing/plan/rings.ts'
import { CAP_HEIGHT, textMark, textWidth } from '#drawing/text.ts'
import { warningSign } from '#drawing/warningSign.ts'

/** Something with a footprint that is named on the plan. */
export interface Labelled {
  readonly id: string
  readonly role: Role
  /** What it is called, the fullest wording first. */
  readonly texts: readonly string[]
  readonly footprint: readonly Place[]
  readonly fits: boolean
  readonly colour: ColourToken
}

/** Its name, in the footprint or beside it; what does not fit carries the warning sign even where no word finds room. */
export function footprintLabel(context: PlanContext, { id, role, texts, footprint, fits, colour }: Labelled): Mark[] {
  const { style, placer } = context
  const [x, y] = middleOf(footprint)
  const sign = fits ? 0 : style.text * SIGN
  const middle = y + (CAP_HEIGHT * style.text) / 2
  const tone = fits && colour === 'ink' ? 'soft' : colour
  const candidates = texts.flatMap((text) =>
    labelPlaces(context, footprint, sign + textWidth(text, style.text, 400)).map(([centre, baseline]) => {
      const textStyle = { role, surfaceId: id, size: style.text, anchor: 'middle', colour: tone } as const
      const mark = textMark(text, centre + sign / 2, baseline, textStyle)
      const box = { ...mark.box, x: mark.box.x - sign, width: mark.box.width + sign }
      return { mark, boxes: [growBox(box, style.air / 4)] }
    }),
  )
  const found = placer.placeFirst(candidates)
  if (fits) return found ? [found.mark] : []
  const left = found ? found.mark.box.x - sign : x - style.text / 2
  const baseline = found ? found.mark.y : middle
  return [...warningSign(left, baseline, style.text, role, id), ...(found ? [found.mark] : [])]
}

/** Width of the warning sign with the space after it, over the text's size. */
const SIGN = 1.35

/** Middles of a label of some width: in the footprint, under and over it, beside it. */
function labelPlaces({ style }: PlanContext, footprint: readonly Place[], width: number): readonly Place[] {
  const [x, y] = middleOf(footprint)
  const xs = footprint.map(([px]) => px)
  const ys = footprint.map(([, py]) => py)
  const middle = y + (CAP_HEIGHT * style.text) / 2
  const low = Math.max(...ys) + style.text * 1.2
  const high = Math.min(...ys) - style.text * 0.5
  const right = Math.max(...xs) + style.air * 2 + width / 2
  const left = Math.min(...xs) - style.air * 2 - width / 2
  return [
    ...[middle, middle - style.text * 1.4, middle + style.text * 1.4, low, high].map((at): Place => [x, at]),
    [right, middle],
    [left, middle],
    ...[low, high].flatMap((at): Place[] => [
      [Math.min(...xs) + width / 2, at],
      [Math.max(...xs) - width / 2, at],
    ]),
  ]
}
