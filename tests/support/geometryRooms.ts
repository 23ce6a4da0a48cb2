import type { InsetInput, InsetObstacle } from '#geometry/inset/insetRoom.ts'
import type { Point } from '#geometry/polygon.ts'

/** The shapes rooms are drawn from; the same family and seed always give the same room. */
export const FAMILIES = ['rectangle', 'L', 'T', 'U', 'stepped', 'star', 'convex', 'simple', 'sliver', 'split'] as const
export type Family = (typeof FAMILIES)[number]

export interface RoomOptions {
  readonly rotated?: boolean
  readonly obstacles?: number
  /** Share of walls that move outward, 0..1. */
  readonly negative?: number
  /** Coordinates and depths in whole multiples of this, mm; 0 for unrounded. */
  readonly lattice?: number
}

export type Random = () => number

/** Uniform numbers in [0, 1) from a seed. @source mulberry32, public domain, memory */
export function randomFrom(seed: number): Random {
  let state = seed >>> 0
  return () => {
    state = (state + 0x6d2b79f5) >>> 0
    let t = Math.imul(state ^ (state >>> 15), 1 | state)
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296
  }
}

const between = (random: Random, low: number, high: number): number => low + random() * (high - low)
const whole = (random: Random, low: number, high: number): number => Math.floor(between(random, low, high + 1))

/** A room of a family: every fourth wall bare, the others 0 to 600 mm deep. */
export function randomRoom(family: Family, seed: number, options: RoomOptions = {}): InsetInput {
  const random = randomFrom(seed * 31 + FAMILIES.indexOf(family))
  const lattice = options.lattice ?? 0
  const snap = (value: number): number => (lattice ? Math.round(value / lattice) * lattice : value)
  let outline = drawOutline(family, random)
  if (options.rotated) outline = rotate(outline, between(random, 0, 2 * Math.PI))
  outline = outline.map(([x, y]): Point => [snap(x), snap(y)])
  const depth = (): number => {
    if (random() < 0.25) return 0
    return random() < (options.negative ?? 0) ? -snap(between(random, 5, 60)) : snap(between(random, 0, 600))
  }
  const obstacles: InsetObstacle[] = []
  for (let k = 0; k < (options.obstacles ?? 0); k++) {
    const [x, y] = outline[whole(random, 0, outline.length - 1)]!
    const [cx, cy] = outline[whole(random, 0, outline.length - 1)]!
    const t = random()
    const side = (): number => between(random, 50, 800)
    let ring = rectangle(side(), side())
    if (options.rotated) ring = rotate(ring, between(random, 0, 2 * Math.PI))
    const placed = ring.map(([px, py]): Point => [snap(px + x + (cx - x) * t), snap(py + y + (cy - y) * t)])
    obstacles.push({ outline: placed, depthsMm: placed.map(() => depth() / 4) })
  }
  return { outline, depthsMm: outline.map(depth), obstacles }
}

function rectangle(width: number, height: number): Point[] {
  return [
    [0, 0],
    [width, 0],
    [width, height],
    [0, height],
  ]
}

export function rotate(outline: readonly Point[], angle: number): Point[] {
  const [c, s] = [Math.cos(angle), Math.sin(angle)]
  return outline.map(([x, y]): Point => [x * c - y * s, x * s + y * c])
}

function drawOutline(family: Family, random: Random): Point[] {
  const size = (): number => between(random, 800, 4000)
  switch (family) {
    case 'rectangle':
      return rectangle(size() + 1000, size() + 1000)
    case 'L': {
      const [a, b, c, d] = [size(), size(), size(), size()]
      return [
        [0, 0],
        [a + b, 0],
        [a + b, c],
        [a, c],
        [a, c + d],
        [0, c + d],
      ]
    }
    case 'T': {
      const [a, b, c, d, e] = [size(), size(), size(), size(), size()]
      return [
        [0, 0],
        [b, 0],
        [b, d],
        [b + c, d],
        [b + c, d + e],
        [-a, d + e],
        [-a, d],
        [0, d],
      ]
    }
    case 'U': {
      const [a, b, c, d] = [size(), between(random, 50, 2000), size(), size()]
      const [right, left] = [d + size(), d + size()]
      return [
        [0, 0],
        [a + b + c, 0],
        [a + b + c, right],
        [a + b, right],
        [a + b, d],
        [a, d],
        [a, left],
        [0, left],
      ]
    }
    case 'stepped':
      return stepped(random)
    case 'star': {
      const n = whole(random, 5, 16)
      return around(n, random, () => between(random, 800, 4000), 0.8)
    }
    case 'convex': {
      const n = whole(random, 3, 14)
      const [a, b] = [size() + 500, size() + 500]
      return around(n, random, () => 1, 0.9).map(([x, y]): Point => [x * a, y * b])
    }
    case 'simple':
      return randomSimple(random)
    case 'sliver': {
      const width = between(random, 20, 300)
      const length = size()
      const tip = between(random, 0, width)
      return [
        [0, 0],
        [length, 0],
        [length + size() / 10, tip],
        [length, width],
        [0, width + tip],
      ]
    }
    case 'split': {
      const base = around(whole(random, 3, 7), random, () => between(random, 1500, 4000), 0.5)
      return base.flatMap((from, k) => {
        const to = base[(k + 1) % base.length]!
        const cuts = Array.from({ length: whole(random, 0, 2) }, () => random()).sort((p, q) => p - q)
        const jitter = random() < 0.5 ? 0 : 0.01
        return [
          from,
          ...cuts.map((t): Point => [from[0] + (to[0] - from[0]) * t + jitter, from[1] + (to[1] - from[1]) * t]),
        ]
      })
    }
  }
}

function around(n: number, random: Random, radius: () => number, jitter: number): Point[] {
  return Array.from({ length: n }, (_, k): Point => {
    const angle = ((k + between(random, -jitter, jitter) / 2) * 2 * Math.PI) / n
    const r = radius()
    return [r * Math.cos(angle), r * Math.sin(angle)]
  })
}

/** A skyline over a straight base: right angles only. */
function stepped(random: Random): Point[] {
  const n = whole(random, 2, 6)
  const points: Point[] = []
  let x = 0
  for (let k = 0; k < n; k++) {
    const y = between(random, 800, 4000)
    points.push([x, y])
    x += between(random, 60, 1500)
    points.push([x, y])
  }
  return [[0, 0] as Point, [x, 0] as Point, ...points.reverse()]
}

/** Random corners, untangled by turning stretches round until no two sides cross. */
function randomSimple(random: Random): Point[] {
  const n = whole(random, 5, 14)
  const points = Array.from({ length: n }, (): Point => [between(random, 0, 6000), between(random, 0, 6000)])
  const cross = (a: Point, b: Point, c: Point): number => (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0])
  for (let again = true; again; ) {
    again = false
    for (let i = 0; i < n - 1 && !again; i++) {
      for (let j = i + 2; j < n && !again; j++) {
        const [a, b, c, d] = [points[i]!, points[i + 1]!, points[j]!, points[(j + 1) % n]!]
        if (a === d || cross(a, b, c) * cross(a, b, d) >= 0 || cross(c, d, a) * cross(c, d, b) >= 0) continue
        points.splice(i + 1, j - i, ...points.slice(i + 1, j + 1).reverse())
        again = true
      }
    }
  }
  return points
}
