import fc from 'fast-check'
import { expect, test } from 'vitest'
import { STEPS_PER_MM } from '#geometry/grid.ts'
import { type Inset, type InsetInput, insetRoom } from '#geometry/inset/insetRoom.ts'
import { insetByCells } from '../../support/geometryCellGrid.ts'
import { fuzzRuns, roomDraws } from '../../support/geometryFuzz.ts'
import { insetByHalfPlanes } from '../../support/geometryHalfPlanes.ts'
import { clearArea, perimeterOf } from '../../support/geometryMeasures.ts'
import { randomRoom } from '../../support/geometryRooms.ts'

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
    }),
    fuzzRuns(1000),
  )
  expect(compared).toBeGreaterThan(700)
})
