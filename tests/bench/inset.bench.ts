import { pathToFileURL } from 'node:url'
import { Clipper, EndType, JoinType } from 'clipper2-ts'
import { type InsetInput, insetRoom } from '#geometry/inset/insetRoom.ts'
import type { Point } from '#geometry/polygon.ts'
import { FAMILIES, randomFrom, randomRoom } from '../support/geometryRooms.ts'

/** One line of the table: medians in ms; the note compares with an independent offset of the same outlines. */
export interface BenchRow {
  readonly name: string
  readonly medianMs: number
  readonly goalMs: number | null
  readonly note: string
}

/** A room of 12 walls, each with its own depth. */
const TWELVE_WALLS: InsetInput = {
  outline: [
    [0, 0],
    [6000, 0],
    [6000, 2500],
    [5200, 2500],
    [5200, 4000],
    [4000, 4000],
    [4000, 3200],
    [2500, 3200],
    [2500, 4500],
    [1000, 4500],
    [1000, 3000],
    [0, 3000],
  ],
  depthsMm: [100, 73, 41.275, 120, 0, 90, 100, 60, 120, 75, 100, 50],
  obstacles: [],
}

/** A room as a scanner gives it: a corner every 16 mm along a wavy wall, off the line by up to `roughMm`. */
function scannedRoom(corners: number, roughMm: number): InsetInput {
  const random = randomFrom(corners)
  const radius = (16 * corners) / (2 * Math.PI)
  const outline = Array.from({ length: corners }, (_, k): Point => {
    const angle = (k / corners) * 2 * Math.PI
    const r = radius * (1 + 0.1 * Math.sin(5 * angle)) + 2 * roughMm * (random() - 0.5)
    return [r * Math.cos(angle), r * Math.sin(angle)]
  })
  return { outline, depthsMm: outline.map(() => 50 + 100 * random()), obstacles: [] }
}

function median(times: readonly number[]): number {
  return times.toSorted((a, b) => a - b)[times.length >> 1]!
}

/** Median time of one round, after rounds to warm up. */
function timed(rounds: number, round: () => void): number {
  const times: number[] = []
  for (let k = 0; k < rounds + Math.ceil(rounds / 4); k++) {
    const start = performance.now()
    round()
    if (k >= Math.ceil(rounds / 4)) times.push(performance.now() - start)
  }
  return median(times)
}

function offsetByLibrary({ outline }: InsetInput): void {
  const path = outline.map(([x, y]) => ({ x: Math.round(x * 320), y: Math.round(y * 320) }))
  Clipper.inflatePaths([path], -100 * 320, JoinType.Miter, EndType.Polygon, 4)
}

function row(name: string, rooms: readonly InsetInput[], goalMs: number | null, rounds: number): BenchRow {
  const medianMs = timed(rounds, () => {
    for (const room of rooms) insetRoom(room)
  })
  const uniform = rooms.map((room) => ({ ...room, depthsMm: room.outline.map(() => 100) }))
  const ours = timed(rounds, () => {
    for (const room of uniform) insetRoom(room)
  })
  const libraryMs = timed(rounds, () => {
    for (const room of uniform) offsetByLibrary(room)
  })
  const note = `one depth: ${(ours / libraryMs).toFixed(1)} x the library's ${libraryMs.toFixed(2)} ms`
  return { name, medianMs, goalMs, note }
}

/** Times of the inset, with the goals they are held against. */
export function benchInset(): BenchRow[] {
  const rooms = FAMILIES.flatMap((family) =>
    Array.from({ length: 20 }, (_, seed) => randomRoom(family, seed, { rotated: seed % 2 === 1 })),
  )
  const scanned = [500, 1000, 2000].flatMap((corners) => [
    row(`${corners}-corner outline`, [scannedRoom(corners, 2)], corners === 2000 ? 150 : null, 9),
    row(`${corners}-corner outline, rough`, [scannedRoom(corners, 20)], corners === 2000 ? 150 : null, 9),
  ])
  return [row('12-wall room', [TWELVE_WALLS], 0.5, 400), row('200 rooms', rooms, 60, 20), ...scanned]
}

if (import.meta.url === pathToFileURL(process.argv[1] ?? '').href) {
  for (const { name, medianMs, goalMs, note } of benchInset()) {
    const goal = goalMs === null ? '' : `, goal ${goalMs} ms ${medianMs <= goalMs ? 'met' : 'missed'}`
    process.stdout.write(`${name}: ${medianMs.toFixed(2)} ms${goal} (${note})\n`)
  }
}
