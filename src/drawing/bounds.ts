import type { Box, Mark } from '#drawing/model.ts'

/** What a mark covers, pens left aside. */
export function markBox(mark: Mark): Box {
  switch (mark.kind) {
    case 'text':
      return mark.box
    case 'circle':
    case 'arc':
      return { x: mark.x - mark.radius, y: mark.y - mark.radius, width: 2 * mark.radius, height: 2 * mark.radius }
    case 'polygon':
      return boxOf(mark.rings.flat(2))
    case 'lines':
      return boxOf(mark.runs.flat())
  }
}

/** What all marks cover; null for none. */
export function marksBox(marks: readonly Mark[]): Box | null {
  if (marks.length === 0) return null
  return boxOf(
    marks.flatMap((mark) => {
      const { x, y, width, height } = markBox(mark)
      return [x, y, x + width, y + height]
    }),
  )
}

function boxOf(numbers: readonly number[]): Box {
  let left = Number.POSITIVE_INFINITY
  let top = Number.POSITIVE_INFINITY
  let right = Number.NEGATIVE_INFINITY
  let bottom = Number.NEGATIVE_INFINITY
  for (let index = 0; index + 1 < numbers.length; index += 2) {
    left = Math.min(left, numbers[index]!)
    right = Math.max(right, numbers[index]!)
    top = Math.min(top, numbers[index + 1]!)
    bottom = Math.max(bottom, numbers[index + 1]!)
  }
  return { x: left, y: top, width: right - left, height: bottom - top }
}
