import type { Box, Place } from '#drawing/model.ts'

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
  /** Takes the first candidate whose boxes are all free and gives it; undefined when there is none. */
  readonly placeFirst: <Candidate extends { readonly boxes: readonly Box[]; readonly overThin?: boolean | undefined }>(
    candidates: Iterable<Candidate>,
  ) => Candidate | undefined
  /** The same account, kept on its own from here on: for trying how much finds room. */
  readonly copy: () => Placer
}

/** @param bounds  labels stay inside it; absent: anywhere */
export function createPlacer(bounds?: Box): Placer {
  return placerOf(bounds, { boxes: [], lines: [], thinLines: [] })
}

type Line = readonly [number, number, number, number]

/** All that is taken so far. */
interface Taken {
  readonly boxes: Box[]
  readonly lines: Line[]
  readonly thinLines: Line[]
}

function placerOf(bounds: Box | undefined, { boxes, lines, thinLines }: Taken): Placer {
  const isFree = (box: Box, overThin = false): boolean =>
    (bounds === undefined || contains(bounds, box)) &&
    !boxes.some((taken) => boxesMeet(taken, box)) &&
    !lines.some((line) => lineMeetsBox(line, box)) &&
    (overThin || !thinLines.some((line) => lineMeetsBox(line, box)))
  return {
    take: (box) => {
      boxes.push(box)
    },
    takeLine: (x1, y1, x2, y2, thin = false) => {
      ;(thin ? thinLines : lines).push([x1, y1, x2, y2])
    },
    isFree,
    isFreeLine: (from, to, ends) => {
      const length = Math.hypot(to[0] - from[0], to[1] - from[1])
      const share = length > 2 * ends ? ends / length : 0
      const x = (to[0] - from[0]) * share
      const y = (to[1] - from[1]) * share
      return !boxes.some((box) => lineMeetsBox([from[0] + x, from[1] + y, to[0] - x, to[1] - y], box))
    },
    placeFirst: (candidates) => {
      for (const candidate of candidates) {
        if (!candidate.boxes.every((box) => isFree(box, candidate.overThin))) continue
        boxes.push(...candidate.boxes)
        return candidate
      }
      return undefined
    },
    copy: () => placerOf(bounds, { boxes: [...boxes], lines: [...lines], thinLines: [...thinLines] }),
  }
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
