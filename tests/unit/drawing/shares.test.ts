import { describe, expect, it } from 'vitest'
import type { PathShare, ReceiverAnswer } from '#analysis/paths/answer.ts'
import { markBox } from '#drawing/bounds.ts'
import { boundsOf, fitFrame } from '#drawing/frame.ts'
import type { Mark, TextMark } from '#drawing/model.ts'
import { boxesMeet } from '#drawing/place.ts'
import { type PlanShares, planShares, shareKey } from '#drawing/plan/shares.ts'
import { planMarks } from '#drawing/plan.ts'
import { SCREEN_STYLE } from '#drawing/style.ts'
import { aGarage, aPlanResult } from '../../support/drawing.ts'
import { answerTo, aPath } from '../../support/paths.ts'

const garage = aGarage()
const result = aPlanResult(garage, ['W14'])
const [door] = garage.openings

/** An answer of which only the shares matter. */
function sharing(
  shares: readonly (readonly [Partial<PathShare['path']>, number])[],
  more: Partial<ReceiverAnswer> = {},
) {
  const paths = shares.map(
    ([path, share]): PathShare => ({
      path: aPath({ element: path.id ?? 'w1', ...path }),
      share: share / 2,
      shareAtWorstBand: share,
      gainIfClosedDb: null,
      levelsDb: [],
    }),
  )
  return { ...answerTo(), name: 'Bedroom', worstBandHz: 125, marginDb: 3, paths, ...more } as const
}

function drawn(shares: PlanShares | undefined, [width, height]: readonly [number, number] = [1050, 540]): Mark[] {
  const view = { x: 0, y: 0, width, height }
  const frame = fitFrame(
    boundsOf(garage.corners.map(({ xMm, yMm }): [number, number] => [xMm, yMm])),
    width,
    height,
    92,
  )
  return planMarks({ room: garage, result, frame, style: SCREEN_STYLE, units: 'ft-in', view, shares })
}

function texts(marks: readonly Mark[], role: Mark['role']): TextMark[] {
  return marks.filter((mark): mark is TextMark => mark.kind === 'text' && mark.role === role)
}

function bars(marks: readonly Mark[]) {
  return marks.filter((mark) => mark.kind === 'polygon' && mark.role === 'share')
}

describe('what a plan shows of an answer', () => {
  it('counts gaps, holes and seals with what they are in, and flanking and ducts apart', () => {
    const answer = sharing([
      [{ id: 'w1', element: 'w1' }, 0.3],
      [{ id: 'leak:w1', kind: 'leak', element: 'w1' }, 0.1],
      [{ id: 'flanking:w1', kind: 'flanking', element: 'w1', label: 'What runs along Wall 1' }, 0.2],
      [{ id: 'ceiling', element: 'ceiling', label: 'Ceiling' }, 0.3],
      [{ id: 'leak:ceiling', kind: 'leak', element: 'ceiling', label: 'The gap round the ceiling' }, 0.06],
      [{ id: 'duct:d', kind: 'duct', element: 'd', label: 'Supply duct' }, 0.04],
    ])
    const shares = planShares(answer, garage)!
    expect([...shares.onPlan]).toEqual([['w1', expect.closeTo(0.4, 9)]])
    expect(shares.offPlan).toEqual([
      { label: 'Ceiling', share: expect.closeTo(0.36, 9) },
      { label: 'What runs along Wall 1', share: 0.2 },
    ])
    expect(shares.rest).toBeCloseTo(0.04, 9)
    expect(shareKey(shares, [])).toBe(
      'Bedroom: shares of what is heard there at 125 Hz, each wall and opening with its gaps and seals; beside these 36 % the ceiling, 20 % what runs along Wall 1, 4.0 % all else.',
    )
  })

  it('takes the share of everything where the limit is a weighted sum, and says so', () => {
    const answer = sharing([[{ id: 'w1' }, 1]], { limit: { kind: 'dBA', levelDb: 45 } })
    const shares = planShares(answer, garage)!
    expect(shares.onPlan.get('w1')).toBe(0.5)
    expect(shares.heading).toMatch(/ in dBA$/)
  })

  it('is nothing where a path is unknown', () => {
    expect(planShares(sharing([[{ id: 'w1' }, 1]], { marginDb: null }), garage)).toBeNull()
  })
})

describe('shares on the plan', () => {
  const shares: PlanShares = {
    heading: 'Bedroom: shares of what is heard there at 125 Hz',
    onPlan: new Map([
      [door!.id, 0.71],
      ['w3', 0.09],
      ['w2', 0.02],
    ]),
    offPlan: [{ label: 'Ceiling', share: 0.12 }],
    rest: 0.06,
  }

  it('are bars as thick as the share, outside the outline, with numbers outside them', () => {
    const marks = drawn(shares)
    expect(texts(marks, 'share').map(({ text }) => text)).toEqual(
      expect.arrayContaining([expect.stringMatching(/71 %$/), '9.0 %', '2.0 %']),
    )
    const thickness = (id: string): number => {
      const box = markBox(bars(marks).find(({ surfaceId }) => surfaceId === id)!)
      return Math.min(box.width, box.height)
    }
    expect(thickness(door!.id)).toBeGreaterThan(thickness('w3') * 1.5)
    expect(thickness('w3')).toBeGreaterThan(thickness('w2'))
    const strips = marks.filter(({ role }) => role === 'clear').map(markBox)
    for (const bar of bars(marks)) expect(strips.some((box) => boxesMeet(box, markBox(bar)))).toBe(false)
  })

  it('say beside the plan what they are of and what has no place on it', () => {
    const key = texts(drawn(shares), 'share')
      .filter(({ surfaceId }) => surfaceId === undefined)
      .map(({ text }) => text)
      .join(' ')
    expect(key).toMatch(
      /at 125 Hz, each wall and opening with its gaps and seals; beside these .*12 % the ceiling, 6.0 % all else\.$/,
    )
  })

  it('push no depth away and let no words meet', () => {
    const depths = (marks: readonly Mark[]) => texts(marks, 'label').filter(({ text }) => /STC|\d"$/.test(text)).length
    const marks = drawn(shares)
    expect(depths(marks)).toBeGreaterThanOrEqual(depths(drawn(undefined)))
    const boxes = marks.flatMap((mark) => (mark.kind === 'text' ? [mark] : []))
    for (const [index, one] of boxes.entries()) {
      for (const other of boxes.slice(index + 1)) {
        if (one.role === 'share' || other.role === 'share') {
          expect(boxesMeet(one.box, other.box), `${one.text} and ${other.text}`).toBe(false)
        }
      }
    }
  })

  it('name in the key what found no room on the plan', () => {
    const marks = drawn(shares, [760, 214])
    const placed = new Set(texts(marks, 'share').map(({ surfaceId }) => surfaceId))
    const words = texts(marks, 'share')
      .map(({ text }) => text)
      .join(' ')
    for (const [id, share] of shares.onPlan) {
      if (!placed.has(id)) expect(words).toContain(`${Math.round(share * 100)}`)
    }
    expect(words).toMatch(/71 %/)
  })

  it('leave a plan without them as it was', () => {
    expect(drawn(undefined).some(({ role }) => role === 'share')).toBe(false)
  })
})
