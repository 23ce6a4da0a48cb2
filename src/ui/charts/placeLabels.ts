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
  /** What labels keep off: marks, whiskers, other words. */
  readonly taken: readonly Box[]
}

/**
 * Labels that fit, first come first served: right below, right above, left above, left below, above, below. A label
 * that finds no free place is left out; its mark still says its name when pointed at.
 */
export function placeLabels(wishes: readonly LabelWish[], room: LabelRoom): readonly PlacedLabel[] {
  const taken = [...room.taken]
  const placed: PlacedLabel[] = []
  for (const wish of wishes) {
    const free = places(wish, room.size).find(
      ({ box }) => isInside(box, room.within) && !taken.some((other) => overlaps(box, other)),
    )
    if (!free) continue
    taken.push(free.box)
    placed.push(free.label)
  }
  return placed
}

function places(wish: LabelWish, size: number): readonly { label: PlacedLabel; box: Box }[] {
  const width = textWidth(wish.text, size, 400)
  const { radius } = wish
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
  ]
  return spots.map(([dx, dy, anchor]) => {
    const x = wish.x + dx
    const y = wish.y + dy
    const left = anchor === 'start' ? x : anchor === 'end' ? x - width : x - width / 2
    return {
      label: { id: wish.id, text: wish.text, x, y, anchor },
      box: { x: left - 2, y: y - size * 0.82, width: width + 4, height: size * 1.12 },
    }
  })
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
