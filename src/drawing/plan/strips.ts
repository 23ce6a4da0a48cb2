import { hatchRuns, type Runs } from '#drawing/hatch.ts'
import type { Mark, Place } from '#drawing/model.ts'
import type { PlanContext } from '#drawing/plan/planInput.ts'
import { isSeen, polygonRings } from '#drawing/plan/rings.ts'
import { onWall, type WallLine } from '#drawing/plan/wallLines.ts'
import type { Strip } from '#geometry/inset/types.ts'

/** The clear room's ground, lighter than the paper. */
export function clearGround({ frame, result }: PlanContext): Mark[] {
  return (result?.clear ?? []).map((polygon) => ({
    kind: 'polygon',
    role: 'clear',
    rings: polygonRings(frame, polygon),
    fill: 'clear',
    stroke: null,
  }))
}

/** Strips to scale: ground, hatch by what they are made of, boundary. */
export function stripMarks(context: PlanContext): Mark[] {
  const walls = new Map(context.walls.map((wall) => [wall.index, wall]))
  return (context.result?.inset.strips ?? []).flatMap((strip) => oneStrip(context, strip, walls.get(strip.wall)))
}

function oneStrip(context: PlanContext, strip: Strip, wall: WallLine | undefined): Mark[] {
  const { frame, style, room, result } = context
  const surfaceId = wall?.id ?? obstacleAt(standing(room.obstacles, result?.takenOut), strip.wall - room.walls.length)
  const selected = surfaceId !== undefined && context.isSelected(surfaceId)
  const colour = selected ? 'accent' : 'hatch'
  const rings = polygonRings(frame, strip)
  if (!isSeen(context.view, rings[0] ?? [])) return []
  const ground: Mark = {
    kind: 'polygon',
    role: 'strip',
    surfaceId,
    rings,
    fill: selected ? 'accent-soft' : 'strip',
    stroke: { colour, width: selected ? style.fine : style.hair },
  }
  const runs = wall && context.show?.hatches !== false ? stripHatch(context, wall, rings) : []
  if (runs.length === 0) return [ground]
  return [ground, { kind: 'lines', role: 'hatch', surfaceId, runs, stroke: { colour, width: style.hair } }]
}

function stripHatch({ frame, style }: PlanContext, wall: WallLine, rings: readonly (readonly Place[])[]): Runs {
  if (wall.result === null) return []
  const [ax, ay] = wall.a
  const local = rings.map((ring) =>
    ring.map(([x, y]): [number, number] => [
      (x - ax) * wall.along[0] + (y - ay) * wall.along[1],
      (x - ax) * wall.inward[0] + (y - ay) * wall.inward[1],
    ]),
  )
  const runs = hatchRuns({
    layers: wall.result.layers,
    rings: local,
    faceT: wall.depth,
    scale: frame.scale,
    closest: style.closest,
  })
  return runs.map((run) => {
    const placed: number[] = []
    for (let index = 0; index < run.length; index += 2) placed.push(...onWall(wall, run[index]!, run[index + 1]!))
    return placed
  })
}

/** What stands under the scheme: the inset numbers the edges of those only. */
function standing<Item extends { readonly id: string }>(
  all: readonly Item[],
  out: readonly string[] = [],
): readonly Item[] {
  return all.filter(({ id }) => !out.includes(id))
}

/** Which obstacle an edge belongs to, counted obstacle by obstacle. */
function obstacleAt(
  obstacles: readonly { readonly id: string; readonly corners: readonly unknown[] }[],
  edge: number,
): string | undefined {
  let left = edge
  for (const obstacle of obstacles) {
    if (left < obstacle.corners.length) return obstacle.id
    left -= obstacle.corners.length
  }
  return undefined
}

/** Edge of the clear room: new faces fine, faces that moved outward as heavy as the outline. */
export function clearEdges({ frame, result, style, walls }: PlanContext): Mark[] {
  if (result === null) return []
  const marks: Mark[] = result.clear.map((polygon) => ({
    kind: 'polygon',
    role: 'clear',
    rings: polygonRings(frame, polygon),
    fill: null,
    stroke: { colour: 'ink', width: style.medium },
  }))
  const moved = new Set(walls.filter(({ depthMm }) => depthMm < 0).map(({ index }) => index))
  const runs = result.inset.edges
    .filter(({ wall }) => moved.has(wall))
    .map(({ from, to }) =>
      [from, to].flatMap((point) => [frame.x + frame.scale * point[0], frame.y - frame.scale * point[1]]),
    )
  if (runs.length > 0) {
    marks.push({ kind: 'lines', role: 'outline', runs, stroke: { colour: 'wall', width: style.heavy } })
  }
  return marks
}
