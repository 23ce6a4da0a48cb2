import type { Mark, Place } from '#drawing/model.ts'
import { type Cut, cutsOf, strokeOf } from '#drawing/plan/cuts.ts'
import { doorLeaves } from '#drawing/plan/doorLeaves.ts'
import type { PlanContext } from '#drawing/plan/planInput.ts'
import { flatRun } from '#drawing/plan/rings.ts'
import { onWall, type WallLine } from '#drawing/plan/wallLines.ts'
import { unreachable } from '#units/result.ts'

/** Doors, windows and vents, cut through outline and strip; a vehicle door stands shut behind its lining. */
export function openingMarks(context: PlanContext): Mark[] {
  return cutsOf(context).flatMap((cut) => [...reveal(context, cut), ...leaf(context, cut)])
}

function corners(wall: WallLine, s0: number, s1: number, t0: number, t1: number): Place[] {
  return [onWall(wall, s0, t0), onWall(wall, s1, t0), onWall(wall, s1, t1), onWall(wall, s0, t1)]
}

/** The way through: clear ground between the jambs, where another wall's strip does not stand in it. */
function reveal(context: PlanContext, cut: Cut): Mark[] {
  const { style } = context
  const { wall, opening } = cut
  const common = { role: 'opening' as const, surfaceId: opening.id }
  const outer = -style.heavy * 1.05
  const shut = opening.kind === 'vehicle-door'
  const marks: Mark[] = [
    { ...common, kind: 'polygon', rings: [corners(wall, cut.s0, cut.s1, outer, 0)], fill: 'clear', stroke: null },
  ]
  const jambs: number[][] = []
  for (const [s0, s1] of shut ? [] : openStretches(context, cut)) {
    if (wall.depth > 0) {
      const rings = [corners(wall, s0, s1, -style.heavy * 0.5, wall.depth + style.medium * 0.6)]
      marks.push({ ...common, kind: 'polygon', rings, fill: 'clear', stroke: null })
    }
    jambs.push(flatRun([onWall(wall, s0, outer), onWall(wall, s0, Math.max(wall.depth, 0))]))
    jambs.push(flatRun([onWall(wall, s1, outer), onWall(wall, s1, Math.max(wall.depth, 0))]))
  }
  if (jambs.length > 0)
    marks.push({ ...common, kind: 'lines', runs: jambs, stroke: strokeOf(context, cut, style.medium) })
  return marks
}

/** The opening's stretch less what the strips of neighbouring walls cover. */
function openStretches({ result, frame }: PlanContext, { wall, s0, s1 }: Cut): [number, number][] {
  const entry = result?.inset.walls.find((item) => item.wall === wall.index)
  if (!entry || wall.depth <= 0) return [[s0, s1]]
  return entry.sections.flatMap(({ s0Mm, s1Mm }): [number, number][] => {
    const low = Math.max(s0, Math.min(s0Mm, s1Mm) * frame.scale)
    const high = Math.min(s1, Math.max(s0Mm, s1Mm) * frame.scale)
    return high > low ? [[low, high]] : []
  })
}

function leaf(context: PlanContext, cut: Cut): Mark[] {
  switch (cut.opening.kind) {
    case 'door':
      return doorLeaves(context, cut)
    case 'window':
      return panes(context, cut, 1)
    case 'vehicle-door':
      return panes(context, cut, 0)
    case 'vent':
      return louvre(context, cut)
    default:
      return unreachable(cut.opening.kind)
  }
}

/** Double line across the wall, with `middle` lines of glass between; and the sill at the new face of a window. */
function panes(context: PlanContext, cut: Cut, middle: number): Mark[] {
  const { style } = context
  const { wall, s0, s1, opening } = cut
  const common = { role: 'opening' as const, surfaceId: opening.id }
  const outer = -style.heavy * 1.05
  const runs: number[][] = []
  for (let line = 1; line <= middle; line++) {
    const t = (outer * line) / (middle + 1)
    runs.push(flatRun([onWall(wall, s0, t), onWall(wall, s1, t)]))
  }
  if (opening.kind === 'window' && wall.depth > 0) {
    for (const [from, to] of openStretches(context, cut)) {
      runs.push(flatRun([onWall(wall, from, wall.depth), onWall(wall, to, wall.depth)]))
    }
  }
  const marks: Mark[] = [
    {
      ...common,
      kind: 'polygon',
      rings: [corners(wall, s0, s1, outer, 0)],
      fill: 'clear',
      stroke: strokeOf(context, cut),
    },
  ]
  if (runs.length > 0) marks.push({ ...common, kind: 'lines', runs, stroke: strokeOf(context, cut, style.hair) })
  return marks
}

/** A vent: crossed where it is rectangular; a round one has its centre line and its circle laid into the plan. */
function louvre(context: PlanContext, cut: Cut): Mark[] {
  const { style } = context
  const { wall, s0, s1, opening } = cut
  const outer = -style.heavy * 1.05
  const face = Math.max(wall.depth, 0)
  const common = { role: 'opening' as const, surfaceId: opening.id }
  const box: Mark = {
    ...common,
    kind: 'polygon',
    rings: [corners(wall, s0, s1, outer, face)],
    fill: 'clear',
    stroke: strokeOf(context, cut),
  }
  if (opening.shape === 'round') return [box, ...roundVent(context, cut, outer, face)]
  const runs = [
    flatRun([onWall(wall, s0, outer), onWall(wall, s1, face)]),
    flatRun([onWall(wall, s0, face), onWall(wall, s1, outer)]),
  ]
  return [box, { ...common, kind: 'lines', runs, stroke: strokeOf(context, cut, style.hair) }]
}

function roundVent(context: PlanContext, cut: Cut, outer: number, face: number): Mark[] {
  const { style } = context
  const { wall, s0, s1, opening } = cut
  const common = { role: 'opening' as const, surfaceId: opening.id }
  const middle = (s0 + s1) / 2
  const reach = (s1 - s0) / 2
  const [x, y] = onWall(wall, middle, (outer + face) / 2)
  context.placer.take({ x: x - reach, y: y - reach, width: 2 * reach, height: 2 * reach })
  const runs = [flatRun([onWall(wall, middle, outer - reach), onWall(wall, middle, face + reach)])]
  const dash = [style.text * 0.6, style.text * 0.2, style.text * 0.1, style.text * 0.2]
  return [
    { ...common, kind: 'circle', x, y, radius: reach, fill: null, stroke: strokeOf(context, cut, style.fine) },
    { ...common, kind: 'lines', runs, stroke: { ...strokeOf(context, cut, style.hair), dash } },
  ]
}
