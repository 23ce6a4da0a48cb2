import type { Box } from '#drawing/model.ts'
import { textWidth } from '#drawing/text.ts'

/** A mark that wants its name beside it. */
export interface LabelWish {
  readonly id: string
  readonly text: string
  readonly x: number
  readonly y: number
  /** Free space round the mark itself. */
  readonly radius: number
  /** Ends of the mark's whisker, where it has one: its name may stand beyond them. */
  readonly whisker?: { readonly top: number; readonly bottom: number } | undefined
  /** Most lines the name may cross before it is better left out; absent: any. */
  readonly mostCrossings?: number | undefined
}

export interface PlacedLabel {
  readonly id: string
  readonly text: string
  readonly x: number
  readonly y: number
  readonly anchor: 'start' | 'end' | 'middle'
}

export interface LabelRoom {
  readonly size: number
  /** Labels stay inside. */
  readonly within: Box
  /** What labels keep off: marks, other words. */
  readonly taken: readonly Box[]
  /** What they cross only where there is no better place: whiskers, lines. */
  readonly crossed?: readonly Box[] | undefined
}

/**
 * Labels that fit, first come first served, each in the place that crosses the fewest lines. A label that finds no
 * free place is left out; its mark still says its name when pointed at.
 */
export function placeLabels(wishes: readonly LabelWish[], room: LabelRoom): readonly PlacedLabel[] {
  const taken = [...room.taken]
  const placed: PlacedLabel[] = []
  for (const wish of wishes) {
    const free = places(wish, room.size)
      .filter(({ box }) => isInside(box, room.within) && !taken.some((other) => overlaps(box, other)))
      .map((place) => ({
        ...place,
        crossings: (room.crossed ?? []).filter((line) => overlaps(place.box, line)).length,
      }))
      .reduce<Place | null>((best, place) => (best === null || place.crossings < best.crossings ? place : best), null)
    if (!free || free.crossings > (wish.mostCrossings ?? Number.POSITIVE_INFINITY)) continue
    taken.push(free.box)
    placed.push(free.label)
  }
  return placed
}

/** Further off a name would be read as another mark's, px beyond the mark's own radius. */
const FURTHEST = 14

interface Place {
  readonly label: PlacedLabel
  readonly box: Box
  readonly crossings: number
}

function places(wish: LabelWish, size: number): readonly Omit<Place, 'crossings'>[] {
  const { radius, whisker } = wish
  const side = radius + 4
  const spots: readonly (readonly [dx: number, dy: number, anchor: PlacedLabel['anchor']])[] = [
    [side, size * 0.35, 'start'],
    [side - 2, radius + size * 0.8, 'start'],
    [side - 2, -radius - 3, 'start'],
    [-side + 2, -radius - 3, 'end'],
    [-side, size * 0.35, 'end'],
    [-side + 2, radius + size * 0.8, 'end'],
    [0, -radius - 6, 'middle'],
    [0, radius + size + 3, 'middle'],
    ...(whisker
      ? ([
          [0, whisker.top - wish.y - 4, 'middle'],
          [0, whisker.bottom - wish.y + size, 'middle'],
          [-8, whisker.top - wish.y - 4, 'start'],
          [8, whisker.bottom - wish.y + size, 'end'],
          [8, whisker.top - wish.y - 4, 'end'],
          [-8, whisker.bottom - wish.y + size, 'start'],
        ] as const)
      : []),
  ]
  return spots
    .map(([dx, dy, anchor]) => {
      const label = { id: wish.id, text: wish.text, x: wish.x + dx, y: wish.y + dy, anchor }
      return { label, box: labelBox(label, size) }
    })
    .filter(({ box }) => away(wish, box) <= radius + FURTHEST)
}

/** How far a mark's middle lies from a box. */
function away({ x, y }: { readonly x: number; readonly y: number }, box: Box): number {
  const dx = Math.max(box.x - x, 0, x - box.x - box.width)
  const dy = Math.max(box.y - y, 0, y - box.y - box.height)
  return Math.hypot(dx, dy)
}

/** What a label covers, with a little air on both sides. */
export function labelBox({ text, x, y, anchor }: PlacedLabel, size: number): Box {
  const width = textWidth(text, size, 400)
  const left = anchor === 'start' ? x : anchor === 'end' ? x - width : x - width / 2
  return { x: left - 4, y: y - size * 0.82, width: width + 8, height: size * 1.12 }
}

export function overlaps(a: Box, b: Box): boolean {
  return a.x < b.x + b.width && b.x < a.x + a.width && a.y < b.y + b.height && b.y < a.y + a.height
}

function isInside(box: Box, outer: Box): boolean {
  return (
    box.x >= outer.x &&
    box.y >= outer.y &&
    box.x + box.width <= outer.x + outer.width &&
    box.y + box.height <= outer.y + outer.height
  )
}
