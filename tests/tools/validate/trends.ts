import { anchoredWithout } from '../anchor/evaluate.ts'
import { predictedRows } from '../anchor/rows.ts'

/** A change between rows of one table, where what the laboratory adds cancels. */
interface Trend {
  readonly change: string
  /** Pairs of rows: before, after. */
  readonly pairs: readonly (readonly [string, string])[]
}

/** @source the same table of the National Building Code of Canada 2020 as in published/data/ratings.json, seen */
const TRENDS: readonly Trend[] = [
  {
    change: 'absorber, wood studs, boards straight, 1+1',
    pairs: [
      ['W1d', 'W1a'],
      ['W1e', 'W1b'],
    ],
  },
  { change: 'absorber, wood studs with channel, 2+2', pairs: [['W6j', 'W6e']] },
  { change: 'absorber in one row of a double row, 1+1', pairs: [['W13e', 'W13c']] },
  { change: 'absorber in both rows of a double row, 1+1', pairs: [['W13e', 'W13a']] },
  { change: 'absorber, light steel 92 mm, 1+1', pairs: [['S4c', 'S4a']] },
  { change: 'absorber, staggered studs, 2+2', pairs: [['W9d', 'W9a']] },
  { change: 'absorber, load-bearing steel with channel, 2+1', pairs: [['S12d', 'S12c']] },
  {
    change: 'absorber, joists with channel, 1 board',
    pairs: [
      ['F8a', 'F8c'],
      ['F8b', 'F8d'],
    ],
  },
  { change: 'second layer both sides, wood studs straight', pairs: [['W1a', 'W2a']] },
  { change: 'second layer both sides, double row filled', pairs: [['W13a', 'W15a']] },
  {
    change: 'studs 400 to 600, channel on one side',
    pairs: [
      ['W5a', 'W5b'],
      ['W5c', 'W5d'],
    ],
  },
  {
    change: 'channel 400 to 600, walls',
    pairs: [
      ['W6e', 'W6f'],
      ['W6g', 'W6h'],
      ['S11b', 'S11a'],
      ['S12d', 'S12b'],
    ],
  },
  {
    change: 'channel 400 to 600, ceilings',
    pairs: [
      ['F8a', 'F8b'],
      ['F8c', 'F8d'],
      ['F9c', 'F9d'],
    ],
  },
  {
    change: 'light steel 64 mm, filled, studs 400 to 600',
    pairs: [
      ['S1b', 'S1a'],
      ['S3f', 'S3e'],
    ],
  },
  { change: 'light steel 92 mm against 64 mm, filled, 1+1, 600', pairs: [['S1a', 'S4a']] },
  { change: 'load-bearing steel straight against wood studs, 2+2', pairs: [['W2a', 'S10a']] },
  { change: 'channel over a double row, 2+2', pairs: [['W15a', 'W16a']] },
  {
    change: 'channel between two boards against channel on joists',
    pairs: [
      ['F8a', 'F7a'],
      ['F8e', 'F7c'],
    ],
  },
  {
    change: 'channel on both faces of 140 mm block against bare block',
    pairs: [
      ['B1a', 'B4a'],
      ['B1a', 'B4b'],
    ],
  },
]

/** A trend in print, by the calculation, and anchored without any of its own rows. */
export interface TrendResult {
  readonly change: string
  readonly rows: string
  readonly published: number
  readonly physics: number
  /** null: a row of it is of no group that is anchored. */
  readonly anchored: number | null
}

/** The same sign, where print has one, and within 3 STC. */
export function isReproduced(published: number, found: number): boolean {
  const sameSign = Math.abs(published) < 0.5 || Math.sign(found) === Math.sign(published)
  return sameSign && Math.abs(found - published) <= 3
}

/** Every trend; the anchor is asked with all rows of the trend left out, so that it cannot repeat them. */
export function trendResults(): readonly TrendResult[] {
  const rows = new Map(predictedRows().map((one) => [one.row.id, one]))
  return TRENDS.map(({ change, pairs }) => {
    const ids = pairs.map(([before, after]) => [`NBC-${before}`, `NBC-${after}`] as const)
    const anchored = anchoredWithout(ids.flat())
    const mean = (of: (id: string) => number) =>
      ids.reduce((sum, [before, after]) => sum + of(after) - of(before), 0) / ids.length
    const isAnchored = ids.flat().every((id) => anchored.has(id))
    return {
      change,
      rows: pairs.map(([before, after]) => `${before}-${after}`).join(', '),
      published: mean((id) => rows.get(id)!.row.stc!),
      physics: mean((id) => rows.get(id)!.physicsStc),
      anchored: isAnchored ? mean((id) => anchored.get(id)!) : null,
    }
  })
}
