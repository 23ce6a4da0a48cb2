import { toTarget } from '#drawing/frame.ts'
import type { Mark, Place } from '#drawing/model.ts'
import type { PlanContext } from '#drawing/plan/planInput.ts'
import { flatRun, planPoints } from '#drawing/plan/rings.ts'
import type { WallLine } from '#drawing/plan/wallLines.ts'

/** Light ground under the whole outline, so that a room without a scheme reads as a room. */
export function outlineGround({ room, frame, result }: PlanContext): Mark[] {
  if (result !== null || room.corners.length < 3) return []
  const rings = [planPoints(room.corners).map((point) => toTarget(frame, point))]
  return [{ kind: 'polygon', role: 'clear', rings, fill: 'clear', stroke: null }]
}

/** The existing outline, heavy, its inner edge on the measured line; dashed where the face moves outward. */
export function outlineMarks({ walls, style, isSelected }: PlanContext): Mark[] {
  const marks: Mark[] = []
  const kept: number[][] = []
  for (const wall of walls) {
    if (wall.depthMm < 0) {
      const stroke = { colour: 'ink', width: style.fine, dash: [style.text * 0.5, style.text * 0.3] } as const
      marks.push({ kind: 'lines', role: 'outline', surfaceId: wall.id, runs: [flatRun([wall.a, wall.b])], stroke })
    } else {
      kept.push(flatRun(heavyLine(walls, wall, style.heavy / 2)))
    }
  }
  if (kept.length > 0) {
    const joined = joinRuns(kept)
    marks.push({ kind: 'lines', role: 'outline', runs: joined, stroke: { colour: 'wall', width: style.heavy } })
  }
  for (const wall of walls.filter(({ id }) => isSelected(id))) {
    const runs = [flatRun(heavyLine(walls, wall, style.heavy / 2))]
    marks.push({
      kind: 'lines',
      role: 'outline',
      surfaceId: wall.id,
      runs,
      stroke: { colour: 'accent', width: style.heavy },
    })
  }
  return marks
}

/** A wall's line moved outward by half the pen, mitred with its neighbours. */
function heavyLine(walls: readonly WallLine[], wall: WallLine, out: number): [Place, Place] {
  const at = walls.indexOf(wall)
  const before = walls[(at + walls.length - 1) % walls.length]!
  const after = walls[(at + 1) % walls.length]!
  return [mitre(before, wall, wall.a, out), mitre(wall, after, wall.b, out)]
}

/** Where two outward-moved lines meet; never further than three pens from the corner. */
function mitre(first: WallLine, second: WallLine, corner: Place, out: number): Place {
  const x = first.inward[0] + second.inward[0]
  const y = first.inward[1] + second.inward[1]
  const square = x * x + y * y
  if (square < 0.1) return [corner[0] - second.inward[0] * out, corner[1] - second.inward[1] * out]
  return [corner[0] - (2 * out * x) / square, corner[1] - (2 * out * y) / square]
}

/** Joins runs that continue each other, so that corners are mitred and not notched. */
function joinRuns(runs: readonly number[][]): number[][] {
  const joined: number[][] = []
  for (const run of runs) {
    const last = joined[joined.length - 1]
    if (last && last[last.length - 2] === run[0] && last[last.length - 1] === run[1]) last.push(run[2]!, run[3]!)
    else joined.push([...run])
  }
  const first = joined[0]
  const last = joined[joined.length - 1]
  if (first && last && joined.length > 1 && first[0] === last[last.length - 2] && first[1] === last[last.length - 1]) {
    joined.shift()
    last.push(...first.slice(2))
  }
  const only = joined[0]
  if (only && joined.length === 1 && only[0] === only[only.length - 2] && only[1] === only[only.length - 1]) {
    only.push(only[2]!, only[3]!)
  }
  return joined
}

/** Lets no label cross the outline or a face of the clear room. */
export function takeEdges({ walls, result, frame, placer }: PlanContext): void {
  for (const { a, b } of walls) placer.takeLine(a[0], a[1], b[0], b[1])
  for (const { from, to } of result?.inset.edges ?? []) {
    placer.takeLine(...toTarget(frame, from), ...toTarget(frame, to))
  }
}
