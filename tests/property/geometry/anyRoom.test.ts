import fc from 'fast-check'
import { expect, test } from 'vitest'
import { STEPS_PER_MM } from '#geometry/grid.ts'
import { type Inset, type InsetInput, insetOnGrid, insetRoom } from '#geometry/inset/insetRoom.ts'
import { fuzzRuns, type RoomDraw, roomDraws } from '../../support/geometryFuzz.ts'
import { clearArea, frozen, lengthOf, perimeterOf, shoelace } from '../../support/geometryMeasures.ts'
import { contains, distanceToRing } from '../../support/geometryPoints.ts'
import { type RoomOptions, randomRoom } from '../../support/geometryRooms.ts'

/** Refusals that a valid outline may draw once walls move outward. */
const MOVED = ['strip-collapses', 'strip-collides']

function room({ family, seed }: RoomDraw, options: RoomOptions = {}): InsetInput {
  return frozen(randomRoom(family, seed, { rotated: seed % 2 === 1, ...options }))
}

/** The answer on the first grid: no second one may be needed. */
function onFirstGrid(input: InsetInput): Inset | string {
  const answer = insetOnGrid(input, STEPS_PER_MM)
  if (!answer) throw new Error('the drawing contradicts itself or does not add up')
  return answer.ok ? answer.value : answer.error.code
}

function checkLedger(inset: Inset): void {
  expect(inset.closureGridUnits2).toBe(0)
  const { outlineMm2, gainedMm2, lostMm2, obstaclesMm2 } = inset
  const sum = (parts: readonly { readonly areaMm2: number }[]): number =>
    parts.reduce((all, part) => all + part.areaMm2, 0)
  expect(Math.abs(outlineMm2 + gainedMm2 - lostMm2 - obstaclesMm2 - clearArea(inset))).toBeLessThan(1e-3)
  expect(Math.abs(sum(inset.strips) - lostMm2)).toBeLessThan(1e-3)
  expect(Math.abs(sum(inset.gained) - gainedMm2)).toBeLessThan(1e-3)
  for (const part of [...inset.clear, ...inset.strips, ...inset.gained]) {
    expect(part.areaMm2).toBeGreaterThan(0)
    expect(Math.abs(shoelace(part) - part.areaMm2)).toBeLessThan(1e-3)
  }
}

function checkEdges(input: InsetInput, inset: Inset): void {
  const rings = inset.clear.flatMap((part) => [part.outline, ...part.holes])
  const around = rings.reduce((sum, ring) => sum + perimeterOf(ring), 0)
  const edges = inset.edges.reduce((sum, edge) => sum + lengthOf(edge), 0)
  // Edges shorter than 0.05 mm are left out, and several may meet in one corner.
  expect(Math.abs(around - edges)).toBeLessThan(0.5)
  const given = [input, ...input.obstacles].flatMap(({ outline }) =>
    outline.map((from, k) => lengthOf({ from, to: outline[(k + 1) % outline.length]! })),
  )
  expect(inset.walls.map(({ wall }) => wall)).toEqual(given.map((_, wall) => wall))
  for (const { sections, clearLengthMm, swallowed } of inset.walls) {
    const length = sections.reduce((sum, section) => sum + section.s1Mm - section.s0Mm, 0)
    expect(Math.abs(length - clearLengthMm)).toBeLessThan(0.5)
    if (swallowed) expect(clearLengthMm).toBeLessThan(0.05)
  }
}

/** Every strip keeps within its lining's depth of its wall, and every corner of the clear room lies in the room. */
function checkPlaces(input: InsetInput, inset: Inset): void {
  for (const strip of inset.strips) {
    const [x, y] = input.outline[strip.wall]!
    const [toX, toY] = input.outline[(strip.wall + 1) % input.outline.length]!
    const length = Math.hypot(toX - x, toY - y)
    for (const [px, py] of strip.outline) {
      const away = Math.abs((px - x) * (toY - y) - (py - y) * (toX - x)) / length
      expect(away).toBeLessThan(input.depthsMm[strip.wall]! + 0.02)
    }
  }
  for (const point of inset.clear.flatMap((part) => part.outline)) {
    expect(contains(input.outline, point) || distanceToRing(input.outline, point) < 0.02).toBe(true)
  }
}

test('5,000 rooms of ten families: never refused, no contradiction, tiles exactly, edges keep their walls', () => {
  fc.assert(
    fc.property(roomDraws(), (draw) => {
      const input = room(draw)
      const inset = onFirstGrid(input)
      if (typeof inset === 'string') throw new Error(`refused: ${inset}`)
      checkLedger(inset)
      checkEdges(input, inset)
      checkPlaces(input, inset)
    }),
    fuzzRuns(5000),
  )
})

test('1,000 rooms with obstacles, some across walls, and walls moving outward', () => {
  let refused = 0
  fc.assert(
    fc.property(roomDraws(), (draw) => {
      const input = room(draw, { obstacles: draw.seed % 4, negative: 0.15 })
      const inset = onFirstGrid(input)
      if (typeof inset === 'string') {
        expect(MOVED).toContain(inset)
        refused++
        return
      }
      checkLedger(inset)
      checkEdges(input, inset)
    }),
    fuzzRuns(1000),
  )
  expect(refused).toBeLessThan(100)
})

test('1,000 rooms on a coarse lattice, where faces fall on walls and corners on faces', () => {
  fc.assert(
    fc.property(roomDraws(['rectangle', 'L', 'T', 'U', 'stepped', 'split']), (draw) => {
      const input = room(draw, { rotated: false, obstacles: draw.seed % 3, lattice: 50 })
      const answer = insetRoom(input)
      if (!answer.ok) throw new Error(answer.error.message)
      checkLedger(answer.value)
      checkEdges(input, answer.value)
    }),
    fuzzRuns(1000),
  )
})

test('inset by 0 changes nothing', () => {
  fc.assert(
    fc.property(roomDraws(), (draw) => {
      const { outline } = room(draw)
      const inset = onFirstGrid({ outline, depthsMm: outline.map(() => 0), obstacles: [] })
      if (typeof inset === 'string') throw new Error(inset)
      expect(inset.strips).toEqual([])
      expect(inset.clear.length).toBe(1)
      expect(clearArea(inset)).toBe(inset.outlineMm2)
      expect(inset.edges.every((edge) => edge.kind === 'bare')).toBe(true)
    }),
    fuzzRuns(300),
  )
})

test('a clockwise outline gives the same areas, wall by wall', () => {
  fc.assert(
    fc.property(roomDraws(), (draw) => {
      const { outline, depthsMm } = room(draw)
      const n = outline.length
      const turned = { outline: outline.toReversed(), depthsMm: depthsMm.map((_, k) => depthsMm[(2 * n - 2 - k) % n]!) }
      const one = onFirstGrid({ outline, depthsMm, obstacles: [] })
      const other = onFirstGrid({ ...turned, obstacles: [] })
      if (typeof one === 'string' || typeof other === 'string') throw new Error('refused')
      expect(other.outlineMm2).toBe(one.outlineMm2)
      const roundingRoom = perimeterOf(outline) / STEPS_PER_MM
      for (let k = 0; k < n; k++) {
        const difference = other.walls[k]!.areaMm2 - one.walls[(2 * n - 2 - k) % n]!.areaMm2
        expect(Math.abs(difference)).toBeLessThan(roundingRoom)
      }
    }),
    fuzzRuns(300),
  )
})

test('thicker linings never leave more floor', () => {
  fc.assert(
    fc.property(roomDraws(['rectangle', 'L', 'convex', 'star']), (draw) => {
      const { outline } = room(draw)
      const areas = [20, 60, 180].map((depth) => {
        const inset = onFirstGrid({ outline, depthsMm: outline.map(() => depth), obstacles: [] })
        if (typeof inset === 'string') throw new Error(inset)
        return clearArea(inset)
      })
      expect(areas[0]!).toBeGreaterThanOrEqual(areas[1]!)
      expect(areas[1]!).toBeGreaterThanOrEqual(areas[2]!)
    }),
    fuzzRuns(200),
  )
})
