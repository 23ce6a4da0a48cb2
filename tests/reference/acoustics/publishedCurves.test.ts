import { describe, expect, it } from 'vitest'
import { OCTAVES_HZ } from '#acoustics/bands.ts'
import { type CurveGroup, compareCurves } from '../../tools/validate/curves.ts'
import table from './publishedCurves.json' with { type: 'json' }

const compared = compareCurves()
const rmsOf = (id: string) => compared.find((curve) => curve.id === id)?.rmsDb ?? Number.NaN

function median(values: readonly number[]): number {
  const sorted = values.toSorted((a, b) => a - b)
  const middle = (sorted.length - 1) / 2
  return (sorted[Math.floor(middle)]! + sorted[Math.ceil(middle)]!) / 2
}

/** Goal for single leaves, dB rms over the printed octaves. */
const SINGLE_LEAF_GOAL_DB = 5

/**
 * Panes, boards, concrete and block of the thicknesses rooms are built of. Curves of one 13 or 16 mm board are not among
 * those published; 9 mm and twice 13 mm stand for them. (memory) marks what was recalled, not seen.
 */
const WITHIN_GOAL = [
  'BIES-45', // 4 mm glass
  'BIES-46', // 6 mm glass
  'BIES-47', // 8 mm glass
  'BIES-48', // 9 mm glass
  'EN12758-01', // 3 to 12 mm glass (memory)
  'EN12758-02',
  'EN12758-03',
  'EN12758-04',
  'EN12758-05',
  'EN12758-06',
  'EN12758-07',
  'BIES-11', // 9 mm plasterboard
  'BIES-77', // 100 mm concrete
  'ASHRAE-7', // 150 mm concrete
  'RR331-BLK190', // 190 mm block (memory)
]

/**
 * Curves of the same kinds that miss the goal, with what they reach (rounded up to half a dB) and why we think so. None
 * is explained away: a change that moves one past its figure fails here.
 */
const MISSED: readonly (readonly [id: string, reachedDb: number, why: string])[] = [
  ['BIES-12', 5.5, 'two boards of 13 mm: print dips at 2 kHz, where one board of 26 mm would; ours slip freely'],
  ['BIES-78', 7.5, '200 mm concrete: print rises by 5 dB an octave, as laboratories with flanking do'],
  [
    'ROSSING-19',
    11,
    '200 mm concrete once more, 6 to 13 dB below 150 mm of another source above 500 Hz: an outlier of print',
  ],
]

describe('single leaves', () => {
  it.each(WITHIN_GOAL)('%s: within 5 dB rms', (id) => {
    expect(rmsOf(id)).toBeLessThanOrEqual(SINGLE_LEAF_GOAL_DB)
  })

  it.each(MISSED)('%s misses the goal and stays within %d dB: %s', (id, reachedDb) => {
    expect(rmsOf(id)).toBeGreaterThan(SINGLE_LEAF_GOAL_DB)
    expect(rmsOf(id)).toBeLessThanOrEqual(reachedDb)
  })
})

/** Median rms by group, rounded up to half a dB. The goal for framed walls, 6 dB, is missed: 7.3. */
const MEDIANS_DB: Readonly<Record<CurveGroup, number>> = {
  glass: 3.5,
  board: 5,
  sheet: 4,
  masonry: 7,
  framed: 7.5,
  hung: 5.5,
  glazing: 10,
  floating: 17,
}

describe('every curve print gives for layers of ours', () => {
  it('is either compared or left out with a reason, none twice', () => {
    const ids = [...table.curves.map(({ id }) => id), ...Object.values(table.leftOut).flat()]
    expect(new Set(ids).size).toBe(ids.length)
    expect(ids.filter((id) => id.startsWith('BIES-'))).toHaveLength(82)
    expect(compared).toHaveLength(table.curves.length)
  })

  it.each(compared)('$id, $description: every printed octave within 40 dB, rms $rmsDb', ({ errorsDb, rmsDb }) => {
    expect(errorsDb).toHaveLength(OCTAVES_HZ.length)
    expect(errorsDb.filter((error) => error !== null).length).toBeGreaterThanOrEqual(6)
    expect(errorsDb.every((error) => error === null || Math.abs(error) < 40)).toBe(true)
    expect(rmsDb).toBeLessThan(17)
  })

  it.each(Object.entries(MEDIANS_DB))('%s: median within %d dB rms', (group, limitDb) => {
    const own = compared.filter((curve) => curve.group === group).map(({ rmsDb }) => rmsDb)
    expect(own.length).toBeGreaterThan(0)
    expect(median(own)).toBeLessThanOrEqual(limitDb)
  })
})
