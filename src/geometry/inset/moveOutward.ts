import type { Grid } from '#geometry/grid.ts'
import type { GridRing } from '#geometry/inset/gridRing.ts'
import type { InsetRefusal } from '#geometry/inset/types.ts'
import { findSelfMeeting } from '#geometry/inset/validate.ts'
import { wallName, wallNames } from '#geometry/inset/words.ts'
import { fail, ok, type Result } from '#units/result.ts'

/** A ring whose edges know the wall they came from, its direction (length 1) and whether they only join two walls. */
export interface MovedRing extends GridRing {
  readonly directions: readonly (readonly [x: number, y: number])[]
  readonly joins: readonly boolean[]
}

/** A moved corner may lie this many times the greater move away; beyond, the walls are joined square. Our choice. */
const FARTHEST = 4

/** Sine of an angle that counts as straight. */
const STRAIGHT = 1e-9

/**
 * Moves walls of negative depth outward, as where an old lining comes off; the others stay on their lines.
 * `depths` in steps, one for each edge of the ring. Refuses moves that make a wall vanish or walls meet.
 */
export function moveOutward(
  ring: GridRing,
  directions: readonly (readonly [x: number, y: number])[],
  depths: readonly number[],
  grid: Grid,
): Result<MovedRing, InsetRefusal> {
  const n = ring.xs.length
  const moved = { xs: [] as number[], ys: [] as number[], walls: [] as number[] }
  const movedDirections: (readonly [number, number])[] = []
  const joins: boolean[] = []
  const add = (x: number, y: number, edge: number, direction: readonly [number, number], isJoin: boolean): void => {
    moved.xs.push(x)
    moved.ys.push(y)
    moved.walls.push(ring.walls[edge]!)
    movedDirections.push(direction)
    joins.push(isJoin)
  }
  for (let k = 0; k < n; k++) {
    const before = (k + n - 1) % n
    const a = Math.min(depths[before]!, 0)
    const b = Math.min(depths[k]!, 0)
    const corner = movedCorner(directions[before]!, a, directions[k]!, b)
    const places = corner.map(([x, y]) => [Math.round(ring.xs[k]! + x), Math.round(ring.ys[k]! + y)] as const)
    const [start, end] = places
    if (start && end) {
      const [dx, dy] = [end[0] - start[0], end[1] - start[1]]
      const length = Math.hypot(dx, dy)
      if (length > 0) add(start[0], start[1], a < b ? before : k, [dx / length, dy / length], true)
    }
    const last = places.at(-1)!
    add(last[0], last[1], k, directions[k]!, false)
  }
  const result: MovedRing = { ...moved, directions: movedDirections, joins }
  const refusal = findCollapse(result) ?? findCollision(result, grid)
  return refusal ? fail(refusal) : ok(result)
}

/** The corner's new place relative to the old one, or the two ends of a square join. */
function movedCorner(
  [ux, uy]: readonly [number, number],
  a: number,
  [wx, wy]: readonly [number, number],
  b: number,
): (readonly [number, number])[] {
  if (a === 0 && b === 0) return [[0, 0]]
  const first = [-uy * a, ux * a] as const
  const second = [-wy * b, wx * b] as const
  const sine = ux * wy - uy * wx
  const cosine = ux * wx + uy * wy
  if (Math.abs(sine) < STRAIGHT) return a === b ? [first] : [first, second]
  const along = (a * cosine - b) / sine
  const mitre = [first[0] + ux * along, first[1] + uy * along] as const
  return Math.hypot(mitre[0], mitre[1]) <= FARTHEST * Math.max(-a, -b) ? [mitre] : [first, second]
}

function findCollapse({ xs, ys, walls, directions, joins }: MovedRing): InsetRefusal | null {
  const n = xs.length
  const bad = walls.findIndex((_, k) => {
    if (joins[k]) return false
    const [ux, uy] = directions[k]!
    return (xs[(k + 1) % n]! - xs[k]!) * ux + (ys[(k + 1) % n]! - ys[k]!) * uy <= 0
  })
  if (bad < 0) return null
  const wall = walls[bad]!
  const message =
    `Moving walls outward leaves nothing of ${wallName(wall)}: its neighbours meet before it. ` +
    'Remove less there, or redraw that corner of the room.'
  return { code: 'strip-collapses', message, walls: [wall] }
}

function findCollision(ring: MovedRing, grid: Grid): InsetRefusal | null {
  const meeting = findSelfMeeting(ring, grid)
  if (!meeting) return null
  const message =
    `Moving walls outward makes ${wallNames(meeting.walls)} run into each other. ` +
    'Remove less there, or redraw that part of the room.'
  return { code: 'strip-collides', message, walls: meeting.walls }
}
