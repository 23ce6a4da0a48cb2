import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { markBox } from '#drawing/bounds.ts'
import { boundsOf, fitFrame } from '#drawing/frame.ts'
import type { Box, Mark, TextMark } from '#drawing/model.ts'
import { boxesMeet, growBox } from '#drawing/place.ts'
import type { PlanInput } from '#drawing/plan/planInput.ts'
import { planMarks } from '#drawing/plan.ts'
import { SCREEN_PLAN_MARGIN, SCREEN_STYLE } from '#drawing/style.ts'
import { missingCharacters } from '#drawing/text.ts'
import { aBasement, aGarage, aPlanResult, aPlanRoom } from '../../support/drawing.ts'

const VIEW: Box = { x: 0, y: 0, width: 1068, height: 640 }

function draw(room: PlanInput['room'], result: PlanInput['result'], more: Partial<PlanInput> = {}): Mark[] {
  const bounds = boundsOf(room.corners.map(({ xMm, yMm }) => [xMm, yMm] as const))
  const frame = fitFrame(bounds, VIEW.width, VIEW.height, SCREEN_PLAN_MARGIN)
  return planMarks({ room, result, frame, style: SCREEN_STYLE, units: 'ft-in', view: VIEW, ...more })
}

function texts(marks: readonly Mark[]): TextMark[] {
  return marks.filter((mark) => mark.kind === 'text')
}

function overlaps(marks: readonly Mark[]): string[] {
  const labels = texts(marks).filter(({ role }) => role !== 'scale-bar')
  return labels.flatMap((first, index) =>
    labels
      .slice(index + 1)
      .filter((second) => boxesMeet(growBox(first.box, -0.01), growBox(second.box, -0.01)))
      .map((second) => `${first.text} | ${second.text}`),
  )
}

function manner(text: string): 'full' | 'rating' | 'range' | 'depth' {
  if (text.startsWith('likely')) return 'range'
  if (!text.includes('STC')) return 'depth'
  return text.includes('likely') ? 'full' : 'rating'
}

const garage = aGarage()
const basement = aBasement()

describe('a plan without words', () => {
  it('keeps every shape and leaves out all that is written, but for the scale bar', () => {
    const room = aBasement()
    const result = aPlanResult(room, ['W14'])
    const shapes = (marks: readonly Mark[], role: string) => marks.filter((mark) => mark.role === role).length
    const whole = draw(room, result)
    const bare = draw(room, result, { show: { words: false } })
    expect(texts(bare).every(({ role }) => role === 'scale-bar')).toBe(true)
    for (const role of ['outline', 'clear', 'strip', 'drop', 'hatch']) {
      const drawn = (marks: readonly Mark[]) =>
        shapes(
          marks.filter(({ kind }) => kind !== 'text'),
          role,
        )
      expect(drawn(bare), role).toBe(drawn(whole))
    }
  })
})

describe('the plan of a garage', () => {
  const result = aPlanResult(garage, ['W14'])
  const marks = draw(garage, result)
  const words = texts(marks).map(({ text }) => text)

  it('says its outside and its clear dimensions', () => {
    expect(words).toContain(`12'-0"`)
    expect(words).toContain(`20'-0"`)
    expect(words).toContain(`11'-0 1/2" clear`)
    expect(words).toContain(`19'-0 1/2" clear`)
    expect(texts(draw(garage, result, { units: 'mm' })).map(({ text }) => text)).toEqual(
      expect.arrayContaining(['3658 mm', '6096 mm', '3366 mm clear', '5804 mm clear']),
    )
  })

  it('numbers every wall and says its depth and rating', () => {
    for (const number of ['1', '2', '3', '4']) expect(words).toContain(number)
    expect(words.some((text) => text.includes('5 3/4"'))).toBe(true)
  })

  it('says a rating only where its likely range finds room beside it', () => {
    const corners = garage.corners.map(({ xMm, yMm }) => [xMm, yMm] as const)
    const saidAt = (width: number, height: number) => {
      const frame = fitFrame(boundsOf(corners), width, height, SCREEN_PLAN_MARGIN)
      const drawn = draw(garage, result, { frame, view: { x: 0, y: 0, width, height } })
      return texts(drawn).map(({ text }) => text)
    }
    expect(saidAt(1600, 1200)).toContain('STC 52, likely 48–56')
    expect(saidAt(480, 640)).toEqual(expect.arrayContaining(['5 3/4", STC 52', 'likely 48–56']))
    expect(saidAt(200, 300).some((text) => text.includes('STC'))).toBe(false)
  })

  it('tells every wall in the same manner, and never beside a dimension as if it were its depth', () => {
    for (const [room, walls] of [
      [garage, ['W14']],
      [basement, ['W20', 'W20', 'W07', 'W07', 'W20', 'W21']],
    ] as const) {
      const bounds = boundsOf(room.corners.map(({ xMm, yMm }) => [xMm, yMm] as const))
      for (const width of [360, 420, 560, 700, 1068, 1600]) {
        const view = { x: 0, y: 0, width, height: 640 }
        const frame = fitFrame(bounds, width, 640, SCREEN_PLAN_MARGIN)
        const labels = texts(draw(room, aPlanResult(room, walls), { frame, view }))
        const said = labels.filter(({ role, surfaceId }) => role === 'label' && /^w\d$/.test(surfaceId ?? ''))
        const count = (name: string) => said.filter(({ text }) => manner(text) === name).length
        // Never a rating without its likely range, and never two manners on one plan.
        expect(count('rating'), String(width)).toBe(count('range'))
        expect(Math.min(count('full'), count('rating')), String(width)).toBe(0)
        const withRatings = count('full') + count('rating')
        expect(new Set(said.map(({ surfaceId }) => surfaceId)).size).toBe(withRatings || said.length)
        for (const { box, size } of labels.filter(({ role }) => role === 'clear-dimension')) {
          for (const label of said) expect(boxesMeet(growBox(box, size - 0.01), label.box), label.text).toBe(false)
        }
      }
    }
  })

  it('never writes a clear size beyond the walls it lies between', () => {
    const bounds = boundsOf(garage.corners.map(({ xMm, yMm }) => [xMm, yMm] as const))
    let told = 0
    for (const height of [200, 260, 300, 400, 640]) {
      const frame = fitFrame(bounds, 700, height, SCREEN_PLAN_MARGIN)
      const [left, right] = [bounds.minX, bounds.maxX].map((x) => frame.x + frame.scale * x)
      const drawn = draw(garage, result, { frame, view: { x: 0, y: 0, width: 700, height } })
      for (const { box } of texts(drawn).filter(({ role }) => role === 'clear-dimension')) {
        told += 1
        expect(box.x, String(height)).toBeGreaterThanOrEqual(left!)
        expect(box.x + box.width, String(height)).toBeLessThanOrEqual(right!)
      }
    }
    expect(told).toBeGreaterThan(0)
  })

  it('has no label over another', () => {
    expect(overlaps(marks)).toEqual([])
  })

  it('writes only what the font can show', () => {
    expect(words.flatMap(missingCharacters)).toEqual([])
  })

  it('draws a strip and its hatch for each wall, in its place in the room', () => {
    for (const { id } of garage.walls) {
      expect(marks.filter((mark) => mark.role === 'strip' && mark.surfaceId === id)).toHaveLength(1)
      expect(marks.filter((mark) => mark.role === 'hatch' && mark.surfaceId === id)).toHaveLength(1)
    }
  })

  it('shows what is selected in the accent', () => {
    const selected = draw(garage, result, { selection: ['w1'] })
    const tag = selected.find((mark) => mark.kind === 'circle' && mark.surfaceId === 'w1')
    expect(tag).toMatchObject({ fill: 'accent' })
    const strip = selected.find((mark) => mark.role === 'strip' && mark.surfaceId === 'w1')
    expect(strip).toMatchObject({ fill: 'accent-soft' })
  })

  it('draws a door as a leaf with a quarter circle as wide as the opening', () => {
    const arc = marks.find((mark) => mark.kind === 'arc')
    expect(arc).toMatchObject({ role: 'opening', surfaceId: 'o2' })
    if (arc?.kind === 'arc') expect(arc.endDeg - arc.startDeg).toBeCloseTo(90, 9)
  })

  it('is drawn without a scheme too', () => {
    const bare = draw(garage, null)
    expect(texts(bare).map(({ text }) => text)).toContain(`20'-0"`)
    expect(bare.some(({ role }) => role === 'strip')).toBe(false)
  })

  it('is the same marks each time', () => {
    expect(draw(garage, result)).toEqual(marks)
  })
})

describe('the plan of an L with a column and drops', () => {
  const result = aPlanResult(basement, ['W20', 'W20', 'W07', 'W07', 'W20', 'W21'])
  const marks = draw(basement, result)
  const words = texts(marks).map(({ text }) => text)

  it('chains the walls of each side and numbers them all', () => {
    for (const text of [`24'-0"`, `14'-0"`, `10'-0"`, `6'-0"`, `20'-0"`, '1', '2', '3', '4', '5', '6']) {
      expect(words).toContain(text)
    }
  })

  it('names what stands and hangs there, with the height under a drop', () => {
    expect(words).toContain('Steel column, boxed')
    expect(words.some((text) => text.startsWith('Steel beam, '))).toBe(true)
    const room = words.filter((text) => / ft² clear/.test(text) || / high\b/.test(text))
    expect(room.length).toBeGreaterThan(0)
    for (const text of room) expect(text).not.toMatch(/high$/)
  })

  it('has no label over another, at any size of window', () => {
    for (const width of [420, 700, 1068, 1600]) {
      const view = { x: 0, y: 0, width, height: 640 }
      const bounds = boundsOf(basement.corners.map(({ xMm, yMm }) => [xMm, yMm] as const))
      const frame = fitFrame(bounds, width, 640, SCREEN_PLAN_MARGIN)
      expect(overlaps(draw(basement, result, { frame, view })), String(width)).toEqual([])
    }
  })
})

describe('any room', () => {
  const star = (count: number, radii: readonly number[]) =>
    aPlanRoom({
      corners: Array.from({ length: count }, (_, index) => {
        const angle = (2 * Math.PI * index) / count
        const radius = radii[index % radii.length]!
        return [Math.round(Math.cos(angle) * radius), Math.round(Math.sin(angle) * radius)] as const
      }),
    })

  it('of 3 to 40 walls is drawn with finite marks, few enough to drag', () => {
    const radius = fc.integer({ min: 700, max: 6000 })
    fc.assert(
      fc.property(
        fc.integer({ min: 3, max: 40 }),
        fc.array(radius, { minLength: 1, maxLength: 7 }),
        fc.constantFrom('W14', 'W07', 'W02', 'as-is', 'W16'),
        (count, radii, assembly) => {
          const room = star(count, radii)
          let result: PlanInput['result']
          try {
            result = aPlanResult(room, [assembly])
          } catch {
            return
          }
          const marks = draw(room, result)
          expect(marks.length).toBeLessThan(3000)
          for (const mark of marks) {
            for (const value of Object.values(markBox(mark))) expect(Number.isFinite(value)).toBe(true)
          }
        },
      ),
      { numRuns: 150, seed: 20 },
    )
  })

  it('with nothing left, or split in two, is still drawn', () => {
    const slit = aPlanRoom({
      corners: [
        [0, 0],
        [3000, 0],
        [3000, 200],
        [0, 200],
      ],
    })
    expect(draw(slit, aPlanResult(slit, ['W16'])).length).toBeGreaterThan(4)
    const waist = aPlanRoom({
      corners: [
        [0, 0],
        [2000, 0],
        [2000, 1000],
        [4000, 1000],
        [4000, 0],
        [6000, 0],
        [6000, 2000],
        [4000, 2000],
        [4000, 1200],
        [2000, 1200],
        [2000, 2000],
        [0, 2000],
      ],
    })
    const split = aPlanResult(waist, ['W14'])
    expect(split.clear.length).toBe(2)
    expect(overlaps(draw(waist, split))).toEqual([])
  })

  it('with no corners yet is an empty drawing', () => {
    const none = aPlanRoom({ corners: [] })
    expect(
      planMarks({ room: none, result: null, frame: { scale: 1, x: 0, y: 0 }, style: SCREEN_STYLE, units: 'mm' }),
    ).toEqual([])
  })
})
