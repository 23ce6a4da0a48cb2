import { describe, expect, it } from 'vitest'
import type { Layer } from '#assemblies/layer.ts'
import { clipSpans } from '#drawing/clipSpans.ts'
import { hatchFor, hatchRuns } from '#drawing/hatch.ts'

const board: Layer = { kind: 'board', material: 'gypsum-type-x', thicknessMm: 15.875 }
const block: Layer = { kind: 'board', material: 'concrete-block-hollow', thicknessMm: 100 }
const foam: Layer = { kind: 'filler', name: 'Foam board', thicknessMm: 38.1, surfaceMassKgM2: 1 }
const gap: Layer = { kind: 'cavity', depthMm: 41.275, link: { kind: 'none' } }
const studs: Layer = {
  kind: 'cavity',
  depthMm: 114.3,
  fill: 'mineral-wool',
  fillMm: 88.9,
  link: { kind: 'none' },
  frame: { name: '2x4 wood studs', depthMm: 88.9, massKgM2: 2.5 },
}
const DEPTH = 146.05
const trapezium = [
  [
    [0, 0],
    [2000, 0],
    [2000 - DEPTH, DEPTH],
    [DEPTH, DEPTH],
  ],
] as const
const holed = [
  ...trapezium,
  [
    [800, 20],
    [1200, 20],
    [1200, 120],
    [800, 120],
  ],
] as const

/** Middles of all pieces of all runs: ends may stand on an edge. */
function middles(runs: readonly (readonly number[])[]): [number, number][] {
  return runs.flatMap((run) =>
    Array.from({ length: run.length / 2 - 1 }, (_, index): [number, number] => [
      (run[2 * index]! + run[2 * index + 2]!) / 2,
      (run[2 * index + 1]! + run[2 * index + 3]!) / 2,
    ]),
  )
}

describe('hatchFor', () => {
  it.each([
    ['wool', [studs, board, board]],
    ['board', [gap, board, board]],
    ['masonry', [gap, block]],
    ['foam', [foam, board]],
    ['gap', [gap]],
    ['gap', []],
  ] as const)('says %s by what most of the depth is', (pattern, layers) => {
    expect(hatchFor(layers)).toBe(pattern)
  })
})

describe('hatchRuns', () => {
  const shapes = [
    ['a mitred strip', trapezium],
    ['a strip with a hole', holed],
  ] as const
  const stacks = [
    ['independent studs', [studs, board, board]],
    ['clips', [gap, board, board]],
    ['masonry', [gap, block]],
    ['foam', [foam, studs, board]],
  ] as const
  for (const [shapeName, rings] of shapes) {
    for (const [stackName, layers] of stacks) {
      for (const scale of [0.02, 0.12, 1]) {
        it(`keeps ${stackName} inside ${shapeName} at ${scale}`, () => {
          const scaled = rings.map((ring) => ring.map(([s, t]): [number, number] => [s * scale, t * scale]))
          const runs = hatchRuns({ layers, rings: scaled, faceT: DEPTH * scale, scale, closest: 1.7 })
          for (const [s, t] of middles(runs)) {
            const inside = clipSpans(scaled, 0, t, 1, 0).some(([from, to]) => s >= from - 0.02 && s <= to + 0.02)
            const onEdge = t < 0.02 || t > DEPTH * scale - 0.02
            expect(inside || onEdge, `${s}, ${t}`).toBe(true)
          }
        })
      }
    }
  }

  it('draws loops for wool, lines for boards and diagonals for masonry, and tells them apart without colour', () => {
    const draw = (layers: readonly Layer[]) =>
      hatchRuns({ layers, rings: trapezium, faceT: DEPTH, scale: 1, closest: 1.7 })
    expect(Math.max(...draw([studs, board]).map((run) => run.length))).toBeGreaterThan(100)
    expect(draw([gap, board, board]).every((run) => run.length === 4 && run[1] === run[3])).toBe(true)
    expect(draw([block]).some((run) => Math.abs(run[2]! - run[0]!) > 1 && Math.abs(run[3]! - run[1]!) > 1)).toBe(true)
  })

  it('puts board lines at their own depths', () => {
    const runs = hatchRuns({ layers: [gap, board, board], rings: trapezium, faceT: 73.025, scale: 1, closest: 3 })
    const depths = new Set(runs.map((run) => Math.round(run[1]! * 1000) / 1000))
    expect(depths).toContain(41.275)
    expect(depths).toContain(57.15)
  })
})
