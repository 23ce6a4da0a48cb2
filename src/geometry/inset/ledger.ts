import { CLEAR, type Overlay } from '#geometry/inset/overlay.ts'
import { type GridShape, UNLABELLED } from '#geometry/overlay/readBack.ts'

/** Areas of a room in half square steps (whole numbers). */
export interface GridLedger {
  readonly outline: number
  readonly obstacles: number
  readonly gained: number
  readonly lost: number
  readonly clear: number
  /** outline + gained - lost - obstacles - clear: 0 when the shapes tile the room. */
  readonly closure: number
}

/** Faces won by moving a wall: no floor of the old outline, or an obstacle's before. Label 0; the rest unlabelled. */
export function gainedLabels({ labels, inside }: Overlay): Int32Array {
  return inside.room.map((room, face) => {
    const isFloor = labels[face] !== UNLABELLED
    const isWon = inside.outline[face]! <= 0 || (inside.obstacles[face]! > 0 && isFloor)
    return room && isWon ? 0 : UNLABELLED
  })
}

/**
 * Adds the ledger up from the shapes that are handed out. The outline is measured by its own walk, not from the faces,
 * so a shape lost or counted twice shows in the closure.
 */
export function addUp(overlay: Overlay, shapes: readonly GridShape[], gained: readonly GridShape[]): GridLedger {
  const sum = (some: readonly GridShape[]): number => some.reduce((total, shape) => total + shape.doubledArea, 0)
  const outline = outlineDoubledArea(overlay)
  const obstacles = obstacleDoubledArea(overlay)
  const clear = sum(shapes.filter((shape) => shape.label === CLEAR))
  const lost = sum(shapes.filter((shape) => shape.label !== CLEAR))
  const won = sum(gained)
  return { outline, obstacles, gained: won, lost, clear, closure: outline + won - lost - obstacles - clear }
}

function outlineDoubledArea({ arrangement, outlineNet }: Overlay): number {
  const { places, edges } = arrangement
  let sum = 0
  for (let e = 0; e < edges.count; e++) {
    const [a, b] = [edges.first[e]!, edges.second[e]!]
    if (outlineNet[e] === 0) continue
    sum += outlineNet[e]! * (places.first[a]! * places.second[b]! - places.second[a]! * places.first[b]!)
  }
  return sum
}

/** Obstacles inside the room as it is in the end; what was taken off them beyond the old outline is no longer there. */
function obstacleDoubledArea({ arrangement, labels, inside }: Overlay): number {
  const { places, edges, faces } = arrangement
  const isObstacle = (face: number): boolean =>
    inside.room[face] === 1 && inside.obstacles[face]! > 0 && (inside.outline[face]! > 0 || labels[face] === UNLABELLED)
  let sum = 0
  for (let e = 0; e < edges.count; e++) {
    const sides = Number(isObstacle(faces.of[2 * e]!)) - Number(isObstacle(faces.of[2 * e + 1]!))
    if (sides === 0) continue
    const [a, b] = [edges.first[e]!, edges.second[e]!]
    sum += sides * (places.first[a]! * places.second[b]! - places.second[a]! * places.first[b]!)
  }
  return sum
}
