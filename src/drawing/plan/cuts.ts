import type { Opening } from '#analysis/room.ts'
import type { Stroke } from '#drawing/model.ts'
import type { PlanContext } from '#drawing/plan/planInput.ts'
import { isSeen } from '#drawing/plan/rings.ts'
import { onWall, type WallLine } from '#drawing/plan/wallLines.ts'

/** An opening where it cuts its wall. */
export interface Cut {
  readonly opening: Opening
  readonly wall: WallLine
  /** Jambs along the wall, target units. */
  readonly s0: number
  readonly s1: number
  readonly selected: boolean
}

export function cutsOf({ room, walls, frame, view, style, isSelected }: PlanContext): Cut[] {
  const cuts: Cut[] = []
  const byId = new Map(walls.map((wall) => [wall.id, wall]))
  for (const opening of room.openings) {
    const wall = byId.get(opening.wall)
    if (!wall) continue
    const s0 = Math.max(0, opening.fromMm) * frame.scale
    const s1 = Math.min(wall.lengthMm, opening.fromMm + opening.widthMm) * frame.scale
    const reach = s1 - s0 + Math.abs(wall.depth) + style.firstRow * 2
    if (s1 > s0 && isSeen(view, [onWall(wall, s0, 0), onWall(wall, s1, 0)], reach))
      cuts.push({ opening, wall, s0, s1, selected: isSelected(opening.id) })
  }
  return cuts
}

export function strokeOf({ style }: PlanContext, cut: Cut, width = style.fine): Stroke {
  return { colour: cut.selected ? 'accent' : 'ink', width }
}
