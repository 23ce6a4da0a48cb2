import { warnOfShortWalls } from '#geometry/inset/gridRing.ts'
import type { Overlay } from '#geometry/inset/overlay.ts'
import type { ReadContext } from '#geometry/inset/readInset.ts'
import type { Inset, InsetWarning } from '#geometry/inset/types.ts'
import { areaName, wallName, wallNames } from '#geometry/inset/words.ts'

/** A clear part smaller than this is a nook, not a room: told apart, never deleted. Our choice. */
const SMALL_PART_MM2 = 50_000

/** What the reader should know about an answer that is not wrong but may surprise. */
export function warningsOf(
  context: ReadContext,
  overlay: Overlay,
  { clear, walls, edges }: Pick<Inset, 'clear' | 'walls' | 'edges'>,
): InsetWarning[] {
  const warnings: InsetWarning[] = []
  const { room } = context
  // No floor is left and no lining took any: what stands in the room did.
  const isCovered = clear.length === 0 && walls.every((wall) => wall.areaMm2 === 0)
  let firstWall = 0
  context.outlines.forEach((outline, k) => {
    const ring = k === 0 ? room.outline : room.obstacles[k - 1]!
    warnings.push(...warnOfShortWalls(outline, ring, firstWall))
    if (k > 0 && !isCovered && !reachesRoom(overlay, firstWall, outline.length)) {
      const given = outline.map((_, side) => firstWall + side)
      const message = `The obstacle of ${wallNames(given)} takes no floor: it lies outside the room or inside another one.`
      warnings.push({ code: 'obstacle-outside', message, walls: given })
    }
    firstWall += outline.length
  })
  if (clear.length === 0) {
    const message = isCovered
      ? 'No clear floor is left: obstacles cover the whole room. Check their outlines.'
      : 'No clear floor is left: the linings fill the room. Choose thinner ones for some walls.'
    return [...warnings, { code: 'nothing-left', message, walls: [] }]
  }
  const onFloor = new Set(overlay.floor.map((edge) => edge.wall))
  for (const { wall, swallowed } of walls) {
    if (!swallowed || !onFloor.has(wall)) continue
    const message = `${wallName(wall)} disappears behind the linings of its neighbours: none of it faces the clear room.`
    warnings.push({ code: 'swallowed', message, walls: [wall] })
  }
  return [...warnings, ...partWarnings(clear, edges)]
}

/** Whether some side of the obstacle bounds floor. */
function reachesRoom({ floor }: Overlay, firstWall: number, sides: number): boolean {
  return floor.some((edge) => edge.wall >= firstWall && edge.wall < firstWall + sides)
}

function partWarnings(clear: Inset['clear'], edges: Inset['edges']): InsetWarning[] {
  const warnings: InsetWarning[] = []
  if (clear.length > 1) {
    const sizes = clear.map((part) => areaName(part.areaMm2)).join(', ')
    const message = `The clear floor falls into ${clear.length} separate parts: ${sizes}.`
    warnings.push({ code: 'split', message, walls: [] })
  }
  const small = clear.filter((part) => part.areaMm2 < SMALL_PART_MM2)
  if (small.length === 0) return warnings
  const wallAt = new Map(edges.map(({ from, wall }) => [`${from[0]},${from[1]}`, wall]))
  for (const part of small) {
    const beside = [part.outline, ...part.holes].flat().map(([x, y]) => wallAt.get(`${x},${y}`))
    const walls = [...new Set(beside.filter((wall) => wall !== undefined))].sort((one, other) => one - other)
    const message = `A part of the clear floor is only ${areaName(part.areaMm2)} (between ${wallNames(walls)}).`
    warnings.push({ code: 'small-part', message, walls })
  }
  return warnings
}
