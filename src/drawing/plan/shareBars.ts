import type { Mark, Place } from '#drawing/model.ts'
import type { ColourToken } from '#drawing/palette.ts'
import { cutsOf } from '#drawing/plan/cuts.ts'
import type { PlanContext } from '#drawing/plan/planInput.ts'
import { isSeen } from '#drawing/plan/rings.ts'
import { onWall, type WallLine } from '#drawing/plan/wallLines.ts'
import type { PlanStyle } from '#drawing/style.ts'

/** From the measured line to a bar, over the outline's pen: it must not read as a thicker wall. */
const GAP = 1.7
/** Thickness of a bar that stands for everything, over the text's size. */
const WHOLE = 0.66

/** A stretch of a wall that is marked by what goes through it. */
export interface ShareBar {
  /** Of the wall or opening. */
  readonly id: string
  readonly wall: WallLine
  /** Ends along the wall, target units. */
  readonly s0: number
  readonly s1: number
  /** 0..1 */
  readonly share: number
  readonly isOpening: boolean
}

/** The bars of a plan: each opening's, and each wall's between its openings. */
export function shareBars(context: PlanContext): readonly ShareBar[] {
  const { shares, walls, view, style } = context
  if (!shares) return []
  const cuts = cutsOf(context)
  const openings = cuts.flatMap(({ opening: { id }, wall, s0, s1 }): ShareBar[] => {
    const share = shares.onPlan.get(id)
    return share === undefined ? [] : [{ id, wall, s0, s1, share, isOpening: true }]
  })
  const stretches = walls.flatMap((wall): ShareBar[] => {
    const share = shares.onPlan.get(wall.id)
    if (share === undefined || !isSeen(view, [wall.a, wall.b], style.firstRow)) return []
    const own = cuts.filter((cut) => cut.wall === wall)
    return between(wall, own).map(([s0, s1]) => ({ id: wall.id, wall, s0, s1, share, isOpening: false }))
  })
  return [...openings, ...stretches]
}

/** Along a wall, what its openings leave. */
function between(wall: WallLine, cuts: readonly { readonly s0: number; readonly s1: number }[]): [number, number][] {
  const stretches: [number, number][] = []
  let from = 0
  for (const { s0, s1 } of [...cuts].sort((one, other) => one.s0 - other.s0)) {
    if (s0 > from) stretches.push([from, s0])
    from = Math.max(from, s1)
  }
  if (wall.length > from) stretches.push([from, wall.length])
  return stretches
}

/** How far a bar of this share reaches out of the measured line, target units. */
export function barReach(style: PlanStyle, share: number): number {
  return style.heavy * GAP + style.medium + share * style.text * WHOLE
}

/** Bars outside the outline, as thick as the share they stand for; labels keep off them. */
export function shareBarMarks(context: PlanContext): Mark[] {
  const { style, placer, isSelected } = context
  return shareBars(context).map((bar): Mark => {
    const { id, wall, s0, s1, share } = bar
    const [near, far] = [-style.heavy * GAP, -barReach(style, share)]
    const rings: Place[][] = [
      [onWall(wall, s0, near), onWall(wall, s1, near), onWall(wall, s1, far), onWall(wall, s0, far)],
    ]
    const [from, to] = [onWall(wall, s0, far), onWall(wall, s1, far)]
    placer.takeLine(...from, ...to)
    return { kind: 'polygon', role: 'share', surfaceId: id, rings, fill: barColour(isSelected(id)), stroke: null }
  })
}

function barColour(selected: boolean): ColourToken {
  return selected ? 'accent' : 'ink'
}
