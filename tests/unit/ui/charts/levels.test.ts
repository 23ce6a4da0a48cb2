import { describe, expect, test } from 'vitest'
import type { Path, PathShare } from '#analysis/paths/answer.ts'
import { nearestOctave, octaveAfter } from '#ui/charts/LevelChart.tsx'
import { levelScales } from '#ui/charts/levelScale.ts'
import { octaveWords } from '#ui/charts/levelWords.ts'
import { sortedShares } from '#ui/charts/ShareBars.tsx'

const LEVELS = {
  sourceDb: [100, 103, 101, 100, 98, 97, null],
  levelsDb: [60, 52, 40, 30, 20, -3.4, null],
  levelsLow95Db: [52, 46, 34, 25, 15, -8, null],
  levelsHigh95Db: [69, 58, 46, 35, 25, 2, null],
  limitDb: [54, 44, 37, 31, 27, 24, 22],
  worstBandHz: 125,
  dominantBandHz: null,
}
const SIZE = { width: 400, height: 200, left: 46, right: 10, top: 10, bottom: 24 }

describe('the level chart', () => {
  test('says of an octave its level, range, limit and source', () => {
    expect(octaveWords(LEVELS, 1)).toBe('125 Hz: 52 dB at the receiver, likely 46 to 58 dB; limit 44 dB; source 103 dB')
    expect(octaveWords(LEVELS, 5)).toContain('2000 Hz: −3 dB at the receiver, likely −8 to 2 dB')
  })

  test('says of an octave without a level that it is not judged, never 0', () => {
    expect(octaveWords(LEVELS, 6)).toBe(
      '4000 Hz: level at the receiver not known; limit 22 dB; the source has no level here, so it is not judged',
    )
  })

  test('is read by arrow keys and stops at its ends', () => {
    expect(octaveAfter(0, 'ArrowRight')).toBe(1)
    expect(octaveAfter(0, 'ArrowLeft')).toBe(0)
    expect(octaveAfter(6, 'ArrowUp')).toBe(6)
    expect(octaveAfter(3, 'End')).toBe(6)
    expect(octaveAfter(3, 'Tab')).toBeNull()
  })

  test('finds the octave under the pointer', () => {
    const scales = levelScales(LEVELS, SIZE)
    expect(nearestOctave(scales, scales.x(2) + 5)).toBe(2)
    expect(nearestOctave(scales, 0)).toBe(0)
    expect(nearestOctave(scales, 9999)).toBe(6)
  })

  test('has room for all that is known', () => {
    const { y } = levelScales(LEVELS, SIZE)
    expect(y.domain()).toEqual([-10, 110])
  })
})

test('small shares stand together, and the three greatest always one by one', () => {
  const shares = [0.6, 0.38, 0.004, 0.003, 0.002, 0.001, 0.01].map(share)
  const { shown, rest } = sortedShares(shares, 'deciding')
  expect(shown.map(({ shareAtWorstBand }) => shareAtWorstBand)).toEqual([0.6, 0.38, 0.01])
  expect(rest).toHaveLength(4)
  expect(sortedShares([0.9, 0.05, 0.04, 0.01, 0.004].map(share), 'deciding').rest).toHaveLength(0)
})

function share(shareAtWorstBand: number): PathShare {
  const path: Path = {
    id: `path-${shareAtWorstBand}`,
    kind: 'surface',
    label: 'Wall 1',
    element: 'wall-1',
    areaM2: 10,
    lossDb: [],
    sdDb: [],
    basis: 'calculated',
    distanceMm: null,
    screenedDb: 0,
    notes: [],
  }
  return { path, share: shareAtWorstBand, shareAtWorstBand, gainIfClosedDb: null, levelsDb: [] }
}
