import type { Box } from '#drawing/model.ts'

/** What has been put down, found again by the cells of a grid it lies over: labels ask only about what is near. */
export interface PlaceIndex<Item> {
  readonly add: (item: Item, over: Box) => void
  /** Something in the cells a box lies over that passes a test. */
  readonly some: (over: Box, test: (item: Item) => boolean) => boolean
}

/** Cells a row holds at most: positions beyond fold over, which costs time and changes no answer. */
const ROW = 1 << 15

/** @param cell  side of the grid's cells, near the size of a label */
export function createPlaceIndex<Item>(cell: number): PlaceIndex<Item> {
  const cells = new Map<number, Item[]>()
  const range = ({ x, y, width, height }: Box) => ({
    left: Math.floor(x / cell),
    right: Math.floor((x + width) / cell),
    top: Math.floor(y / cell),
    bottom: Math.floor((y + height) / cell),
  })
  return {
    add: (item, over) => {
      const { left, right, top, bottom } = range(over)
      for (let row = top; row <= bottom; row++) {
        for (let column = left; column <= right; column++) {
          const key = row * ROW + column
          const there = cells.get(key)
          if (there) there.push(item)
          else cells.set(key, [item])
        }
      }
    },
    some: (over, test) => {
      const { left, right, top, bottom } = range(over)
      for (let row = top; row <= bottom; row++) {
        for (let column = left; column <= right; column++) {
          if (cells.get(row * ROW + column)?.some(test)) return true
        }
      }
      return false
    },
  }
}
