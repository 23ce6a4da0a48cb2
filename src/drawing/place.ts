import type { Box, Place } from '#drawing/model.ts'
import { createPlaceIndex } from '#drawing/placeIndex.ts'

/** Keeps account of what is already taken on a drawing, so that labels find room. */
export interface Placer {
  /** Marks an area as taken. */
  readonly take: (box: Box) => void
  /** Marks a line as something no label may cross; a thin one may run behind a symbol with a ground of its own. */
  readonly takeLine: (x1: number, y1: number, x2: number, y2: number, thin?: boolean) => void
  /** Nothing taken lies in the box; thin lines count unless `overThin`. */
  readonly isFree: (box: Box, overThin?: boolean) => boolean
  /** A line crosses no label or symbol; its ends, as long as `ends`, may touch. */
  readonly isFreeLine: (from: Place, to: Place, ends: number) => boolean
  /** Takes the first candidate whose boxes are all free, and that fits, and gives it; undefined when there is none. */
  readonly placeFirst: <Candidate extends { readonly boxes: readonly Box[]; readonly overThin?: boolean | undefined }>(
    candidates: Iterable<Candidate>,
    fits?: (candidate: Candidate) => boolean,
  ) => Candidate | undefined
  /** An account on top of this one, for trying how much finds room: what it takes is not taken here. */
  readonly trial: () => Placer
}

/**
 * @param cell  about the height of a label and its air: what is near is looked up in cells of this size
 * @param bounds  labels stay inside it; absent: anywhere
 */
export function createPlacer(cell: number, bounds?: Box): Placer {
  return placerOn(null, cell, bounds)
}

type Line = readonly [number, number, number, number]

/** What is taken: boxes, lines, and lines a symbol may cover. */
interface Taken {
  readonly meetsBox: (box: Box, overThin: boolean) => boolean
  readonly boxOn: (line: Line, over: Box) => boolean
}

/** A line is put down piece by piece, so that a slanting one fills no more cells than it crosses. */
const PIECE_CELLS = 4

function placerOn(below: Taken | null, cell: number, bounds: Box | undefined): Placer {
  const boxes = createPlaceIndex<Box>(cell)
  const lines = createPlaceIndex<Line>(cell)
  const thinLines = createPlaceIndex<Line>(cell)
  const taken: Taken = {
    meetsBox: (box, overThin) =>
      boxes.some(box, (other) => boxesMeet(other, box)) ||
      lines.some(box, (line) => lineMeetsBox(line, box)) ||
      (!overThin && thinLines.some(box, (line) => lineMeetsBox(line, box))) ||
      below?.meetsBox(box, overThin) === true,
    boxOn: (line, over) => boxes.some(over, (box) => lineMeetsBox(line, box)) || below?.boxOn(line, over) === true,
  }
  const take = (box: Box): void => {
    const seen = bounds ? sharedBox(box, bounds) : box
    if (seen) boxes.add(box, seen)
  }
  const seenPieces = (line: Line): Line[] => {
    const seen = bounds ? clipLine(line, bounds) : line
    return seen ? pieces(seen, cell * PIECE_CELLS) : []
  }
  const isFree = (box: Box, overThin = false): boolean =>
    (bounds === undefined || contains(bounds, box)) && !taken.meetsBox(box, overThin)
  return {
    take,
    takeLine: (x1, y1, x2, y2, thin = false) => {
      for (const piece of seenPieces([x1, y1, x2, y2])) {
        ;(thin ? thinLines : lines).add(piece, lineBox(piece))
      }
    },
    isFree,
    isFreeLine: (from, to, ends) => {
      const length = Math.hypot(to[0] - from[0], to[1] - from[1])
      const share = length > 2 * ends ? ends / length : 0
      const x = (to[0] - from[0]) * share
      const y = (to[1] - from[1]) * share
      const line: Line = [from[0] + x, from[1] + y, to[0] - x, to[1] - y]
      return !seenPieces(line).some((piece) => taken.boxOn(piece, lineBox(piece)))
    },
    placeFirst: (candidates, fits) => {
      for (const candidate of candidates) {
        if (!candidate.boxes.every((box) => isFree(box, candidate.overThin))) continue
        if (fits && !fits(candidate)) continue
        candidate.boxes.forEach(take)
        return candidate
      }
      return undefined
    },
    trial: () => placerOn(taken, cell, bounds),
  }
}

/** Most pieces a line is cut into; a longer one has longer pieces. */
const MOST_PIECES = 200

function pieces([x1, y1, x2, y2]: Line, length: number): Line[] {
  const whole = Math.max(Math.abs(x2 - x1), Math.abs(y2 - y1))
  const slants = x1 !== x2 && y1 !== y2
  const count = slants ? Math.min(MOST_PIECES, Math.max(1, Math.ceil(whole / length))) : 1
  const at = (step: number): readonly [number, number] => [
    x1 + ((x2 - x1) * step) / count,
    y1 + ((y2 - y1) * step) / count,
  ]
  return Array.from({ length: count }, (_, step): Line => [...at(step), ...at(step + 1)])
}

/** The part of a line inside a box; null: none. */
function clipLine([x1, y1, x2, y2]: Line, box: Box): Line | null {
  const [dx, dy] = [x2 - x1, y2 - y1]
  const [enterX, leaveX] = within(x1, dx, box.x, box.x + box.width)
  const [enterY, leaveY] = within(y1, dy, box.y, box.y + box.height)
  if (dx === 0 && (x1 < box.x || x1 > box.x + box.width)) return null
  if (dy === 0 && (y1 < box.y || y1 > box.y + box.height)) return null
  const [from, to] = [Math.max(0, enterX, enterY), Math.min(1, leaveX, leaveY)]
  return from <= to ? [x1 + dx * from, y1 + dy * from, x1 + dx * to, y1 + dy * to] : null
}

/** What two boxes share; null: nothing. */
function sharedBox(a: Box, b: Box): Box | null {
  const [x, y] = [Math.max(a.x, b.x), Math.max(a.y, b.y)]
  const [width, height] = [Math.min(a.x + a.width, b.x + b.width) - x, Math.min(a.y + a.height, b.y + b.height) - y]
  return width >= 0 && height >= 0 ? { x, y, width, height } : null
}

function lineBox([x1, y1, x2, y2]: Line): Box {
  return { x: Math.min(x1, x2), y: Math.min(y1, y2), width: Math.abs(x2 - x1), height: Math.abs(y2 - y1) }
}

/** Boxes share more than an edge. */
export function boxesMeet(a: Box, b: Box): boolean {
  return a.x < b.x + b.width && b.x < a.x + a.width && a.y < b.y + b.height && b.y < a.y + a.height
}

/** A box grown by `by` on every side. */
export function growBox(box: Box, by: number): Box {
  return { x: box.x - by, y: box.y - by, width: box.width + 2 * by, height: box.height + 2 * by }
}

/** Smallest box round two. */
export function joinBoxes(a: Box, b: Box): Box {
  const x = Math.min(a.x, b.x)
  const y = Math.min(a.y, b.y)
  const right = Math.max(a.x + a.width, b.x + b.width)
  const bottom = Math.max(a.y + a.height, b.y + b.height)
  return { x, y, width: right - x, height: bottom - y }
}

function contains(outer: Box, inner: Box): boolean {
  return (
    inner.x >= outer.x &&
    inner.y >= outer.y &&
    inner.x + inner.width <= outer.x + outer.width &&
    inner.y + inner.height <= outer.y + outer.height
  )
}

/** Something of a line lies inside a box. @source Liang and Barsky, line clipping, 1984, memory */
function lineMeetsBox([x1, y1, x2, y2]: readonly [number, number, number, number], box: Box): boolean {
  const right = box.x + box.width
  const bottom = box.y + box.height
  if ((x1 <= box.x && x2 <= box.x) || (x1 >= right && x2 >= right)) return false
  if ((y1 <= box.y && y2 <= box.y) || (y1 >= bottom && y2 >= bottom)) return false
  const [enterX, leaveX] = within(x1, x2 - x1, box.x, right)
  const [enterY, leaveY] = within(y1, y2 - y1, box.y, bottom)
  return Math.max(0, enterX, enterY) < Math.min(1, leaveX, leaveY)
}

/** Shares of a line between which one coordinate lies in a range. */
function within(start: number, step: number, low: number, high: number): [number, number] {
  if (step === 0) return [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY]
  const first = (low - start) / step
  const second = (high - start) / step
  return first < second ? [first, second] : [second, first]
}
