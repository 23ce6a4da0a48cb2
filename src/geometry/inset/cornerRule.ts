/** A vector on the plan. */
export type Vector = readonly [x: number, y: number]

/** One wall as a corner sees it. Lengths and depths in grid steps; directions have length 1, the room on their left. */
export interface CornerWall {
  readonly direction: Vector
  readonly depth: number
  readonly length: number
  /** The wall's other corner, from this one, in whole steps. */
  readonly farCorner: Vector
  /** The wall's other corner turns away from the room: its strip may reach round it. */
  readonly farCornerReflex: boolean
}

/**
 * How two strips end at their common corner V: the corners of each strip's end from V to its face, relative to V.
 * Places shared by both are the very same numbers, so that rounding cannot open a gap.
 */
export interface CornerEnds {
  readonly first: readonly Vector[]
  readonly second: readonly Vector[]
}

/** A mitre may reach this many times the greater depth before it is cut off. Our choice; no outside source. */
const MITRE_LIMIT = 4

/** Sine of an angle that counts as straight. */
const STRAIGHT = 1e-9

/** Steps by which a strip overshoots a bare neighbour, so that rounding leaves no hairline between them. */
const OVERSHOOT = 2

/**
 * The corner rule: where the strips of two walls end at the corner they share. `first` runs into the corner, `second`
 * leaves it. Where strips overlap, ownership is settled later; here only gaps matter.
 */
export function endsAtCorner(first: CornerWall, second: CornerWall): CornerEnds {
  const [ux, uy] = first.direction
  const [wx, wy] = second.direction
  const sine = ux * wy - uy * wx
  const cosine = ux * wx + uy * wy
  if (Math.abs(sine) < STRAIGHT && cosine > 0) return straightEnds(first, second)
  if (sine > 0) {
    const away = scaled(first.direction, -1)
    const back = scaled(second.direction, -1)
    const [along, inward] = [first.direction, normal(first)]
    return {
      first: convexEnd({ along, inward, depth: first.depth, other: second, otherAway: second.direction }),
      second: convexEnd({ along: back, inward: normal(second), depth: second.depth, other: first, otherAway: away }),
    }
  }
  return reflexEnds(first, second, sine, cosine)
}

/** A wall goes straight on: one face, or a step where the depths differ. */
function straightEnds(first: CornerWall, second: CornerWall): CornerEnds {
  const low = scaled(normal(first), Math.min(first.depth, second.depth))
  const high = scaled(normal(first), Math.max(first.depth, second.depth))
  return {
    first: first.depth > second.depth ? [low, high] : [low],
    second: second.depth > first.depth ? [low, high] : [low],
  }
}

/** A strip at a corner that turns into the room, and the wall it meets there, seen from the corner. */
interface ConvexCorner {
  readonly along: Vector
  readonly inward: Vector
  readonly depth: number
  readonly other: CornerWall
  readonly otherAway: Vector
}

/**
 * One strip's end at a corner that turns into the room. It ends square, or runs on to the other strip's face when a
 * thick lining meets a thin one at an obtuse corner; then not past the other wall's far corner if that turns away.
 */
function convexEnd(corner: ConvexCorner): readonly Vector[] {
  const { along, inward, depth, other, otherAway } = corner
  const square = scaled(inward, depth)
  const cosine = along[0] * otherAway[0] + along[1] * otherAway[1]
  const sine = Math.abs(along[0] * otherAway[1] - along[1] * otherAway[0])
  const runOn = (depth * cosine - other.depth) / sine
  if (runOn > MITRE_LIMIT * Math.max(depth, other.depth)) return [square]
  if (other.depth === 0) return endAtBareWall(corner, square, runOn, sine, cosine)
  if (runOn <= 0) return [square]
  const mitre = plus(square, along, runOn)
  const foot = mitre[0] * otherAway[0] + mitre[1] * otherAway[1]
  if (foot <= other.length || !other.farCornerReflex) return [mitre]
  const squareFoot = depth * sine
  if (squareFoot >= other.length) return [square]
  return [scaled(mitre, other.length / foot), plus(square, along, (other.length - squareFoot) / cosine)]
}

/** The same against a bare wall: the strip's end follows the wall, over rounding, as far as the wall goes. */
function endAtBareWall(
  { along, depth, other }: ConvexCorner,
  square: Vector,
  runOn: number,
  sine: number,
  cosine: number,
): readonly Vector[] {
  if (runOn * sine <= -OVERSHOOT) return [square]
  const foot = depth / sine
  if (foot <= other.length) return [plus(square, along, runOn + OVERSHOOT / sine)]
  if (runOn * sine < OVERSHOOT) return [other.farCorner, square]
  if (!other.farCornerReflex) return [other.farCorner, plus(square, along, runOn)]
  const squareFoot = depth * sine
  if (squareFoot >= other.length) return [square]
  return [other.farCorner, plus(square, along, (other.length - squareFoot) / cosine)]
}

/** Both strips' ends at a corner that turns away from the room. */
function reflexEnds(first: CornerWall, second: CornerWall, sine: number, cosine: number): CornerEnds {
  const a = first.depth
  const b = second.depth
  const firstSquare = scaled(normal(first), a)
  const secondSquare = scaled(normal(second), b)
  const firstRunOn = (a * cosine - b) / sine
  const secondRunOn = (b * cosine - a) / sine
  if (firstRunOn < 0) {
    const meeting = scaled(normal(first), b / cosine)
    return { first: b > 0 ? [meeting, firstSquare] : [firstSquare], second: [meeting] }
  }
  if (secondRunOn < 0) {
    const meeting = scaled(normal(second), a / cosine)
    return { first: [meeting], second: a > 0 ? [meeting, secondSquare] : [secondSquare] }
  }
  const limit = MITRE_LIMIT * Math.max(a, b)
  const mitre = plus(firstSquare, first.direction, firstRunOn)
  const distance = Math.hypot(mitre[0], mitre[1])
  if (distance <= limit) return { first: [mitre], second: [mitre] }
  const outward = Number.isFinite(distance) ? scaled(mitre, 1 / distance) : first.direction
  const tip = scaled(outward, limit)
  const [wx, wy] = second.direction
  return {
    first: [tip, bluntCorner(firstSquare, first.direction, outward, limit)],
    second: [tip, bluntCorner(secondSquare, [-wx, -wy], outward, limit)],
  }
}

/** Where a face line reaches the blunt end that stands square to the mitre at the limit. */
function bluntCorner(square: Vector, along: Vector, outward: Vector, limit: number): Vector {
  const start = square[0] * outward[0] + square[1] * outward[1]
  return plus(square, along, (limit - start) / (along[0] * outward[0] + along[1] * outward[1]))
}

/** Into the room, square to the wall. */
function normal(wall: CornerWall): Vector {
  return [-wall.direction[1], wall.direction[0]]
}

function scaled(vector: Vector, factor: number): Vector {
  return [vector[0] * factor, vector[1] * factor]
}

function plus(start: Vector, along: Vector, distance: number): Vector {
  return [start[0] + along[0] * distance, start[1] + along[1] * distance]
}
