import { describe, expect, it } from 'vitest'
import { anchorOf } from '#acoustics/anchor/anchor.ts'
import { correctionOf, prepare } from '#acoustics/anchor/correction.ts'
import { covariance } from '#acoustics/anchor/kernel.ts'
import { anchorPoint } from '#acoustics/anchor/point.ts'
import { predictLoss } from '#acoustics/layered/predict.ts'
import { type LayeredSystem, type Link, reverseSystem } from '#acoustics/layered/system.ts'
import { cavityOf, leafOf } from '../../../support/acoustics.ts'

const CHANNEL: Link = {
  kind: 'resilient-channel',
  frame: 'wood-stud',
  studSpacingMm: 400,
  channelSpacingMm: 600,
}
const CLIPS: Link = { kind: 'sound-clip', frame: 'wood-stud', rowSpacingMm: 600, clipSpacingMm: 1200 }

function wall(link: Link, far = 1, room = 2): LayeredSystem {
  return {
    leaves: [leafOf('gypsum-type-x', 15.9, far), leafOf('gypsum-type-x', 15.9, room)],
    cavities: [cavityOf(102, 89, link)],
  }
}

describe('anchorOf', () => {
  it('leans on published rows where there are any, and says which', () => {
    const anchor = anchorOf(wall(CHANNEL))
    expect(anchor.isNear).toBe(true)
    expect(anchor.neighbours[0]?.id).toMatch(/^NBC-W[4-6]/)
    expect(anchor.neighbours[0]?.likeness).toBeGreaterThan(0.8)
    expect(anchor.sdDb).toBeGreaterThanOrEqual(2)
    expect(anchor.sdDb).toBeLessThan(2.6)
  })

  it('leaves clips alone, with a wide spread', () => {
    expect(anchorOf(wall(CLIPS))).toEqual({ shiftDb: 0, sdDb: 5.5, isNear: false, neighbours: [] })
  })

  it('fades where no published row is alike: leaves of another make', () => {
    const plywood: LayeredSystem = {
      leaves: [leafOf('plywood', 25, 3), leafOf('plywood', 25, 3)],
      cavities: [cavityOf(60, 0, { kind: 'wood-stud', spacingMm: 1200 })],
    }
    const anchor = anchorOf(plywood)
    expect(anchor.isNear).toBe(false)
    expect(anchor.shiftDb).toBeCloseTo(0, 12)
    expect(anchor.sdDb).toBeGreaterThanOrEqual(5)
  })

  it('is the same from the other room', () => {
    const system = wall(CHANNEL)
    const [one, other] = [anchorOf(system), anchorOf(reverseSystem(system))]
    expect(other.shiftDb).toBeCloseTo(one.shiftDb, 12)
    expect(other.sdDb).toBeCloseTo(one.sdDb, 12)
  })

  it('shifts every band alike, and adds the doubt about a compound', () => {
    const system = wall(CHANNEL)
    const { lossDb, physicsLossDb, anchor, spreadStcDb } = predictLoss(system, { quality: 'drag' })
    lossDb.forEach((loss, band) => {
      expect(loss - physicsLossDb[band]!).toBeCloseTo(anchor.shiftDb, 9)
    })
    expect(spreadStcDb).toBe(anchor.sdDb)
    const [far, room] = system.leaves
    const damped = { ...system, leaves: [far!, { ...room!, dampedJoints: [0] }] }
    expect(anchorOf(damped).sdDb).toBeGreaterThan(3)
  })
})

describe('correctionOf', () => {
  const place = { features: [2.5, 2.6, 0.9, 2, 2.5, 4.6, 1], kinds: ['wood-stud', 'channel'] }
  const noise = 1
  const own = covariance(place, place, 'walls')

  it('of one row at its own place is the textbook shrinkage', () => {
    const inverse = [[1 / (own + noise ** 2)]]
    const residual = 3
    const rows = [{ ...place, id: 'one', stc: 50, weight: inverse[0]![0]! * residual }]
    const { shiftDb, varianceDb2 } = correctionOf(prepare({ factor: 1, rows, inverse }), place, 'walls')
    expect(shiftDb).toBeCloseTo((residual * own) / (own + noise ** 2), 12)
    expect(varianceDb2).toBeCloseTo(own - own ** 2 / (own + noise ** 2), 12)
  })
})

describe('anchorPoint', () => {
  it('keeps apart what no published row is like', () => {
    expect(anchorPoint(wall(CLIPS))).toBeNull()
    expect(anchorPoint({ leaves: [leafOf('glass', 6)], cavities: [] })).toBeNull()
    expect(anchorPoint({ leaves: [leafOf('concrete', 150)], cavities: [] })?.group).toBe('masonry')
    expect(anchorPoint(wall(CHANNEL))?.group).toBe('walls')
  })
})
