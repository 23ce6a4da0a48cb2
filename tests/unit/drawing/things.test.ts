import { describe, expect, it } from 'vitest'
import { analyseScheme } from '#analysis/analyse.ts'
import type { SchemeResult } from '#analysis/results.ts'
import type { Opening, Room } from '#analysis/room.ts'
import type { Scheme } from '#analysis/scheme.ts'
import type { ArcMark, Mark, TextMark } from '#drawing/model.ts'
import type { PlanInput } from '#drawing/plan/planInput.ts'
import { planMarks } from '#drawing/plan.ts'
import { SCREEN_STYLE } from '#drawing/style.ts'
import { aDoor, aPiece, aPlanRoom } from '../../support/drawing.ts'
import { CATALOGUE, deepFreeze } from '../../support/samples.ts'

/** A tenth of a pixel a millimetre, the plan's origin at 150, 750. */
const FRAME = { scale: 0.1, x: 150, y: 750 }
const LINED = { w1: 'W07', w2: 'W07', w3: 'W14', w4: 'W14' }
const DEPTH = 73.025

function aRoom(openings: readonly Opening[], more: Partial<Room> = {}): Room {
  const corners = [
    [0, 0],
    [3657.6, 0],
    [3657.6, 6096],
    [0, 6096],
  ] as const
  return deepFreeze({ ...aPlanRoom({ corners, openings }), ...more })
}

function resultOf(room: Room, more: Partial<Scheme> = {}): SchemeResult {
  const choices = Object.fromEntries(
    Object.entries(LINED).map(([id, assembly]) => [id, { assembly, removeLining: false }]),
  )
  const scheme = { id: 's', name: 'S', choices, ...more }
  const analysed = analyseScheme({ room, scheme, catalogue: CATALOGUE, quality: 'drag' })
  if (!analysed.ok) throw new Error(analysed.error.message)
  return analysed.value
}

function draw(room: Room, result: SchemeResult | null, more: Partial<PlanInput> = {}): Mark[] {
  return planMarks({ room, result, frame: FRAME, style: SCREEN_STYLE, units: 'mm', ...more })
}

const arcs = (marks: readonly Mark[]): ArcMark[] => marks.filter((mark) => mark.kind === 'arc')
const texts = (marks: readonly Mark[]): TextMark[] => marks.filter((mark) => mark.kind === 'text')
const of = (marks: readonly Mark[], id: string): Mark[] => marks.filter(({ surfaceId }) => surfaceId === id)

describe('a silencer box on the plan', () => {
  const size = { widthMm: 1000, depthMm: 500, heightMm: 300, angleDeg: 0 }
  const box = {
    id: 'b1',
    name: 'Silencer',
    duct: null,
    room: aRoom([]).id,
    xMm: 1800,
    yMm: 3000,
    ...size,
    undersideMm: 0,
  }
  const drawn = (change: Partial<typeof box> = {}): Mark[] => {
    const room = aRoom([])
    return of(draw(room, resultOf(room, { boxes: [{ ...box, ...change }] })), 'b1')
  }
  const outline = (marks: readonly Mark[]) => marks.find((mark) => mark.kind === 'polygon')

  it('is its outline with both diagonals and its name', () => {
    const marks = drawn()
    expect(outline(marks)).toMatchObject({
      role: 'box',
      fill: null,
      stroke: { colour: 'ink' },
      rings: [
        [
          [280, 475],
          [380, 475],
          [380, 425],
          [280, 425],
        ],
      ],
    })
    expect(marks.find((mark) => mark.kind === 'lines')).toMatchObject({ runs: [expect.any(Array), expect.any(Array)] })
    expect(texts(marks).map(({ text }) => text)).toEqual(['Silencer'])
  })

  it('is dashed where it hangs, and says what is under it', () => {
    const marks = drawn({ undersideMm: 2050 })
    expect(outline(marks)).toMatchObject({ stroke: { dash: expect.any(Array) } })
    expect(texts(marks).map(({ text }) => text)).toEqual(['Silencer, 2050 mm under'])
  })

  it('warns in colour and word where it does not fit', () => {
    const marks = drawn({ xMm: 300 })
    expect(outline(marks)).toMatchObject({ stroke: { colour: 'warn' } })
    expect(texts(marks).map(({ text }) => text)).toContain('Silencer does not fit')
  })

  it('leaves a hole in the clear room where it stands', () => {
    const room = aRoom([])
    expect(resultOf(room, { boxes: [box] }).clear[0]?.holes).toHaveLength(1)
    expect(resultOf(room, { boxes: [{ ...box, undersideMm: 2000 }] }).clear[0]?.holes).toHaveLength(0)
  })
})

describe('a door on the plan', () => {
  it.each([
    // The wall runs up the right-hand side: its first corner is the lower one, and the room lies to the left.
    ['from', 'in', 650, 180],
    ['to', 'in', 650 - 81.28, 90],
    ['from', 'out', 650, 270],
    ['to', 'out', 650 - 81.28, 0],
  ] as const)('hinged at %s and swinging %s has its arc in its own quarter', (hinge, swing, y, startDeg) => {
    const [arc] = arcs(draw(aRoom([aDoor({ hinge, swing })]), null))
    expect(arc).toMatchObject({ radius: expect.closeTo(81.28, 6), y: expect.closeTo(y, 6) })
    expect(((arc!.startDeg % 360) + 360) % 360).toBeCloseTo(startDeg, 6)
    expect(arc!.endDeg - arc!.startDeg).toBeCloseTo(90, 6)
  })

  it('hangs at the old face or at the new one, as the result says', () => {
    const x = 150 + 365.76
    for (const [hungIn, at] of [
      ['existing', x],
      ['lining', x - DEPTH / 10],
    ] as const) {
      const room = aRoom([aDoor({ hungIn })])
      expect(arcs(draw(room, resultOf(room)))[0]!.x).toBeCloseTo(at, 6)
    }
  })

  it('draws both leaves of a double door, and both doors of a lobby', () => {
    const double = aRoom([aDoor({ leaves: 'two' })])
    const two = arcs(draw(double, resultOf(double)))
    expect(two.map(({ radius }) => radius)).toEqual([expect.closeTo(40.64, 6), expect.closeTo(40.64, 6)])
    const lobby = aRoom([aDoor({ swing: 'out', lobby: { hinge: 'to', swing: 'in' } })])
    const doors = arcs(draw(lobby, resultOf(lobby)))
    expect(doors).toHaveLength(2)
    // The first stands at the far face of the old wall, the second at the new face.
    expect(doors[0]!.x).toBeGreaterThan(150 + 365.76)
    expect(doors[1]!.x).toBeCloseTo(150 + 365.76 - DEPTH / 10, 6)
  })

  it('keeps the dimensions clear of leaves that swing out', () => {
    const room = aRoom([aDoor({ swing: 'out' })])
    const result = resultOf(room)
    const reach = Math.max(...result.openings[0]!.door!.leaves[0]!.sweep.map(([x]) => x))
    const chain = draw(room, result).filter(({ role, kind }) => role === 'dimension' && kind === 'text')
    const beside = texts(chain).filter(({ box }) => box.x > 150 + 365.76)
    expect(beside.length).toBeGreaterThan(0)
    for (const { box } of beside) expect(box.x).toBeGreaterThan(150 + reach / 10)
  })

  it('shows a round vent by its circle and diameter', () => {
    const vent = aDoor({ kind: 'vent', name: 'Supply', shape: 'round', widthMm: 160, heightMm: 160 })
    const marks = of(draw(aRoom([vent]), null), 'd1')
    expect(marks.find(({ kind }) => kind === 'circle')).toMatchObject({ radius: expect.closeTo(8, 6) })
    expect(texts(marks).map(({ text }) => text)).toEqual(['Supply, Ø 160 mm'])
  })
})

describe('furniture on the plan', () => {
  it('stands in its outline, with the free space dashed and its name', () => {
    const room = aRoom([], { furniture: [aPiece()] })
    const marks = of(draw(room, resultOf(room)), 'f1')
    const [clearance, footprint] = marks.filter((mark) => mark.kind === 'polygon')
    expect(clearance!.stroke?.dash).toBeDefined()
    expect(footprint!.stroke).toMatchObject({ colour: 'ink' })
    expect(texts(marks).map(({ text }) => text)).toEqual(['Desk'])
    expect(marks.every(({ role }) => role === 'furniture')).toBe(true)
  })

  it('is told to be wrong by colour, sign and word together', () => {
    const room = aRoom([], { furniture: [aPiece({ xMm: 500 })] })
    const marks = of(draw(room, resultOf(room)), 'f1')
    expect(texts(marks)[0]).toMatchObject({ text: 'Desk does not fit', colour: 'warn' })
    const warned = marks.filter((mark) => mark.kind === 'polygon' && mark.stroke?.colour === 'warn')
    expect(warned.length).toBe(3)
    const selected = of(draw(room, resultOf(room), { selection: ['f1'] }), 'f1')
    expect(selected.some((mark) => mark.kind === 'polygon' && mark.stroke?.colour === 'accent')).toBe(true)
    expect(texts(selected)[0]!.text).toBe('Desk does not fit')
  })
})

describe('what is overhead, taken out or elsewhere', () => {
  const ring = (x0: number, y0: number, x1: number, y1: number) =>
    [
      [x0, y0],
      [x1, y0],
      [x1, y1],
      [x0, y1],
    ].map(([xMm, yMm]) => ({ xMm: xMm!, yMm: yMm! }))

  it('shows heights by a cross once there are several, and the parts of a ceiling', () => {
    const one = aRoom([])
    expect(draw(one, null).some(({ role }) => role === 'height')).toBe(false)
    expect(draw(one, null, { selection: ['h1'] }).some(({ role }) => role === 'height')).toBe(true)
    const heights = [...one.heights, { id: 'h2', xMm: 1000, yMm: 1000, heightMm: 2500, floorMm: 0 }]
    const bay = {
      id: 'cp',
      name: 'Bay',
      corners: ring(1500, 3500, 3000, 5000),
      heights: [{ ...heights[1]!, id: 'h3' }],
    }
    const marks = draw(aRoom([], { heights, ceilingParts: [bay] }), null)
    expect(texts(of(marks, 'h2')).map(({ text }) => text)).toEqual(['2500 mm'])
    expect(of(marks, 'h3').some(({ kind }) => kind === 'lines')).toBe(true)
    expect(texts(of(marks, 'cp')).map(({ text }) => text)).toEqual(['Bay, 2500 mm high'])
    expect(of(marks, 'cp')[0]).toMatchObject({ role: 'ceiling-part', stroke: { dash: expect.any(Array) } })
  })

  it('draws what a scheme takes out dashed, and gives the next obstacle its own lining', () => {
    const obstacles = [
      { id: 'out', name: 'Old stand', liningMm: 50, corners: ring(500, 4000, 900, 4400) },
      { id: 'in', name: 'Column', liningMm: 50, corners: ring(1800, 2000, 2000, 2200) },
    ]
    const room = aRoom([], { obstacles })
    const marks = draw(room, resultOf(room, { takenOut: ['out'] }))
    expect(of(marks, 'out').find(({ kind }) => kind === 'polygon')).toMatchObject({ fill: null })
    expect(texts(of(marks, 'out')).map(({ text }) => text)).toEqual(['Old stand, taken out'])
    expect(of(marks, 'out').some(({ role }) => role === 'strip')).toBe(false)
    expect(of(marks, 'in').filter(({ role }) => role === 'strip').length).toBeGreaterThan(0)
  })

  it('shows other rooms faintly by outline and name', () => {
    const other: Room = {
      ...aPlanRoom({
        corners: [
          [4000, 0],
          [6000, 0],
          [6000, 3000],
          [4000, 3000],
        ],
        name: 'Store',
      }),
      id: 'r2',
    }
    const marks = of(draw(aRoom([]), null, { others: [other] }), 'r2')
    expect(marks.map(({ role }) => role)).toEqual(['other-room', 'other-room'])
    expect(texts(marks).map(({ text }) => text)).toEqual(['Store'])
  })
})

describe('the joint at a corner', () => {
  const joint = (result: SchemeResult, room: Room, id: string) => {
    const mark = draw(room, result).find(({ role, surfaceId }) => role === 'corner' && surfaceId === id)
    return mark?.kind === 'lines' ? mark.runs[0] : undefined
  }

  it('runs along the face of the lining that runs through, from the old wall to the new corner', () => {
    const room = aRoom([])
    // Corner 2 at 3657.6, 0: Wall 2 runs through with 73 mm, Wall 1 stops at its face.
    const x = 150 + (3657.6 - DEPTH) / 10
    expect(joint(resultOf(room), room, 'c2')).toEqual([x, 750, x, 750 - DEPTH / 10].map((at) => expect.closeTo(at, 6)))
    const chosen = resultOf(room, { runsThrough: { c2: 'w1' } })
    expect(joint(chosen, room, 'c2')).toEqual(
      [150 + 365.76, 750 - DEPTH / 10, x, 750 - DEPTH / 10].map((at) => expect.closeTo(at, 6)),
    )
  })

  it('is not there where a wall is left as it is', () => {
    const room = aRoom([])
    const result = resultOf(room, { choices: { w1: { assembly: 'W07', removeLining: false } } })
    expect(draw(room, result).some(({ role }) => role === 'corner')).toBe(false)
  })

  it('starts in line with the old wall where the corner juts into the room', () => {
    const corners = [
      [0, 0],
      [6000, 0],
      [6000, 3000],
      [3000, 3000],
      [3000, 5000],
      [0, 5000],
    ] as const
    const room = aPlanRoom({ corners })
    const choices = Object.fromEntries(room.walls.map(({ id }) => [id, { assembly: 'W07', removeLining: false }]))
    const result = resultOf(room, { choices, runsThrough: { c4: 'w3' } })
    // Wall 3 runs through below the corner at 3000, 3000; Wall 4 starts level with Wall 3's old face.
    expect(joint(result, room, 'c4')).toEqual(
      [150 + 300, 750 - 300, 150 + (3000 - DEPTH) / 10, 750 - 300].map((at) => expect.closeTo(at, 6)),
    )
  })
})

describe('a wall out of square', () => {
  it('says beside it where its door stands, as a square one does', () => {
    const corners = [
      [0, 0],
      [3657.6, 0],
      [3400, 6096],
      [0, 6096],
    ] as const
    const room = deepFreeze(aPlanRoom({ corners, openings: [aDoor({ wall: 'w2', fromMm: 2000, widthMm: 800 })] }))
    const said = texts(draw(room, null)).filter(({ role }) => role === 'dimension')
    const beside = said.filter(({ surfaceId }) => surfaceId === 'w2').map(({ text }) => text)
    expect(beside).toEqual(['2000 mm', '800 mm', '3301 mm', '6101 mm'])
  })
})

describe('a ceiling part drawn past the walls', () => {
  const part = {
    id: 'part-1',
    name: 'Bay',
    corners: [
      { xMm: 0, yMm: 5000 },
      { xMm: 2000, yMm: 5000 },
      { xMm: 2000, yMm: 9000 },
      { xMm: 0, yMm: 9000 },
    ],
    heights: [{ id: 'h2', xMm: 500, yMm: 5500, heightMm: 2000, floorMm: 0 }],
  }
  const highest = (marks: readonly Mark[]) =>
    Math.min(
      ...marks.flatMap((mark) =>
        mark.kind === 'polygon' && mark.surfaceId === 'part-1' ? mark.rings.flat().map(([, y]) => y) : [],
      ),
    )

  it('ends at them, and is whole while it is in the hand', () => {
    const room = aRoom([], { ceilingParts: [part] })
    expect(highest(draw(room, null))).toBeCloseTo(750 - 609.6, 6)
    expect(highest(draw(room, null, { selection: ['part-1'] }))).toBeCloseTo(750 - 900, 6)
  })
})

describe('a height measured beyond a partition', () => {
  it('is drawn in its own room only, unless it is in the hand', () => {
    const height = (id: string, xMm: number, yMm: number) => ({ id, xMm, yMm, heightMm: 2400, floorMm: 0 })
    const room = aRoom([], {
      heights: [height('here', 500, 500), height('wall', -60, 3000), height('there', 500, 7000)],
    })
    const drawn = (more: Partial<PlanInput>) =>
      draw(room, null, more).flatMap(({ kind, role, surfaceId }) =>
        kind === 'lines' && role === 'height' ? [surfaceId] : [],
      )
    expect(drawn({})).toEqual(['here', 'wall'])
    expect(drawn({ selection: ['there'] })).toEqual(['here', 'wall', 'there'])
  })
})
