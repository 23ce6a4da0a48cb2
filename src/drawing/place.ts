import type { Box, Place } from '#drawing/model.ts'

/** Keeps account of what is already taken on a drawing, so that labels find room. */
export interface Placer {
  /** Marks an area as taken. */
  readonly take: (box: Box) => void
  /** Marks a line as something no label may cross. */
  readonly takeLine: (x1: number, y1: number, x2: number, y2: number) => void
  /** Nothing taken lies in the box. */
  readonly isFree: (box: Box) => boolean
  /** A line crosses no label or symbol; its ends, as long as `ends`, may touch. */
  readonly isFreeLine: (from: Place, to: Place, ends: number) => boolean
  /** Takes the first candidate whose boxes are all free and gives it; undefined when there is none. */
  readonly placeFirst: <Candidate extends { readonly boxes: readonly Box[] }>(
    candidates: Iterable<Candidate>,
  ) => Candidate | undefined
}

/** @param bounds  labels stay inside it; absent: anywhere */
export function createPlacer(bounds?: Box): Placer {
  const boxes: Box[] = []
  const lines: (readonly [number, number, number, number])[] = []
  const isFree = (box: Box): boolean =>
    (bounds === undefined || contains(bounds, box)) &&
    !boxes.some((taken) => boxesMeet(taken, box)) &&
    !lines.some((line) => lineMeetsBox(line, box))
  return {
    take: (box) => {
      boxes.push(box)
    },
    takeLine: (x1, y1, x2, y2) => {
      lines.push([x1, y1, x2, y2])
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
        if (!candidate.boxes.every(isFree)) continue
        boxes.push(...candidate.boxes)
        return candidate
      }
      return undefined
    },
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

/** Liang and Barsky's clip of a line to a box: something of it remains. */
function lineMeetsBox([x1, y1, x2, y2]: readonly [number, number, number, number], box: Box): boolean {
  let enter = 0
  let leave = 1
  const sides: readonly (readonly [number, number])[] = [
    [x1 - x2, x1 - box.x],
    [x2 - x1, box.x + box.width - x1],
    [y1 - y2, y1 - box.y],
    [y2 - y1, box.y + box.height - y1],
  ]
  for (const [step, room] of sides) {
    if (step === 0) {
      if (room <= 0) return false
    } else if (step < 0) {
      enter = Math.max(enter, room / step)
    } else {
      leave = Math.min(leave, room / step)
    }
  }
  return enter < leave
}
