import { type Grid, gridAround, STEPS_PER_MM, toPoint } from '#geometry/grid.ts'
import { type GridRing, roundRing } from '#geometry/inset/gridRing.ts'
import type { InsetInput, InsetRefusal } from '#geometry/inset/types.ts'
import { placeName, wallName, wallNames } from '#geometry/inset/words.ts'
import { type Cells, layCells } from '#geometry/overlay/cells.ts'
import { turn } from '#geometry/overlay/exact.ts'
import { addSegment, createSegments, type Segments } from '#geometry/overlay/segments.ts'
import { someNearPair } from '#geometry/overlay/vertices.ts'
import type { Point } from '#geometry/polygon.ts'

/** Rooms wider than this would leave the range in which products on the grid are exact. */
const WIDEST_MM = 60_000

/** No lining is thicker; more would leave the exact range too. */
const DEEPEST_MM = 10_000

/** Why an outline cannot be a room, or null if it can. Cheap enough for every pointer move. */
export function validateOutline(outline: readonly Point[]): InsetRefusal | null {
  const unreadable = checkNumbers(outline, 0)
  if (unreadable) return unreadable
  return checkSize(outline) ?? checkRing(outline, 0, gridAround(outline, STEPS_PER_MM))
}

/** Why a room cannot be inset, or null if it can be tried. */
export function validateInput(input: InsetInput): InsetRefusal | null {
  const everything = [...input.outline]
  let firstWall = 0
  for (const ring of [input, ...input.obstacles]) {
    const refusal = checkNumbers(ring.outline, firstWall) ?? checkDepths(ring.depthsMm, ring.outline.length, firstWall)
    if (refusal) return refusal
    firstWall += ring.outline.length
    if (ring !== input) everything.push(...ring.outline)
  }
  return checkSize(everything)
}

function checkNumbers(outline: readonly Point[], firstWall: number): InsetRefusal | null {
  const bad = outline.findIndex((point) => !Number.isFinite(point[0]) || !Number.isFinite(point[1]))
  if (bad < 0) return null
  const message = `The first corner of ${wallName(firstWall + bad)} is not a place: both its x and its y must be numbers.`
  return { code: 'not-finite', message, walls: [firstWall + bad] }
}

function checkDepths(depthsMm: readonly number[], corners: number, firstWall: number): InsetRefusal | null {
  if (depthsMm.length !== corners) {
    const message =
      `The ring that starts with ${wallName(firstWall)} has ${corners} walls but ${depthsMm.length} depths. ` +
      'Give one depth for each wall.'
    return { code: 'wrong-depth-count', message, walls: [] }
  }
  const unreadable = depthsMm.findIndex((depth) => !Number.isFinite(depth))
  if (unreadable >= 0) {
    const message = `The depth of ${wallName(firstWall + unreadable)} is not a number. Give it in mm.`
    return { code: 'not-finite', message, walls: [firstWall + unreadable] }
  }
  const deep = depthsMm.findIndex((depth) => Math.abs(depth) > DEEPEST_MM)
  if (deep < 0) return null
  const message = `The depth of ${wallName(firstWall + deep)} is more than ${DEEPEST_MM / 1000} m. Check its unit.`
  return { code: 'too-large', message, walls: [firstWall + deep] }
}

function checkSize(points: readonly Point[]): InsetRefusal | null {
  let [minX, minY, maxX, maxY] = [Infinity, Infinity, -Infinity, -Infinity]
  for (const [x, y] of points) {
    minX = Math.min(minX, x)
    minY = Math.min(minY, y)
    maxX = Math.max(maxX, x)
    maxY = Math.max(maxY, y)
  }
  if (!(Math.max(maxX - minX, maxY - minY) > WIDEST_MM)) return null
  const message = `The room is more than ${WIDEST_MM / 1000} m across. Check the unit of its corners, or draw it in parts.`
  return { code: 'too-large', message, walls: [] }
}

/** Why a ring of readable corners encloses no floor, or null if it does. */
export function checkRing(outline: readonly Point[], firstWall: number, grid: Grid): InsetRefusal | null {
  const ring = roundRing(outline, firstWall, grid)
  const given = outline.map((_, k) => firstWall + k)
  if (ring.walls.length < 3) {
    const message = `The outline (${wallNames(given)}) has fewer than three different corners. Add corners until they enclose a floor.`
    return { code: 'too-few-corners', message, walls: given }
  }
  if (isStraight(ring)) {
    const message = `${wallNames(given)} lie on one line and enclose no floor. Move a corner off the line.`
    return { code: 'no-area', message, walls: given }
  }
  return findSpike(ring, grid) ?? findSelfMeeting(ring, grid)
}

function isStraight({ xs, ys }: GridRing): boolean {
  return xs.every((x, k) => turn(xs[0]!, ys[0]!, xs[1]!, ys[1]!, x, ys[k]!) === 0)
}

function findSpike({ xs, ys, walls }: GridRing, grid: Grid): InsetRefusal | null {
  const n = xs.length
  for (let k = 0; k < n; k++) {
    const [b, c] = [(k + 1) % n, (k + 2) % n]
    if (turn(xs[k]!, ys[k]!, xs[b]!, ys[b]!, xs[c]!, ys[c]!) !== 0) continue
    if ((xs[b]! - xs[k]!) * (xs[c]! - xs[b]!) + (ys[b]! - ys[k]!) * (ys[c]! - ys[b]!) > 0) continue
    const pair = [walls[k]!, walls[b]!]
    const place = placeName(...toPoint(grid, xs[b]!, ys[b]!))
    const message = `${wallName(pair[1]!)} runs back along ${wallName(pair[0]!)} from ${place}. Move or remove that corner.`
    return { code: 'spike', message, walls: pair }
  }
  return null
}

/** Two walls that meet anywhere but in the corner they share. */
export function findSelfMeeting({ xs, ys, walls }: GridRing, grid: Grid): InsetRefusal | null {
  const n = xs.length
  const segments = createSegments()
  for (let k = 0; k < n; k++) addSegment(segments, xs[k]!, ys[k]!, xs[(k + 1) % n]!, ys[(k + 1) % n]!)
  const cells: Cells = layCells(segments)
  let refusal: InsetRefusal | null = null
  someNearPair(segments, cells, (j, k) => {
    if (j === k || j + 1 === k || (j === 0 && k === n - 1) || !meet(segments, j, k)) return false
    const pair = [walls[j]!, walls[k]!].sort((one, other) => one - other)
    const place = placeName(...toPoint(grid, ...meetingPlace(segments, j, k)))
    const message = `${wallNames(pair)} cross or touch near ${place}. Move a corner so that they keep apart.`
    refusal = { code: 'self-intersection', message, walls: pair }
    return true
  })
  return refusal
}

/** Whether two segments share a point; exact. */
function meet({ ax, ay, bx, by }: Segments, j: number, k: number): boolean {
  const kStart = turn(ax[j]!, ay[j]!, bx[j]!, by[j]!, ax[k]!, ay[k]!)
  const kEnd = turn(ax[j]!, ay[j]!, bx[j]!, by[j]!, bx[k]!, by[k]!)
  if ((kStart > 0 && kEnd > 0) || (kStart < 0 && kEnd < 0)) return false
  const jStart = turn(ax[k]!, ay[k]!, bx[k]!, by[k]!, ax[j]!, ay[j]!)
  const jEnd = turn(ax[k]!, ay[k]!, bx[k]!, by[k]!, bx[j]!, by[j]!)
  // Segments on one line reach this point only if their boxes overlap, so they share a point.
  return !((jStart > 0 && jEnd > 0) || (jStart < 0 && jEnd < 0))
}

/** A point the two segments share, or one near it where they run along each other. */
function meetingPlace({ ax, ay, bx, by }: Segments, j: number, k: number): [number, number] {
  const start = turn(ax[j]!, ay[j]!, bx[j]!, by[j]!, ax[k]!, ay[k]!)
  const whole = start - turn(ax[j]!, ay[j]!, bx[j]!, by[j]!, bx[k]!, by[k]!)
  const part = whole === 0 ? 0.5 : start / whole
  return [ax[k]! + (bx[k]! - ax[k]!) * part, ay[k]! + (by[k]! - ay[k]!) * part]
}
