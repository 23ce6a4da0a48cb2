import { describe, expect, test } from 'vitest'
import { type CornerEnds, type CornerWall, endsAtCorner, type Vector } from '#geometry/inset/cornerRule.ts'

/** A wall along +x into the corner, then one that turns by the angle (degrees, left positive). */
function corner(turn: number, a: number, b: number, far: Partial<CornerWall> = {}): CornerEnds {
  const angle = (turn * Math.PI) / 180
  const direction: Vector = [Math.cos(angle), Math.sin(angle)]
  const length = far.length ?? 10_000
  const first: CornerWall = {
    direction: [1, 0],
    depth: a,
    length: 10_000,
    farCorner: [-10_000, 0],
    farCornerReflex: false,
  }
  const farCorner: Vector = [direction[0] * length, direction[1] * length]
  return endsAtCorner(first, { direction, depth: b, length, farCorner, farCornerReflex: false, ...far })
}

function near(found: readonly Vector[], expected: readonly Vector[]): void {
  expect(found.length).toBe(expected.length)
  found.forEach((place, k) => {
    expect(place[0]).toBeCloseTo(expected[k]![0], 6)
    expect(place[1]).toBeCloseTo(expected[k]![1], 6)
  })
}

describe('straight on', () => {
  test('equal depths share one place', () => {
    const { first, second } = corner(0, 100, 100)
    near(first, [[0, 100]])
    expect(second[0]).toBe(first[0])
  })

  test('unequal depths make a step; the thicker end passes the thinner one', () => {
    const { first, second } = corner(0, 100, 250)
    near(first, [[0, 100]])
    near(second, [
      [0, 100],
      [0, 250],
    ])
    expect(second[0]).toBe(first[0])
  })
})

describe('into the room', () => {
  test('at a right angle both ends are square', () => {
    const { first, second } = corner(90, 100, 50)
    near(first, [[0, 100]])
    near(second, [[-50, 0]])
  })

  test('thick meets thin at 45 degrees: the thick one runs on to the thin face', () => {
    const { first, second } = corner(45, 300, 50)
    const runOn = 300 - 50 * Math.SQRT2
    near(first, [[runOn, 300]])
    near(second, [[-50 * Math.SQRT1_2, 50 * Math.SQRT1_2]])
  })

  test('and thin meets thick the other way round', () => {
    const { first, second } = corner(45, 50, 300)
    near(first, [[0, 50]])
    expect(second.length).toBe(1)
    // On both face lines: 50 above the first wall, 300 from the second.
    expect(second[0]![1]).toBeCloseTo(50, 6)
    expect(second[0]![0] * -Math.SQRT1_2 + second[0]![1] * Math.SQRT1_2).toBeCloseTo(300, 6)
  })

  test('nearly straight and unequal: a step, not a mitre metres away', () => {
    near(corner(2, 300, 50).first, [[0, 300]])
    // 4 x 300 = 1200 is reached at tan = 250 / 1200: 11.8 degrees.
    near(corner(11, 300, 50).first, [[0, 300]])
    expect(corner(13, 300, 50).first[0]![0]).toBeGreaterThan(1000)
  })

  test('a short wall that turns away cuts the run off at its end', () => {
    const { first } = corner(45, 300, 50, { length: 250, farCornerReflex: true })
    expect(first.length).toBe(2)
    for (const [x, y] of first) expect((x + y) * Math.SQRT1_2).toBeCloseTo(250, 6)
    const shorter = corner(45, 300, 50, { length: 200, farCornerReflex: true })
    near(shorter.first, [[0, 300]])
    const onward = corner(45, 300, 50, { length: 250, farCornerReflex: false })
    expect(onward.first.length).toBe(1)
  })

  test('against a bare wall the end overshoots the wall by two steps, or follows it to its end', () => {
    near(corner(90, 100, 0).first, [[2, 100]])
    near(corner(90, 100, 0, { length: 60, farCornerReflex: true }).first, [
      [0, 60],
      [0, 100],
    ])
    near(corner(120, 100, 0).first, [[0, 100]])
  })
})

describe('away from the room', () => {
  test('a right angle: both strips meet in one mitre, the very same place', () => {
    const { first, second } = corner(-90, 100, 40)
    near(first, [[40, 100]])
    expect(second[0]).toBe(first[0])
  })

  test('a knife edge is cut off square at four depths', () => {
    const { first, second } = corner(-170, 100, 100)
    expect(first[0]).toBe(second[0])
    expect(Math.hypot(...first[0]!)).toBeCloseTo(400, 6)
    const [[tx, ty], [ex, ey]] = [first[0]!, first[1]!]
    expect((ex - tx) * tx + (ey - ty) * ty).toBeCloseTo(0, 6)
    expect(ey).toBeCloseTo(100, 6)
  })

  test('shallow, thick meets thin: the thick end is square, the thin one runs back to its plane', () => {
    const { first, second } = corner(-20, 300, 50)
    const meeting = 50 / Math.cos((20 * Math.PI) / 180)
    near(first, [
      [0, meeting],
      [0, 300],
    ])
    expect(second[0]).toBe(first[0])
  })

  test('shallow, thick meets bare: nothing but a square end', () => {
    near(corner(-20, 300, 0).first, [[0, 300]])
  })
})
