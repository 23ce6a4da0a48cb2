import type { InsetInput } from '#geometry/inset/insetRoom.ts'
import type { Point } from '#geometry/polygon.ts'

/** Clear area by counting cells, and whether a wall cuts through a corner square that two strips share. */
export interface CellAnswer {
  readonly clearMm2: number
  readonly cutSquare: boolean
  /** Walls whose linings reach a place; null where a corner square shared by two strips covers it. */
  readonly reachedBy: (place: Point) => number[] | null
}

interface Rect {
  readonly x0: number
  readonly y0: number
  readonly x1: number
  readonly y1: number
}

/**
 * Inset of a room with right angles only, corners and depths in whole mm, counter-clockwise: space is cut into cells
 * along every wall line and face line, each strip floods its own rectangle and the squares beyond its reflex corners,
 * and the cells no strip reached are counted. Shares no code with the overlay.
 */
export function insetByCells({ outline, depthsMm }: InsetInput): CellAnswer {
  const n = outline.length
  const xs = new Set<number>()
  const ys = new Set<number>()
  for (const [x, y] of outline) {
    xs.add(x)
    ys.add(y)
  }
  const rects = outline.map((_, k) => wallRects(outline, depthsMm, k))
  for (const rect of rects.flat()) {
    xs.add(rect.x0).add(rect.x1)
    ys.add(rect.y0).add(rect.y1)
  }
  const gx = [...xs].sort((a, b) => a - b)
  const gy = [...ys].sort((a, b) => a - b)
  const [columns, rows] = [gx.length - 1, gy.length - 1]
  const middle = (c: number, r: number): Point => [(gx[c]! + gx[c + 1]!) / 2, (gy[r]! + gy[r + 1]!) / 2]
  const inside = Array.from({ length: columns * rows }, (_, at) =>
    isInside(outline, middle(at % columns, Math.floor(at / columns))),
  )
  /** Walls between a cell and its right or upper neighbour. */
  const wallRight = new Uint8Array(columns * rows)
  const wallAbove = new Uint8Array(columns * rows)
  for (let k = 0; k < n; k++) {
    const [ax, ay] = outline[k]!
    const [bx, by] = outline[(k + 1) % n]!
    for (let at = 0; at < columns * rows; at++) {
      const [c, r] = [at % columns, Math.floor(at / columns)]
      if (ax === bx && gx[c + 1] === ax && gy[r]! >= Math.min(ay, by) && gy[r + 1]! <= Math.max(ay, by))
        wallRight[at] = 1
      if (ay === by && gy[r + 1] === ay && gx[c]! >= Math.min(ax, bx) && gx[c + 1]! <= Math.max(ax, bx))
        wallAbove[at] = 1
    }
  }
  const lost = new Uint8Array(columns * rows)
  const reached: Uint8Array[] = outline.map(() => new Uint8Array(columns * rows))
  let cutSquare = false
  for (let k = 0; k < n; k++) {
    const own = rects[k]!
    if (own.length === 0) continue
    const within = (at: number): boolean => {
      const [x, y] = middle(at % columns, Math.floor(at / columns))
      return inside[at]! && own.some((rect) => x > rect.x0 && x < rect.x1 && y > rect.y0 && y < rect.y1)
    }
    const seen = reached[k]!
    const stack = cellsOnWall(outline, k, gx, gy).filter(within)
    for (let at = stack.pop(); at !== undefined; at = stack.pop()) {
      if (seen[at]) continue
      seen[at] = 1
      lost[at] = 1
      const [c, r] = [at % columns, Math.floor(at / columns)]
      if (c + 1 < columns && !wallRight[at] && within(at + 1)) stack.push(at + 1)
      if (c > 0 && !wallRight[at - 1] && within(at - 1)) stack.push(at - 1)
      if (r + 1 < rows && !wallAbove[at] && within(at + columns)) stack.push(at + columns)
      if (r > 0 && !wallAbove[at - columns] && within(at - columns)) stack.push(at - columns)
    }
    for (const square of own.slice(1)) {
      for (let at = 0; at < columns * rows; at++) {
        const [x, y] = middle(at % columns, Math.floor(at / columns))
        const isIn = x > square.x0 && x < square.x1 && y > square.y0 && y < square.y1
        if (
          isIn &&
          (!inside[at] ||
            (wallRight[at] && gx[(at % columns) + 1]! < square.x1) ||
            (wallAbove[at] && gy[Math.floor(at / columns) + 1]! < square.y1))
        )
          cutSquare = true
      }
    }
  }
  let clear = 0
  for (let at = 0; at < columns * rows; at++) {
    const [c, r] = [at % columns, Math.floor(at / columns)]
    if (inside[at] && !lost[at]) clear += (gx[c + 1]! - gx[c]!) * (gy[r + 1]! - gy[r]!)
  }
  const reachedBy = ([x, y]: Point): number[] | null => {
    const isIn = (rect: Rect): boolean => x > rect.x0 && x < rect.x1 && y > rect.y0 && y < rect.y1
    if (rects.some((own) => own.slice(1).some(isIn))) return null
    const c = gx.findLastIndex((edge) => edge < x)
    const r = gy.findLastIndex((edge) => edge < y)
    const at = r * columns + c
    return outline.map((_, k) => k).filter((k) => c >= 0 && r >= 0 && reached[k]![at] === 1)
  }
  return { clearMm2: clear, cutSquare, reachedBy }
}

/** The wall's own rectangle and the squares beyond its reflex corners; nothing for a bare wall. */
function wallRects(outline: readonly Point[], depths: readonly number[], k: number): Rect[] {
  const n = outline.length
  const depth = depths[k]!
  if (depth === 0) return []
  const [p, q] = [outline[k]!, outline[(k + 1) % n]!]
  const u = direction(p, q)
  const inward: Point = [-u[1], u[0]]
  const box = (a: Point, along: number): Rect => {
    const corners = [a, [a[0] + u[0] * along + inward[0] * depth, a[1] + u[1] * along + inward[1] * depth] as const]
    const [x0, x1] = [Math.min(corners[0]![0], corners[1]![0]), Math.max(corners[0]![0], corners[1]![0])]
    const [y0, y1] = [Math.min(corners[0]![1], corners[1]![1]), Math.max(corners[0]![1], corners[1]![1])]
    return { x0, y0, x1, y1 }
  }
  const rects = [box(p, Math.abs(q[0] - p[0]) + Math.abs(q[1] - p[1]))]
  const before = direction(outline[(k + n - 1) % n]!, p)
  const after = direction(q, outline[(k + 2) % n]!)
  const turn = (a: Point, b: Point): number => a[0] * b[1] - a[1] * b[0]
  if (turn(u, after) < 0 && depths[(k + 1) % n]! > 0) rects.push(box(q, depths[(k + 1) % n]!))
  if (turn(before, u) < 0 && depths[(k + n - 1) % n]! > 0) rects.push(box(p, -depths[(k + n - 1) % n]!))
  return rects
}

function direction(a: Point, b: Point): Point {
  return [Math.sign(b[0] - a[0]), Math.sign(b[1] - a[1])]
}

/** Cells on the room's side of a wall. */
function cellsOnWall(outline: readonly Point[], k: number, gx: readonly number[], gy: readonly number[]): number[] {
  const [p, q] = [outline[k]!, outline[(k + 1) % outline.length]!]
  const [ux, uy] = direction(p, q)
  const columns = gx.length - 1
  const found: number[] = []
  for (let at = 0; at < columns * (gy.length - 1); at++) {
    const [c, r] = [at % columns, Math.floor(at / columns)]
    const onHorizontal =
      uy === 0 &&
      (ux > 0 ? gy[r] === p[1] : gy[r + 1] === p[1]) &&
      gx[c]! >= Math.min(p[0], q[0]) &&
      gx[c + 1]! <= Math.max(p[0], q[0])
    const onVertical =
      ux === 0 &&
      (uy > 0 ? gx[c + 1] === p[0] : gx[c] === p[0]) &&
      gy[r]! >= Math.min(p[1], q[1]) &&
      gy[r + 1]! <= Math.max(p[1], q[1])
    if (onHorizontal || onVertical) found.push(at)
  }
  return found
}

function isInside(outline: readonly Point[], [x, y]: Point): boolean {
  let inside = false
  outline.forEach(([ax, ay], k) => {
    const [bx, by] = outline[(k + 1) % outline.length]!
    if (ax === bx && x < ax && y > Math.min(ay, by) && y < Math.max(ay, by)) inside = !inside
  })
  return inside
}
