import { clipSpans } from '#drawing/clipSpans.ts'
import { toTarget } from '#drawing/frame.ts'
import type { Mark, Place } from '#drawing/model.ts'
import { growBox } from '#drawing/place.ts'
import type { PlanContext } from '#drawing/plan/planInput.ts'
import { flatRun, middleOf, planPoints } from '#drawing/plan/rings.ts'
import { onWall, type WallLine } from '#drawing/plan/wallLines.ts'
import { textMark } from '#drawing/text.ts'
import { formatLength } from '#units/format.ts'

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

/** Columns and piers, solid with diagonals. */
export function obstacleMarks({ room, frame, style, isSelected, placer }: PlanContext): Mark[] {
  const marks: Mark[] = []
  for (const obstacle of room.obstacles) {
    const ring = planPoints(obstacle.corners).map((point) => toTarget(frame, point))
    if (ring.length < 3) continue
    const colour = isSelected(obstacle.id) ? 'accent' : 'wall'
    const common = { role: 'obstacle', surfaceId: obstacle.id } as const
    marks.push({
      ...common,
      kind: 'polygon',
      rings: [ring],
      fill: 'solid',
      stroke: { colour, width: style.heavy * 0.6 },
    })
    const runs = diagonals(ring, Math.max(style.closest * 2.2, style.hair * 6))
    if (runs.length > 0) marks.push({ ...common, kind: 'lines', runs, stroke: { colour, width: style.hair } })
    takeRing(placer.takeLine, ring)
  }
  return marks
}

function diagonals(ring: readonly Place[], spacing: number): number[][] {
  const xs = ring.map(([x]) => x)
  const ys = ring.map(([, y]) => y)
  const top = Math.min(...ys)
  const height = Math.max(...ys) - top
  const runs: number[][] = []
  const step = Math.max(spacing * Math.SQRT2, (Math.max(...xs) - Math.min(...xs) + height) / 40)
  for (let x = Math.min(...xs) + step / 2; x < Math.max(...xs) + height; x += step) {
    for (const [from, to] of clipSpans([ring], x, top, -1, 1)) runs.push([x - from, top + from, x - to, top + to])
  }
  return runs
}

/** Beams and ducts overhead: dashed, with the height under them. */
export function dropMarks(context: PlanContext): Mark[] {
  const { room, result, frame, style, isSelected } = context
  const marks: Mark[] = []
  for (const drop of room.drops) {
    const ring = planPoints(drop.corners).map((point) => toTarget(frame, point))
    if (ring.length < 3) continue
    const colour = isSelected(drop.id) ? 'accent' : 'soft'
    const dash = [style.text * 0.55, style.text * 0.3]
    marks.push({
      kind: 'polygon',
      role: 'drop',
      surfaceId: drop.id,
      rings: [ring],
      fill: null,
      stroke: { colour, width: style.fine, dash },
    })
    const clear = result?.ledger.drops.find(({ id }) => id === drop.id)?.clearHeightMm
    const height = formatLength(clear ?? drop.undersideMm, context.units)
    const text = `${drop.name}, ${height} ${clear === undefined ? 'to its underside' : 'clear under it'}`
    const label = dropLabel(context, ring, text, drop.id)
    if (label) marks.push(label)
  }
  return marks
}

function dropLabel({ style, placer }: PlanContext, ring: readonly Place[], text: string, surfaceId: string) {
  const [x, y] = middleOf(ring)
  const xs = ring.map(([px]) => px)
  const ys = ring.map(([, py]) => py)
  const across = Math.max(...xs) - Math.min(...xs)
  const down = Math.max(...ys) - Math.min(...ys)
  const shifts = [0, -0.25, 0.25, -0.35, 0.35]
  const places: (readonly [number, number])[] = shifts.flatMap((shift) => [
    [x + shift * across, y + style.text * 0.36] as const,
    [x + shift * across, Math.min(...ys) - style.text * 0.45] as const,
    [x + shift * across, Math.max(...ys) + style.text * 1.1] as const,
    [x, y + shift * down + style.text * 0.36] as const,
  ])
  const candidates = places.map(([px, py]) => {
    const mark = textMark(text, px, py, {
      size: style.text,
      anchor: 'middle',
      colour: 'soft',
      role: 'label',
      surfaceId,
    })
    return { mark, boxes: [growBox(mark.box, style.air / 2)] }
  })
  return placer.placeFirst(candidates)?.mark
}

function takeRing(takeLine: (x1: number, y1: number, x2: number, y2: number) => void, ring: readonly Place[]): void {
  ring.forEach((corner, index) => {
    const next = ring[(index + 1) % ring.length]!
    takeLine(corner[0], corner[1], next[0], next[1])
  })
}

/** Lets no label cross the outline or a face of the clear room. */
export function takeEdges({ walls, result, frame, placer }: PlanContext): void {
  for (const { a, b } of walls) placer.takeLine(a[0], a[1], b[0], b[1])
  for (const { from, to } of result?.inset.edges ?? []) {
    placer.takeLine(...toTarget(frame, from), ...toTarget(frame, to))
  }
}

/** Middle of a wall's own face, target. */
export function faceMiddle(wall: WallLine): Place {
  return onWall(wall, wall.length / 2, wall.depth)
}
