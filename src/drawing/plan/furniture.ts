import { footprintOf } from '#analysis/furniture/footprint.ts'
import type { Furniture } from '#analysis/room.ts'
import { toTarget } from '#drawing/frame.ts'
import type { Mark, Place } from '#drawing/model.ts'
import type { ColourToken } from '#drawing/palette.ts'
import { footprintLabel } from '#drawing/plan/footprintLabel.ts'
import type { PlanContext } from '#drawing/plan/planInput.ts'
import { flatRun } from '#drawing/plan/rings.ts'

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
  return standing(context).flatMap(({ piece, verdict, ...item }) =>
    footprintLabel(context, {
      ...item,
      id: piece.id,
      role: 'furniture',
      texts: [`${piece.name}${verdict}`, piece.name],
    }),
  )
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

function between(a: Place, b: Place, share: number): Place {
  return [a[0] + (b[0] - a[0]) * share, a[1] + (b[1] - a[1]) * share]
}

function takeRing(takeLine: PlanContext['placer']['takeLine'], ring: readonly Place[]): void {
  ring.forEach(([x, y], index) => {
    const next = ring[(index + 1) % ring.length]!
    takeLine(x, y, next[0], next[1])
  })
}
