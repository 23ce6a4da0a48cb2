import { describe, expect, it } from 'vitest'
import { leafgap, npxLeafgap } from '../support/commandLine.ts'

const RECTANGLE = {
  outline: [
    [0, 0],
    [5000, 0],
    [5000, 4000],
    [0, 4000],
  ],
  depthsMm: [100, 150, 75, 50],
}
const BOW_TIE = {
  outline: [
    [0, 0],
    [4000, 3000],
    [4000, 0],
    [0, 3000],
  ],
  depthsMm: [1, 1, 1, 1],
}

function answer(value: unknown) {
  const spoken = leafgap(['inset', '-'], JSON.stringify(value))
  return { ...spoken, json: spoken.stdout === '' ? null : JSON.parse(spoken.stdout) }
}

function areaOf(part: { outline: number[][]; holes: number[][][] }): number {
  const ring = (points: number[][]) =>
    points.reduce((sum, [x = 0, y = 0], i) => {
      const [x2 = 0, y2 = 0] = points[(i + 1) % points.length] ?? []
      return sum + (x * y2 - x2 * y) / 2
    }, 0)
  return [part.outline, ...part.holes].reduce((sum, points) => sum + ring(points), 0)
}

describe('leafgap inset', () => {
  it('answers one room with the contract’s keys, through npx', () => {
    const spoken = npxLeafgap(['inset', '-'], JSON.stringify(RECTANGLE))
    expect(spoken.code).toBe(0)
    expect(spoken.stderr).toBe('')
    const json = JSON.parse(spoken.stdout)
    expect(Object.keys(json).sort()).toEqual(
      ['clear', 'gainedMm2', 'lostMm2', 'obstaclesMm2', 'outlineMm2', 'strips', 'walls', 'warnings'].sort(),
    )
    expect(Object.keys(json.clear[0]).sort()).toEqual(['areaMm2', 'holes', 'outline'])
    expect(Object.keys(json.strips[0]).sort()).toEqual(['areaMm2', 'holes', 'outline', 'wall'])
    expect(Object.keys(json.walls[0]).sort()).toEqual(['areaMm2', 'clearLengthMm', 'swallowed', 'wall'])
    expect(json.clear[0].areaMm2).toBeCloseTo(18_360_000, 6)
    expect(json.walls.map((wall: { areaMm2: number }) => wall.areaMm2)).toEqual([490000, 586875, 367500, 195625])
    expect(json.walls.map((wall: { clearLengthMm: number }) => wall.clearLengthMm)).toEqual([4800, 3825, 4800, 3825])
  })

  it('turns outer rings counter-clockwise and holes clockwise, and its sums agree', () => {
    const column = {
      outline: [
        [2000, 2000],
        [2300, 2000],
        [2300, 2300],
        [2000, 2300],
      ],
      depthsMm: [25, 25, 25, 25],
    }
    const { json } = answer({ ...RECTANGLE, obstacles: [column] })
    for (const part of [...json.clear, ...json.strips]) expect(areaOf(part)).toBeCloseTo(part.areaMm2, 2)
    const sum = (parts: { areaMm2: number }[]) => parts.reduce((total, part) => total + part.areaMm2, 0)
    expect(json.lostMm2).toBeCloseTo(sum(json.strips), 3)
    expect(json.outlineMm2 + json.gainedMm2).toBeCloseTo(json.lostMm2 + json.obstaclesMm2 + sum(json.clear), 3)
    expect(json.walls.map((wall: { wall: number }) => wall.wall)).toEqual([0, 1, 2, 3, 4, 5, 6, 7])
    expect(json.clear[0].holes).toHaveLength(1)
    expect(json.clear[0].areaMm2 * 204_800).toBeCloseTo(Math.round(json.clear[0].areaMm2 * 204_800), 0)
  })

  it('takes either direction and drops a repeated closing point', () => {
    const clockwise = { outline: [...RECTANGLE.outline].reverse(), depthsMm: [75, 150, 100, 50] }
    expect(answer(clockwise).json.clear[0].areaMm2).toBeCloseTo(18_360_000, 6)
    const closed = { outline: [...RECTANGLE.outline, [0, 0]], depthsMm: [...RECTANGLE.depthsMm, 50] }
    expect(answer(closed).json.clear[0].areaMm2).toBeCloseTo(18_360_000, 6)
  })

  it('counts what a negative depth gains', () => {
    const { json } = answer({ ...RECTANGLE, depthsMm: [-25, 100, 100, 100] })
    expect(json.gainedMm2).toBeCloseTo(125_000, 3)
    expect(json.clear[0].areaMm2).toBeCloseTo(18_840_000, 3)
  })

  it('refuses a single bad room with nothing on standard output', () => {
    const spoken = answer(BOW_TIE)
    expect(spoken.code).toBe(2)
    expect(spoken.stdout).toBe('')
    expect(spoken.problems).toHaveLength(1)
    expect(spoken.problems[0]).toMatch(/^leafgap: .*Wall 1.*Wall 3/)
  })

  it('answers an array with an array, refused items among them, and exit code 2', () => {
    const spoken = answer([RECTANGLE, BOW_TIE, RECTANGLE])
    expect(spoken.code).toBe(2)
    expect(spoken.json).toHaveLength(3)
    expect(spoken.json[1].refused.code).toBe('self-intersection')
    expect(spoken.json[1].refused.walls).toEqual([0, 2])
    expect(spoken.json[2]).toEqual(spoken.json[0])
    expect(spoken.problems).toHaveLength(1)
  })

  it.each([
    [
      'spike',
      {
        outline: [
          [0, 0],
          [4000, 0],
          [2000, 0],
          [2000, 3000],
        ],
        depthsMm: [1, 1, 1, 1],
      },
    ],
    [
      'too-few-corners',
      {
        outline: [
          [0, 0],
          [4000, 0],
        ],
        depthsMm: [1, 1],
      },
    ],
    [
      'not-finite',
      {
        outline: [
          [0, 0],
          [null, 0],
          [4000, 3000],
        ],
        depthsMm: [1, 1, 1],
      },
    ],
    ['wrong-depth-count', { outline: RECTANGLE.outline, depthsMm: [1, 1] }],
  ])('refuses %s by its code', (code, value) => {
    expect(answer([value]).json[0].refused.code).toBe(code)
  })

  it.each([
    ['{"outline": [[0,0]', 'leafgap: - is not readable JSON'],
    ['{"outline": 3, "depthsMm": []}', 'leafgap: "outline" has to be an array, at outline'],
  ])('says what is wrong with %s', (text, sentence) => {
    const spoken = leafgap(['inset', '-'], text)
    expect(spoken).toMatchObject({ code: 2, stdout: '', problems: [sentence] })
  })
})

describe('leafgap inset, odd but legal input', () => {
  it('numbers obstacles on from an outline without its closing point', () => {
    const closed = { outline: [...RECTANGLE.outline, [0, 0]], depthsMm: [...RECTANGLE.depthsMm, 20_000] }
    const column = {
      outline: [
        [2000, 2000],
        [2300, 2000],
        [2300, 2300],
        [2000, 2300],
      ],
      depthsMm: [25, 25, 25, 25],
    }
    const { json } = answer({ ...closed, obstacles: [column] })
    expect(json.walls).toHaveLength(8)
    expect(json.clear[0].areaMm2).toBeCloseTo(18_360_000 - 350 * 350, 6)
    expect(json.warnings).toEqual([])
  })

  it('lets other keys and missing obstacles be, and refuses what is no finite number by its code', () => {
    expect(answer({ id: 'C1', ...RECTANGLE, obstacles: null }).code).toBe(0)
    const spoken = leafgap(['inset', '-'], '[{"outline":[[0,0],[1e999,0],[4000,3000]],"depthsMm":[1,1,1]}]')
    expect(JSON.parse(spoken.stdout)[0].refused.code).toBe('not-finite')
    expect(leafgap(['inset', '-'], `\uFEFF${JSON.stringify(RECTANGLE)}`).code).toBe(0)
  })
})
