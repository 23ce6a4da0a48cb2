import { predictLoss } from '#acoustics/layered/predict.ts'
import type { LayeredSystem, Leaf } from '#acoustics/layered/system.ts'

/** One timing: the median over repeated runs, and the time we want it to stay under. */
export interface BenchRow {
  readonly name: string
  readonly medianMs: number
  /** null: no goal, told for comparison */
  readonly goalMs: number | null
  readonly note?: string
}

function boards(count: number): Leaf {
  const sheet = { material: 'gypsum-type-x', thicknessMm: 15.875 } as const
  return { sheets: Array.from({ length: count }, () => sheet), dampedJoints: [] }
}

const STUDS = { kind: 'wood-stud', spacingMm: 406.4 } as const

const DOUBLE_LEAF: LayeredSystem = {
  leaves: [boards(1), boards(2)],
  cavities: [
    {
      depthMm: 101.6,
      fillMm: 88.9,
      link: { kind: 'resilient-channel', frame: 'wood-stud', studSpacingMm: 406.4, channelSpacingMm: 609.6 },
    },
  ],
}

const TRIPLE_LEAF: LayeredSystem = {
  leaves: [boards(1), boards(1), boards(2)],
  cavities: [
    { depthMm: 88.9, fillMm: 0, link: STUDS },
    { depthMm: 114.3, fillMm: 88.9, link: { kind: 'none' } },
  ],
}

/** Runs before measuring, so that the compiler has settled; and measured runs. */
const WARM_UP = 300
const RUNS = 101

function medianMs(work: () => void): number {
  for (let i = 0; i < WARM_UP; i++) work()
  const times = Array.from({ length: RUNS }, () => {
    const start = performance.now()
    work()
    return performance.now() - start
  })
  return times.toSorted((a, b) => a - b)[Math.floor(RUNS / 2)]!
}

/** Median times of one construction's 21-band curve. */
export function benchCurve(): readonly BenchRow[] {
  const row = (name: string, system: LayeredSystem, quality: 'drag' | 'plot', goalMs: number): BenchRow => ({
    name,
    medianMs: medianMs(() => {
      predictLoss(system, { quality })
    }),
    goalMs,
  })
  return [
    row('curve of a double leaf, while dragging', DOUBLE_LEAF, 'drag', 0.3),
    row('curve of a double leaf, as plotted', DOUBLE_LEAF, 'plot', 1.2),
    row('curve of a triple leaf, while dragging', TRIPLE_LEAF, 'drag', 0.5),
    row('curve of a triple leaf, as plotted', TRIPLE_LEAF, 'plot', 2),
  ]
}
