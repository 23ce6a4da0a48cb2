import { describe, expect, it } from 'vitest'
import { rate, STC } from '#acoustics/rating.ts'
import { JUNCTIONS } from '#analysis/paths/flanking/junctions.ts'
import { limitCurve } from '#analysis/paths/flanking/limitCurve.ts'
import { type Asked, aCurve, answerTo, HALL, SEALED } from '../../../support/paths.ts'
import { aScheme } from '../../../support/rooms.ts'

const GOOD = { 'wall-1': { lossDb: aCurve(80), areaM2: 12 } }

function flankingIn(asked: Asked) {
  return answerTo(asked).paths.filter(({ path }) => path.kind === 'flanking')
}

describe('a limit laid along the contour', () => {
  it.each([50, 57])('has its own number again: STC %d', (stc) => {
    expect(rate(limitCurve(stc), STC).value).toBe(stc)
  })

  it('falls by 3 dB a third below 125 Hz and stays level above 4000 Hz', () => {
    const curve = limitCurve(57)
    expect(curve.slice(0, 5).map((loss, band) => curve[band + 1]! - loss)).toEqual([3, 3, 3, 3, 3])
    expect(curve[20]).toBe(curve[19])
  })
})

describe('the ways round', () => {
  it('are not counted where nothing is said of the junction, and that is said', () => {
    const answer = answerTo({ receiver: { junction: 'none' } })
    expect(answer.paths.map(({ path }) => path.kind)).toEqual(['surface'])
    expect(answer.notes.map(({ code }) => code)).toContain('flanking-none')
  })

  it('are not counted in the open nor for noise that comes in', () => {
    for (const place of [{ kind: 'this-room' }, { kind: 'outdoors', distanceMm: 9000, atFacade: false }] as const) {
      expect(flankingIn({ receiver: { junction: 'common-slab', place } })).toEqual([])
    }
  })

  it.each([
    ['separate', 2],
    ['careful', 5],
  ] as const)(
    'of a %s junction are an allowance of %d dB on what goes through the surfaces',
    (junction, allowanceDb) => {
      const given = { 'wall-1': { lossDb: aCurve(50), areaM2: 12 } }
      const laboratory = answerTo({ given, receiver: { junction: 'none' } })
      const site = answerTo({ given, receiver: { junction } })
      expect(laboratory.noiseReductionDb![9]! - site.noiseReductionDb![9]!).toBeCloseTo(allowanceDb, 9)
      expect(site.siteLoss!.laboratoryStc - site.siteLoss!.expectedStc).toBe(allowanceDb)
      expect(site.notes.map(({ code }) => code)).toContain('flanking-allowance')
      expect(flankingIn({ given, receiver: { junction } }).map(({ path }) => path.basis)).toEqual(['assumed'])
    },
  )

  it.each([
    ['common-slab', 57],
    ['continuous-plates', 50],
    ['continuous-joists', 50],
  ] as const)('of %s hold a wall that is far better to STC %d in all', (junction, stc) => {
    const site = answerTo({ given: GOOD, receiver: { junction } })
    expect(site.siteLoss!.laboratoryStc).toBe(80)
    expect(site.siteLoss!.expectedStc).toBe(stc)
  })

  it('of a wall run along its two neighbours, the ceiling and the floor, a quarter each', () => {
    const found = flankingIn({ given: GOOD, receiver: { junction: 'common-slab' } })
    expect(found.map(({ path }) => path.id).toSorted()).toEqual([
      'flanking:ceiling-1',
      'flanking:floor-1',
      'flanking:wall-2',
      'flanking:wall-4',
    ])
    for (const { path } of found) expect(path.lossDb[10]! - limitCurve(57)[10]!).toBeCloseTo(10 * Math.log10(4), 9)
  })

  it('of a ceiling run along all walls', () => {
    const through = [{ surface: 'ceiling-1' }]
    const found = flankingIn({ receiver: { through, junction: 'continuous-joists' } })
    expect(found.map(({ path }) => path.id).toSorted()).toEqual(HALL.walls.map(({ id }) => `flanking:${id}`))
  })

  it('leave out what sound goes through anyway, and still come to the limit in all', () => {
    const through = [{ surface: 'wall-1' }, { surface: 'wall-2' }]
    const given = { 'wall-1': { lossDb: aCurve(80) }, 'wall-2': { lossDb: aCurve(80) } }
    const site = answerTo({ given, receiver: { through, junction: 'common-slab' } })
    expect(site.paths.filter(({ path }) => path.kind === 'flanking')).toHaveLength(4)
    expect(site.siteLoss!.expectedStc).toBe(57)
  })
})

describe('linings', () => {
  const losses = (asked: Asked) =>
    new Map(flankingIn({ given: GOOD, ...asked }).map(({ path }) => [path.element, path.lossDb]))
  const bare = losses({ receiver: { junction: 'common-slab' } })

  it('of a wall beside it take what they gain off its own way round, 15 dB at the most, and off no other', () => {
    const lined = losses({
      scheme: aScheme({ 'wall-2': 'W14' }, SEALED),
      receiver: { junction: 'common-slab' },
    })
    const gain = lined.get('wall-2')!.map((loss, band) => loss - bare.get('wall-2')![band]!)
    expect(Math.max(...gain)).toBeCloseTo(15, 9)
    expect(Math.min(...gain)).toBeGreaterThanOrEqual(0)
    for (const other of ['wall-4', 'ceiling-1', 'floor-1']) expect(lined.get(other)).toEqual(bare.get(other))
  })

  it('of the floor count on a slab on soil too, which no airborne figure is told of', () => {
    const lined = losses({ scheme: aScheme({ 'floor-1': 'F03' }, SEALED), receiver: { junction: 'common-slab' } })
    expect(lined.get('floor-1')![10]! - bare.get('floor-1')![10]!).toBeGreaterThan(3)
  })

  it('on the shared wall alone leave the side walls and the floor talking', () => {
    const shared = losses({ receiver: { junction: 'common-slab', linedBeyond: 'shared' } })
    expect(shared).toEqual(bare)
    expect(
      answerTo({ given: GOOD, receiver: { junction: 'common-slab', linedBeyond: 'shared' } }).notes.map(
        ({ code }) => code,
      ),
    ).toContain('lined-beyond-shared')
  })

  it('on all of the neighbour’s surfaces take a stated 6 dB off every way round', () => {
    const all = losses({ receiver: { junction: 'common-slab', linedBeyond: 'all' } })
    for (const [element, lossDb] of all) expect(lossDb[10]! - bare.get(element)![10]!).toBeCloseTo(6, 9)
  })
})

it('says of every junction class where its number comes from', () => {
  for (const { name, means, source, status } of JUNCTIONS) {
    expect([name, means, source, status].every((text) => text.length > 0)).toBe(true)
  }
})
