import { leafAt, leavesOf, sweepTo } from '#analysis/openings/leaves.ts'
import type { LeafCheck } from '#analysis/results.ts'
import { toTarget } from '#drawing/frame.ts'
import type { ArcMark, Box, Mark, Place } from '#drawing/model.ts'
import { growBox } from '#drawing/place.ts'
import { type Cut, strokeOf } from '#drawing/plan/cuts.ts'
import type { PlanContext } from '#drawing/plan/planInput.ts'
import { flatRun } from '#drawing/plan/rings.ts'
import { onWall, type WallLine } from '#drawing/plan/wallLines.ts'

/** What is drawn of a leaf, mm. */
type LeafShape = Pick<LeafCheck, 'hinge' | 'leaf' | 'sweep' | 'widthMm'>

/** Every leaf of a door standing open, with the arc it sweeps; the jambs run on to a leaf at the wall's far face. */
export function doorLeaves(context: PlanContext, cut: Cut): Mark[] {
  const { style, frame, placer } = context
  const { wall, s0, s1, opening } = cut
  const common = { role: 'opening' as const, surfaceId: opening.id }
  const leaves = leafShapes(context, cut)
  const far = Math.min(0, ...leaves.map(({ hinge }) => intoRoom(wall, toTarget(frame, hinge))))
  const runs = [flatRun([onWall(wall, s0, 0), onWall(wall, s1, 0)])]
  if (far < -style.heavy) {
    for (const s of [s0, s1]) runs.push(flatRun([onWall(wall, s, 0), onWall(wall, s, far)]))
  }
  const marks: Mark[] = [{ ...common, kind: 'lines', runs, stroke: strokeOf(context, cut, style.hair) }]
  for (const shape of leaves) {
    const ring = shape.leaf.map((point) => toTarget(frame, point))
    const arc = arcOf(context, shape)
    placer.take(growBox(boxOf([...ring, ...shape.sweep.map((point) => toTarget(frame, point))]), style.air * 0.5))
    marks.push({ ...common, kind: 'polygon', rings: [ring], fill: 'clear', stroke: strokeOf(context, cut, style.fine) })
    if (arc) marks.push({ ...common, kind: 'arc', ...arc, stroke: strokeOf(context, cut) })
  }
  return marks
}

/** As checked under the scheme; unchecked, a leaf at the far face of a wall of unknown thickness stands on the outline. */
function leafShapes({ result }: PlanContext, { opening, wall }: Cut): readonly LeafShape[] {
  const checked = result?.openings.find(({ id }) => id === opening.id)?.door
  if (checked) return checked.leaves
  const { index, id, from, along, inward, lengthMm, depthMm } = wall
  const upward = ([x, y]: Place): Place => [x, -y]
  const line = { index, id, from, along: upward(along), inward: upward(inward), lengthMm }
  return leavesOf(opening, line, { faceMm: depthMm, wallMm: 0 }).map((leaf) => ({
    hinge: leaf.hinge,
    leaf: leafAt(leaf, 90),
    sweep: sweepTo(leaf, 90),
    widthMm: leaf.widthMm,
  }))
}

function intoRoom({ a, inward }: WallLine, [x, y]: Place): number {
  return (x - a[0]) * inward[0] + (y - a[1]) * inward[1]
}

/** The arc of a sweep, clockwise on the target; null for none. */
function arcOf(
  { frame }: PlanContext,
  { hinge, sweep, widthMm }: LeafShape,
): Omit<ArcMark, 'kind' | 'role' | 'stroke'> | null {
  const [first, last] = [sweep[1], sweep[sweep.length - 1]]
  if (!first || !last || first === last) return null
  const [x, y] = toTarget(frame, hinge)
  const degrees = (point: Place): number => {
    const [px, py] = toTarget(frame, point)
    return (Math.atan2(py - y, px - x) * 180) / Math.PI
  }
  const [start, end] = [degrees(first), degrees(last)]
  const turn = ((end - start + 540) % 360) - 180
  const startDeg = turn >= 0 ? start : start + turn
  return { x, y, radius: widthMm * frame.scale, startDeg, endDeg: startDeg + Math.abs(turn) }
}

function boxOf(places: readonly Place[]): Box {
  const xs = places.map(([x]) => x)
  const ys = places.map(([, y]) => y)
  const [x, y] = [Math.min(...xs), Math.min(...ys)]
  return { x, y, width: Math.max(...xs) - x, height: Math.max(...ys) - y }
}
