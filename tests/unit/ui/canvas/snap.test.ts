import { describe, expect, it } from 'vitest'
import type { Point } from '#geometry/polygon.ts'
import { cornerLines, drawingLines, gridStep, snapDistance, snapPoint } from '#ui/canvas/snap.ts'

const SETTING = { tolerance: 60, step: 10, free: false, finest: 1 }

describe('a corner being placed', () => {
  it('falls on the grid where nothing else holds it', () => {
    expect(snapPoint({ ...SETTING, at: [103.4, 996.1], lines: [] }).point).toEqual([100, 1000])
    expect(gridStep('ft-in')).toBe(12.7)
  })

  it('keeps a right angle to the last corner, at a whole length', () => {
    const { point, guides } = snapPoint({ ...SETTING, at: [3014, 41], lines: drawingLines([[0, 0]]) })
    expect(point).toEqual([3010, 0])
    expect(guides).toEqual([
      [
        [0, 0],
        [3010, 0],
      ],
    ])
  })

  it('falls in line with the first corner, where two lines meet', () => {
    const points: Point[] = [
      [0, 0],
      [4000, 0],
      [4000, 3000],
    ]
    const { point, guides } = snapPoint({ ...SETTING, at: [33, 2970], lines: drawingLines(points) })
    expect(point).toEqual([0, 3000])
    expect(guides).toHaveLength(2)
  })

  it('stands square to a slanted wall', () => {
    const points: Point[] = [
      [0, 0],
      [3000, 4000],
    ]
    const { point } = snapPoint({ ...SETTING, at: [3000 - 820, 4000 + 580], lines: drawingLines(points) })
    const [dx, dy] = [point[0] - 3000, point[1] - 4000]
    expect(dx * 3000 + dy * 4000).toBeCloseTo(0, 6)
    expect(Math.hypot(dx, dy)).toBeCloseTo(1000, 6)
  })

  it('is held by nothing while Alt is down', () => {
    const { point, guides } = snapPoint({ ...SETTING, free: true, at: [3014.2, 41.3], lines: drawingLines([[0, 0]]) })
    expect(point).toEqual([3014, 41])
    expect(guides).toEqual([])
  })

  it('dragged, keeps right angles at both neighbours', () => {
    const room: Point[] = [
      [0, 0],
      [4000, 0],
      [4000, 3000],
      [0, 3000],
    ]
    const { point } = snapPoint({ ...SETTING, at: [4021, 2981], lines: cornerLines(room, 2) })
    expect(point).toEqual([4000, 3000])
  })
})

describe('a wall being moved', () => {
  it('falls in line with another corner, else on the grid', () => {
    expect(snapDistance(968, [1003], SETTING)).toBe(1003)
    expect(snapDistance(868, [1003], SETTING)).toBe(870)
    expect(snapDistance(968.4, [1003], { ...SETTING, free: true })).toBe(968)
  })
})
