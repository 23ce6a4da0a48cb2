import fc from 'fast-check'
import { expect, test } from 'vitest'
import { STEPS_PER_MM } from '#geometry/grid.ts'
import { type Inset, type InsetInput, insetRoom } from '#geometry/inset/insetRoom.ts'
import type { Point } from '#geometry/polygon.ts'
import { insetByCells } from '../../support/geometryCellGrid.ts'
import { fuzzRuns, roomDraws } from '../../support/geometryFuzz.ts'
import { insetByHalfPlanes } from '../../support/geometryHalfPlanes.ts'
import { clearArea, lengthOf, perimeterOf } from '../../support/geometryMeasures.ts'
import { contains } from '../../support/geometryPoints.ts'
import { randomFrom, randomRoom, rotate } from '../../support/geometryRooms.ts'

const RIGHT_ANGLED = ['rectangle', 'L', 'T', 'U', 'stepped'] as const

function solved(input: InsetInput): Inset {
  const answer = insetRoom(input)
  if (!answer.ok) throw new Error(answer.error.message)
  return answer.value
}

test.each([1, 50])(
  'right-angled rooms, unequal depths, lattice %i mm: the cell grid finds the very same floor',
  (lattice) => {
    let compared = 0
    fc.assert(
      fc.property(roomDraws(RIGHT_ANGLED), ({ family, seed }) => {
        const room = randomRoom(family, seed, { lattice })
        const cells = insetByCells(room)
        // The square beyond a reflex corner belongs to two strips; where a wall cuts through it the cells give all of it
        // to both, the inset to each what hangs together with its own wall. A difference of definition.
        if (cells.cutSquare) return
        compared++
        expect(clearArea(solved(room))).toBe(cells.clearMm2)
      }),
      fuzzRuns(600),
    )
    expect(compared).toBeGreaterThan(500)
  },
)

test('convex rooms, unequal depths: what lies in front of every face line is the clear floor', () => {
  let compared = 0
  fc.assert(
    fc.property(roomDraws(['convex', 'rectangle']), ({ family, seed }) => {
      const room = randomRoom(family, seed, { rotated: true })
      const expected = insetByHalfPlanes(room)
      // Without a face a wall no longer bounds the floor, and beyond four depths a face ends in a step: other definitions.
      if (expected.faces.some((length) => length < 1) || expected.farthestRunOn > 4) return
      compared++
      const inset = solved(room)
      const roundingRoom = perimeterOf(room.outline) / STEPS_PER_MM
      expect(Math.abs(clearArea(inset) - expected.clearMm2)).toBeLessThan(roundingRoom)
      // Mitres run from corner to corner, so each strip is a trapezoid between its wall and its face.
      inset.walls.forEach(({ areaMm2, clearLengthMm }, wall) => {
        const { outline, depthsMm } = room
        const length = lengthOf({ from: outline[wall]!, to: outline[(wall + 1) % outline.length]! })
        const trapezoid = (depthsMm[wall]! * (length + expected.faces[wall]!)) / 2
        expect(Math.abs(areaMm2 - trapezoid), `strip of wall ${wall}`).toBeLessThan(2 * roundingRoom)
        // At a flat corner a face's end moves by many times a rounded step.
        const flatness = family === 'rectangle' ? 0.02 : 3
        expect(Math.abs(clearLengthMm - expected.faces[wall]!), `face of wall ${wall}`).toBeLessThan(flatness)
      })
    }),
    fuzzRuns(1000),
  )
  expect(compared).toBeGreaterThan(700)
})

test('rectangles: each place of a strip belongs to the wall whose lining it lies least deep in', () => {
  let compared = 0
  fc.assert(
    fc.property(roomDraws(['rectangle']), ({ family, seed }) => {
      const drawn = randomRoom(family, seed, { rotated: true })
      const { outline } = drawn
      // Thick enough for opposite strips to meet in some rooms: they share in proportion to their depths.
      const depthsMm = drawn.depthsMm.map((depth) => depth * 4)
      const inset = solved({ outline, depthsMm, obstacles: [] })
      const random = randomFrom(seed)
      const [o, p, , q] = outline as [Point, Point, Point, Point]
      for (let k = 0; k < 20; k++) {
        const [s, t] = [random(), random()]
        const place: Point = [
          o[0] + s * (p[0] - o[0]) + t * (q[0] - o[0]),
          o[1] + s * (p[1] - o[1]) + t * (q[1] - o[1]),
        ]
        const [width, height] = [lengthOf({ from: o, to: p }), lengthOf({ from: o, to: q })]
        const away = [t * height, (1 - s) * width, (1 - t) * height, s * width]
        const deep = away.map((distance, wall) => (depthsMm[wall]! > 0 ? distance / depthsMm[wall]! : Infinity))
        const [least, second] = deep.toSorted((one, other) => one - other) as [number, number]
        if (Math.abs(least - 1) < 1e-3 || second - least < 1e-3) continue
        compared++
        const owners = inset.strips.filter((strip) => contains(strip.outline, place)).map((strip) => strip.wall)
        expect(owners).toEqual(least < 1 ? [deep.indexOf(least)] : [])
      }
    }),
    fuzzRuns(200),
  )
  expect(compared).toBeGreaterThan(3000)
})

test('right-angled rooms: of the linings that reach a place, the one it lies least deep in has it', () => {
  let compared = 0
  fc.assert(
    fc.property(roomDraws(RIGHT_ANGLED), ({ family, seed }) => {
      const room = randomRoom(family, seed, { lattice: 1 })
      const { outline, depthsMm } = room
      const cells = insetByCells(room)
      if (cells.cutSquare) return
      const inset = solved(room)
      const random = randomFrom(seed)
      const spread = (k: 0 | 1): number => {
        const values = outline.map((point) => point[k])
        return Math.min(...values) + random() * (Math.max(...values) - Math.min(...values))
      }
      for (let k = 0; k < 15; k++) {
        const place: Point = [spread(0), spread(1)]
        const reaching = contains(outline, place) ? cells.reachedBy(place) : null
        if (!reaching) continue
        const deep = reaching.map((wall) => {
          const [ax, ay] = outline[wall]!
          const [bx] = outline[(wall + 1) % outline.length]!
          return { wall, depth: Math.abs(ax === bx ? place[0] - ax : place[1] - ay) / depthsMm[wall]! }
        })
        deep.sort((one, other) => one.depth - other.depth)
        if (deep[0] && Math.abs(deep[0].depth - 1) < 1e-3) continue
        if (deep[1] && deep[1].depth - deep[0]!.depth < 1e-3) continue
        compared++
        const isIn = (strip: Inset['strips'][number]): boolean =>
          contains(strip.outline, place) && !strip.holes.some((hole) => contains(hole, place))
        expect(inset.strips.filter(isIn).map((strip) => strip.wall)).toEqual(deep.slice(0, 1).map(({ wall }) => wall))
      }
    }),
    fuzzRuns(400),
  )
  expect(compared).toBeGreaterThan(2000)
})

test('a right-angled room turned by any angle keeps every length and area, with what stands in it', () => {
  fc.assert(
    fc.property(
      roomDraws(RIGHT_ANGLED),
      fc.double({ min: 0.01, max: 6.28, noNaN: true }),
      ({ family, seed }, angle) => {
        const room = randomRoom(family, seed, { obstacles: seed % 2 })
        const turned: InsetInput = {
          outline: rotate(room.outline, angle),
          depthsMm: room.depthsMm,
          obstacles: room.obstacles.map(({ outline, depthsMm }) => ({ outline: rotate(outline, angle), depthsMm })),
        }
        const [straight, askew] = [solved(room), solved(turned)]
        const roundingRoom = (2 * perimeterOf(room.outline)) / STEPS_PER_MM
        expect(Math.abs(clearArea(straight) - clearArea(askew))).toBeLessThan(roundingRoom)
        expect(askew.clear.length).toBe(straight.clear.length)
        straight.walls.forEach(({ wall, clearLengthMm, areaMm2 }) => {
          expect(Math.abs(askew.walls[wall]!.clearLengthMm - clearLengthMm), `wall ${wall}`).toBeLessThan(1)
          expect(Math.abs(askew.walls[wall]!.areaMm2 - areaMm2), `strip ${wall}`).toBeLessThan(2 * roundingRoom)
        })
      },
    ),
    fuzzRuns(300),
  )
})
