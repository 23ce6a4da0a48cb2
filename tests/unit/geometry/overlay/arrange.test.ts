import { describe, expect, test } from 'vitest'
import { type Arrangement, arrange } from '#geometry/overlay/arrange.ts'
import { turn } from '#geometry/overlay/exact.ts'
import { traceFaces } from '#geometry/overlay/faces.ts'
import { createPairTable, pairNumber } from '#geometry/overlay/pairTable.ts'
import { addSegment, createSegments, type Segments } from '#geometry/overlay/segments.ts'
import { edgeWeights, windingNumbers } from '#geometry/overlay/winding.ts'
import { randomFrom } from '../../../support/geometryRooms.ts'

function draw(...pieces: readonly (readonly [number, number, number, number])[]): Segments {
  const segments = createSegments()
  for (const [ax, ay, bx, by] of pieces) addSegment(segments, ax, ay, bx, by)
  return segments
}

function square(x: number, y: number, size: number): [number, number, number, number][] {
  return [
    [x, y, x + size, y],
    [x + size, y, x + size, y + size],
    [x + size, y + size, x, y + size],
    [x, y + size, x, y],
  ]
}

function arranged(segments: Segments): Arrangement {
  const arrangement = arrange(segments)
  if (!arrangement) throw new Error('contradiction')
  return arrangement
}

/** Edges that cross between vertices, or run over a vertex, compared pair by pair. */
function badPairs({ places, edges }: Arrangement): number {
  let bad = 0
  const side = (e: number, v: number): number => {
    const [a, b] = [edges.first[e]!, edges.second[e]!]
    return Math.sign(
      turn(
        places.first[a]!,
        places.second[a]!,
        places.first[b]!,
        places.second[b]!,
        places.first[v]!,
        places.second[v]!,
      ),
    )
  }
  for (let e = 0; e < edges.count; e++) {
    for (let f = 0; f < e; f++) {
      const [a, b, c, d] = [edges.first[e]!, edges.second[e]!, edges.first[f]!, edges.second[f]!]
      if (side(f, a) * side(f, b) < 0 && side(e, c) * side(e, d) < 0) bad++
    }
  }
  return bad
}

describe('arrange', () => {
  test('two squares that overlap make three inner faces', () => {
    const { faces, edges } = arranged(draw(...square(0, 0, 10), ...square(5, 5, 10)))
    expect(faces.count).toBe(4)
    expect(edges.count).toBe(12)
  })

  test('a square inside another is nested in its face', () => {
    const arrangement = arranged(draw(...square(0, 0, 30), ...square(10, 10, 5), ...square(20, 10, 5)))
    const winding = windingNumbers(arrangement, edgeWeights(arrangement, [...Array(12)].fill(1)))
    expect([...(winding ?? [])].sort()).toEqual([0, 1, 2, 2])
  })

  test('pieces on each other become one edge, once for each', () => {
    const arrangement = arranged(draw(...square(0, 0, 10), [2, 0, 8, 0], [8, 0, 2, 0]))
    expect(arrangement.edges.count).toBe(6)
    const net = edgeWeights(arrangement, [0, 0, 0, 0, 1, 1])
    expect([...net].every((weight) => weight === 0)).toBe(true)
  })

  test('random pieces, crowded so that most squares hold several ends, leave no crossing between vertices', () => {
    for (const [seed, span, count] of [
      [1, 6, 12],
      [2, 12, 20],
      [3, 40, 40],
      [4, 200, 60],
      [5, 1_000_000, 50],
      [6, 18_000_000, 50],
    ] as const) {
      const random = randomFrom(seed)
      const whole = (): number => Math.floor(random() * span) - Math.floor(span / 2)
      for (let round = 0; round < 6; round++) {
        const pieces = Array.from({ length: count }, () => [whole(), whole(), whole(), whole()] as const)
        expect(badPairs(arranged(draw(...pieces))), `seed ${seed}, round ${round}`).toBe(0)
      }
    }
  })

  test('a piece moves by less than a step from where it was drawn', () => {
    const random = randomFrom(9)
    const whole = (): number => Math.floor(random() * 60)
    const segments = draw(...Array.from({ length: 40 }, () => [whole(), whole(), whole(), whole()] as const))
    const { places, chain, chainStart, edges } = arranged(segments)
    for (let k = 0; k < segments.count; k++) {
      const [ax, ay, bx, by] = [segments.ax[k]!, segments.ay[k]!, segments.bx[k]!, segments.by[k]!]
      for (let c = chainStart[k]!; c < chainStart[k + 1]!; c++) {
        const v = edges.first[chain[c]! >> 1]!
        const away = turn(ax, ay, bx, by, places.first[v]!, places.second[v]!) / Math.hypot(bx - ax, by - ay)
        expect(Math.abs(away)).toBeLessThanOrEqual(Math.SQRT1_2)
      }
    }
  })
})

test('a drawing whose diagonals cross without a vertex is found to contradict itself', () => {
  const places = createPairTable(4)
  const corners = [
    [0, 0],
    [10, 0],
    [10, 10],
    [0, 10],
  ].map(([x, y]) => pairNumber(places, x!, y!))
  const edges = createPairTable(6)
  for (const [a, b] of [
    [0, 1],
    [1, 2],
    [2, 3],
    [0, 3],
    [0, 2],
  ]) {
    pairNumber(edges, corners[a!]!, corners[b!]!)
  }
  expect(traceFaces(places, edges)?.count).toBe(3)
  pairNumber(edges, corners[1]!, corners[3]!)
  expect(traceFaces(places, edges)).toBeNull()
})

test('rings that do not close give no winding numbers', () => {
  const arrangement = arranged(draw(...square(0, 0, 10)))
  expect(windingNumbers(arrangement, edgeWeights(arrangement, [1, 1, 1, 1]))).not.toBeNull()
  expect(windingNumbers(arrangement, edgeWeights(arrangement, [1, 1, 1, 0]))).toBeNull()
})
