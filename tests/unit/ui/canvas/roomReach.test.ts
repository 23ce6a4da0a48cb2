import { describe, expect, it } from 'vitest'
import { roomReach } from '#ui/canvas/roomReach.ts'
import { aDoor, aPlanRoom } from '../../../support/drawing.ts'

const CORNERS = [
  [0, 0],
  [4000, 0],
  [4000, 3000],
  [0, 3000],
] as const

describe('what the paper has to hold of a room', () => {
  it('is its corners alone while doors swing into it', () => {
    expect(roomReach(aPlanRoom({ corners: CORNERS, openings: [aDoor({ wall: 'w1' })] }))).toEqual(CORNERS)
  })

  it('reaches past a wall whose door swings out, whichever way round the outline was drawn', () => {
    const out = aDoor({ wall: 'w1', fromMm: 500, widthMm: 800, swing: 'out' })
    const room = aPlanRoom({ corners: CORNERS, openings: [out] })
    expect(Math.min(...roomReach(room).map(([, y]) => y))).toBe(-1000)
    const turned = aPlanRoom({ corners: [...CORNERS].reverse(), openings: [out] })
    expect(Math.max(...roomReach(turned).map(([, y]) => y))).toBe(4000)
  })

  it('counts half the width for two leaves', () => {
    const out = aDoor({ wall: 'w1', fromMm: 500, widthMm: 1600, swing: 'out', leaves: 'two' })
    expect(Math.min(...roomReach(aPlanRoom({ corners: CORNERS, openings: [out] })).map(([, y]) => y))).toBe(-1000)
  })
})
