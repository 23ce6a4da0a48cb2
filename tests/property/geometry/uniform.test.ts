import { Clipper, EndType, JoinType } from 'clipper2-ts'
import fc from 'fast-check'
import { expect, test } from 'vitest'
import { insetRoom } from '#geometry/inset/insetRoom.ts'
import type { Point } from '#geometry/polygon.ts'
import { fuzzRuns, roomDraws } from '../../support/geometryFuzz.ts'
import { clearArea, perimeterOf } from '../../support/geometryMeasures.ts'
import { randomFrom, randomRoom } from '../../support/geometryRooms.ts'

/** The library's steps per mm: fine enough that its own rounding does not count. */
const STEPS = 3200

const MITRE_LIMIT = 4

function offsetByLibrary(outline: readonly Point[], depthMm: number): number {
  const path = outline.map(([x, y]) => ({ x: Math.round(x * STEPS), y: Math.round(y * STEPS) }))
  const rings = Clipper.inflatePaths([path], -depthMm * STEPS, JoinType.Miter, EndType.Polygon, MITRE_LIMIT)
  return Math.abs(rings.reduce((sum, ring) => sum + Clipper.area(ring), 0)) / STEPS ** 2
}

/** Whether some corner turns away so sharply that the mitre limit cuts it; the outline runs counter-clockwise. */
function limitActs(outline: readonly Point[]): boolean {
  const n = outline.length
  return outline.some((b, k) => {
    const a = outline[(k + n - 1) % n]!
    const c = outline[(k + 1) % n]!
    const [ux, uy, wx, wy] = [b[0] - a[0], b[1] - a[1], c[0] - b[0], c[1] - b[1]]
    const turn = Math.atan2(ux * wy - uy * wx, ux * wx + uy * wy)
    return turn < 0 && 1 / Math.cos(turn / 2) > MITRE_LIMIT
  })
}

function isCounterClockwise(outline: readonly Point[]): boolean {
  return (
    outline.reduce((sum, [x, y], k) => {
      const [nextX, nextY] = outline[(k + 1) % outline.length]!
      return sum + x * nextY - y * nextX
    }, 0) > 0
  )
}

test('one depth for all walls: an independent library leaves the same floor', () => {
  const found = { agree: 0, limit: 0 }
  fc.assert(
    fc.property(roomDraws(), ({ family, seed }) => {
      const drawn = randomRoom(family, seed, { rotated: seed % 2 === 1 }).outline
      const outline = isCounterClockwise(drawn) ? drawn : drawn.toReversed()
      const depthMm = 1 + 300 * randomFrom(seed)()
      const answer = insetRoom({ outline, depthsMm: outline.map(() => depthMm), obstacles: [] })
      if (!answer.ok) throw new Error(answer.error.message)
      const difference = Math.abs(offsetByLibrary(outline, depthMm) - clearArea(answer.value))
      if (difference <= perimeterOf(outline) * 0.01 + 1) found.agree++
      // The only difference of definition met: at a fin sharper than the limit the library squares off at the depth
      // itself, ours at four depths.
      else if (limitActs(outline)) found.limit++
      else throw new Error(`differs by ${difference} mm2 without a cause`)
    }),
    fuzzRuns(1500),
  )
  expect(found.agree + found.limit).toBe(1500)
  expect(found.limit).toBeLessThan(90)
})
