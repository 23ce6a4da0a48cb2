import { analyseScheme } from '#analysis/analyse.ts'
import type { SchemeResult } from '#analysis/results.ts'
import type { CeilingPart, Drop, HeightPoint, Obstacle, PlanPoint, Room } from '#analysis/room.ts'
import type { Scheme } from '#analysis/scheme.ts'
import { CATALOGUE, deepFreeze, openSample } from './samples.ts'

const BASE = openSample('garage').rooms[0]!

/** A bare room with these corners (mm) and, unless said otherwise, 2400 mm high; nothing stands or hangs in it. */
export function aRoom(corners: readonly (readonly [number, number])[], change: Partial<Room> = {}): Room {
  const n = corners.length
  return deepFreeze({
    ...BASE,
    corners: corners.map(([xMm, yMm], k) => ({ id: `corner-${k + 1}`, xMm, yMm })),
    walls: corners.map((_, k) => ({
      ...BASE.walls[0]!,
      id: `wall-${k + 1}`,
      from: `corner-${k + 1}`,
      to: `corner-${((k + 1) % n) + 1}`,
    })),
    heights: [aHeight(0, 0, 2400)],
    openings: [],
    ducts: undefined,
    people: undefined,
    reverberationS: undefined,
    ...change,
  })
}

/** Corners of a rectangle along the axes. */
export function box(x0: number, y0: number, x1: number, y1: number): [number, number][] {
  return [
    [x0, y0],
    [x1, y0],
    [x1, y1],
    [x0, y1],
  ]
}

export function plan(corners: readonly (readonly [number, number])[]): PlanPoint[] {
  return corners.map(([xMm, yMm]) => ({ xMm, yMm }))
}

export function aHeight(xMm: number, yMm: number, heightMm: number, floorMm = 0): HeightPoint {
  return { id: `height-${xMm}-${yMm}`, xMm, yMm, heightMm, floorMm }
}

export function aDrop(corners: readonly (readonly [number, number])[], change: Partial<Drop> = {}): Drop {
  const [first] = corners
  const id = `drop-${first?.join('-')}`
  return { id, name: id, corners: plan(corners), undersideMm: 2100, boxBelowMm: 0, boxSidesMm: 0, ...change }
}

export function aPart(corners: readonly (readonly [number, number])[], heights: readonly HeightPoint[]): CeilingPart {
  const id = `part-${corners[0]?.join('-')}`
  return { id, name: id, corners: plan(corners), heights }
}

export function anObstacle(corners: readonly (readonly [number, number])[], liningMm: number): Obstacle {
  return { id: 'obstacle-1', name: 'Pier', corners: plan(corners), liningMm }
}

/** What is built in a test's scheme, by surface: an assembly's id, or a whole choice. */
export function aScheme(choices: Readonly<Record<string, string>> = {}, change: Partial<Scheme> = {}): Scheme {
  const built = Object.entries(choices).map(([id, assembly]) => [id, { assembly, removeLining: false }] as const)
  return { id: 'scheme-1', name: 'A', choices: Object.fromEntries(built), ...change }
}

/** The results of a scheme, which has to have some. */
export function resultsOf(room: Room, scheme: Scheme = aScheme()): SchemeResult {
  const analysed = analyseScheme({ room, scheme, catalogue: CATALOGUE, quality: 'drag' })
  if (!analysed.ok) throw new Error(analysed.error.message)
  return analysed.value
}
