import type { BoxCheck } from '#analysis/results.ts'
import { toTarget } from '#drawing/frame.ts'
import type { Mark, Place } from '#drawing/model.ts'
import type { ColourToken } from '#drawing/palette.ts'
import { footprintLabel } from '#drawing/plan/footprintLabel.ts'
import type { PlanContext } from '#drawing/plan/planInput.ts'
import { flatRun } from '#drawing/plan/rings.ts'
import { formatLength } from '#units/format.ts'

/** A box as it lies on the target. */
interface Placed {
  readonly box: BoxCheck
  readonly footprint: readonly Place[]
  readonly fits: boolean
  readonly colour: ColourToken
}

/** Silencer boxes: an outline with both diagonals, dashed where the box hangs over the floor. */
export function boxMarks(context: PlanContext): Mark[] {
  const { style, placer } = context
  return placed(context).flatMap(({ box, footprint, fits, colour }): Mark[] => {
    const [a, b, c, d] = footprint
    if (!a || !b || !c || !d) return []
    const hangs = box.undersideMm !== null
    const common = { role: 'box', surfaceId: box.id } as const
    const dash = hangs ? { dash: [style.text * 0.55, style.text * 0.3] } : {}
    const width = fits ? style.medium : style.medium * 2
    footprint.forEach(([x, y], index) => {
      const next = footprint[(index + 1) % footprint.length]!
      placer.takeLine(x, y, next[0], next[1], hangs)
    })
    return [
      { ...common, kind: 'polygon', rings: [footprint], fill: null, stroke: { colour, width, ...dash } },
      { ...common, kind: 'lines', runs: [flatRun([a, c]), flatRun([b, d])], stroke: { colour, width: style.hair } },
    ]
  })
}

/** Names with what is under a hanging box; what does not fit says so in words and by the warning sign. */
export function boxLabels(context: PlanContext): Mark[] {
  return placed(context).flatMap(({ box, ...item }) => {
    const verdict = item.fits ? '' : ' does not fit'
    const under = box.undersideMm === null ? '' : `, ${formatLength(box.undersideMm, context.units)} under`
    const texts = [`${box.name}${verdict}${under}`, `${box.name}${verdict}`, box.name]
    return footprintLabel(context, { ...item, id: box.id, role: 'box', texts })
  })
}

function placed({ result, frame, isSelected }: PlanContext): readonly Placed[] {
  return (result?.boxes ?? []).map((box) => {
    const fits = box.problems.length === 0
    return {
      box,
      footprint: box.footprint.map((point) => toTarget(frame, point)),
      fits,
      colour: isSelected(box.id) ? 'accent' : fits ? 'ink' : 'warn',
    }
  })
}
