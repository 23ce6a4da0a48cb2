import { footprintOf } from '#analysis/furniture/footprint.ts'
import type { Furniture } from '#analysis/room.ts'
import { toTarget } from '#drawing/frame.ts'
import type { Mark, Place } from '#drawing/model.ts'
import type { ColourToken } from '#drawing/palette.ts'
import { growBox } from '#drawing/place.ts'
import type { PlanContext } from '#drawing/plan/planInput.ts'
import { flatRun, middleOf } from '#drawing/plan/rings.ts'
import { CAP_HEIGHT, textMark, textWidth } from '#drawing/text.ts'
import { warningSign } from '#drawing/warningSign.ts'

/** A piece as it stands on the target. */
interface Standing {
  readonly piece: Furniture
  /** Front left, front right, back right, back left. */
  readonly footprint: readonly Place[]
  readonly withClearance: readonly Place[]
  readonly fits: boolean
  /** What is wrong, in a word or two; empty where it fits. */
  readonly verdict: string
  readonly colour: ColourToken
}

/** Where its front is: a line this share of its depth behind the front edge. */
const FRONT = 0.12

/** What the room has to hold: outline with a line along its front, and the free space asked for, dashed. */
export function furnitureMarks(context: PlanContext): Mark[] {
  const { style, placer } = context
  return standing(context).flatMap(({ piece, footprint, withClearance, fits, colour }): Mark[] => {
    const common = { role: 'furniture', surfaceId: piece.id } as const
    const [frontLeft, frontRight, backRight, backLeft] = footprint
    if (!frontLeft || !frontRight || !backRight || !backLeft) return []
    const front = flatRun([between(frontLeft, backLeft, FRONT), between(frontRight, backRight, FRONT)])
    const width = fits ? style.medium : style.medium * 2
    const dash = [style.text * 0.35, style.text * 0.3]
    takeRing(placer.takeLine, footprint)
    return [
      {
        ...common,
        kind: 'polygon',
        rings: [withClearance],
        fill: null,
        stroke: { colour, width: style.hair, dash },
      },
      { ...common, kind: 'polygon', rings: [footprint], fill: null, stroke: { colour, width } },
      { ...common, kind: 'lines', runs: [front], stroke: { colour, width: style.hair } },
    ]
  })
}

/** Names, in the footprint or beside it; what does not fit says so in words and by the warning sign. */
export function furnitureLabels(context: PlanContext): Mark[] {
  return standing(context).flatMap((item) => label(context, item))
}

function standing({ room, result, frame, isSelected }: PlanContext): readonly Standing[] {
  const checks = new Map(result?.furniture.map((check) => [check.id, check]))
  const placed = (points: ReturnType<typeof footprintOf>): Place[] => points.map((point) => toTarget(frame, point))
  return room.furniture.map((piece) => {
    const problems = checks.get(piece.id)?.problems ?? []
    const fits = problems.length === 0
    const isTight = problems.every(({ code }) => code === 'furniture-clearance')
    return {
      piece,
      footprint: placed(footprintOf(piece)),
      withClearance: placed(footprintOf(piece, piece.clearance)),
      fits,
      verdict: fits ? '' : isTight ? ' lacks free space' : ' does not fit',
      colour: isSelected(piece.id) ? 'accent' : fits ? 'ink' : 'warn',
    }
  })
}

function label(context: PlanContext, { piece, footprint, fits, verdict, colour }: Standing): Mark[] {
  const { style, placer } = context
  const [x, y] = middleOf(footprint)
  const sign = fits ? 0 : style.text * SIGN
  const middle = y + (CAP_HEIGHT * style.text) / 2
  const common = { role: 'furniture', surfaceId: piece.id } as const
  const tone = fits && colour === 'ink' ? 'soft' : colour
  const candidates = [`${piece.name}${verdict}`, piece.name].flatMap((text) =>
    labelPlaces(context, footprint, sign + textWidth(text, style.text, 400)).map(([centre, baseline]) => {
      const textStyle = { ...common, size: style.text, anchor: 'middle', colour: tone } as const
      const mark = textMark(text, centre + sign / 2, baseline, textStyle)
      const box = { ...mark.box, x: mark.box.x - sign, width: mark.box.width + sign }
      return { mark, boxes: [growBox(box, style.air / 4)] }
    }),
  )
  const found = placer.placeFirst(candidates)
  if (fits) return found ? [found.mark] : []
  // The sign stands even where no word finds room.
  const left = found ? found.mark.box.x - sign : x - style.text / 2
  const baseline = found ? found.mark.y : middle
  return [...warningSign(left, baseline, style.text, 'furniture', piece.id), ...(found ? [found.mark] : [])]
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

function between(a: Place, b: Place, share: number): Place {
  return [a[0] + (b[0] - a[0]) * share, a[1] + (b[1] - a[1]) * share]
}

function takeRing(takeLine: PlanContext['placer']['takeLine'], ring: readonly Place[]): void {
  ring.forEach(([x, y], index) => {
    const next = ring[(index + 1) % ring.length]!
    takeLine(x, y, next[0], next[1])
  })
}
