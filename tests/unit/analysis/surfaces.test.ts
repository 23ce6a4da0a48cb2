import { describe, expect, it } from 'vitest'
import { analyseScheme } from '#analysis/analyse.ts'
import { depthsOf } from '#analysis/depths.ts'
import type { Room, SurfaceFacts } from '#analysis/room.ts'
import type { Scheme } from '#analysis/scheme.ts'
import { CATALOGUE, openSample } from '../../support/samples.ts'

const garage = openSample('garage')
const room = garage.rooms[0] as Room

function analyse(changes: Partial<Room>, choices: Scheme['choices']) {
  const scheme: Scheme = { id: 'scheme-1', name: 'A', choices }
  const analysed = analyseScheme({ room: { ...room, ...changes }, scheme, catalogue: CATALOGUE, quality: 'drag' })
  if (!analysed.ok) throw new Error(analysed.error.message)
  return analysed.value
}

function surface(result: ReturnType<typeof analyse>, id: string) {
  const found = result.surfaces.find((candidate) => candidate.id === id)
  if (!found) throw new Error(`no surface ${id}`)
  return found
}

const built = (assembly: string, removeLining = false) => ({ assembly, removeLining })
const lined = (patch: Partial<SurfaceFacts>): SurfaceFacts => ({
  ...room.ceiling,
  lining: { thicknessMm: 12.7, neededForFire: 'unknown' },
  outOfTrueMm: 0,
  ...patch,
})
const W07 = CATALOGUE.assemblies.get('W07') ?? null

describe('depths', () => {
  it.each([
    ['finished-face', false, null, [0, 0, 12.7]],
    ['finished-face', true, null, [-12.7, -12.7, 0]],
    ['finished-face', false, W07, [73.025, 73.025, 85.725]],
    ['finished-face', true, W07, [60.325, 60.325, 73.025]],
    ['structure', false, null, [12.7, 0, 12.7]],
    ['structure', true, null, [0, -12.7, 0]],
    ['structure', false, W07, [85.725, 73.025, 85.725]],
    ['structure', true, W07, [73.025, 60.325, 73.025]],
  ] as const)('measured to %s, lining removed %s', (measuredTo, removeLining, assembly, expected) => {
    const depths = depthsOf(lined({ measuredTo }), built('any', removeLining), assembly)
    expect([depths.net, depths.fromFace, depths.fromStructure]).toEqual(expected.map((mm) => expect.closeTo(mm, 9)))
  })

  it('takes the out-of-true allowance before an assembly, and not where nothing is built', () => {
    const facts = lined({ measuredTo: 'structure', lining: null, outOfTrueMm: 20 })
    expect(depthsOf(facts, built('W07'), W07).net).toBeCloseTo(93.025, 9)
    expect(depthsOf(facts, built('as-is'), null).net).toBe(0)
  })
})

describe('ratings', () => {
  it('say nothing, with a note, of soil and of floors that float on nobody knows what', () => {
    const soil = surface(analyse({}, {}), 'floor-1')
    expect([soil.rating, soil.notes.map((note) => note.code)]).toEqual([null, ['soil']])
    const floor = { ...room.floor, existing: 'joist-2x10-floor', farSide: 'neighbour' as const }
    const floating = surface(analyse({ floor }, { 'floor-1': built('F02') }), 'floor-1')
    expect(floating.rating?.plusMinus95).toBeGreaterThan(10)
    expect(floating.notes.map((note) => note.code)).toContain('no-published-measurement')
    const unknown = { ...CATALOGUE, assemblies: new Map(CATALOGUE.assemblies) }
    const mat = unknown.assemblies.get('F02')
    if (!mat) throw new Error('no mat')
    const layers = mat.layers.map((layer) =>
      layer.kind === 'filler' ? { ...layer, dynamicStiffnessMNm3: undefined } : layer,
    )
    unknown.assemblies.set('F02', { ...mat, layers })
    const scheme: Scheme = { id: 's', name: 'A', choices: { 'floor-1': built('F02') } }
    const result = analyseScheme({ room: { ...room, floor }, scheme, catalogue: unknown, quality: 'drag' })
    if (!result.ok) throw new Error(result.error.message)
    const unsaid = surface(result.value, 'floor-1')
    expect([unsaid.rating, unsaid.notes.map((note) => note.code)]).toEqual([null, ['floating-floor', 'floating-floor']])
    expect(surface(analyse({ floor }, { 'floor-1': built('F01') }), 'floor-1').rating).not.toBeNull()
  })

  it('hold a vented roof to what its openings let by, and a ceiling under it to that and its own loss', () => {
    const bare = surface(analyse({}, {}), 'ceiling-1').rating
    expect(bare?.stc).toBeGreaterThanOrEqual(22)
    expect(bare?.stc).toBeLessThanOrEqual(25)
    const under = surface(analyse({}, { 'ceiling-1': built('C08') }), 'ceiling-1')
    const closed = { ...CATALOGUE, existing: new Map(CATALOGUE.existing) }
    const roof = closed.existing.get('truss-osb-shingles')
    if (!roof) throw new Error('no roof')
    closed.existing.set(roof.id, { ...roof, ventLimitDb: undefined })
    const scheme: Scheme = { id: 's', name: 'A', choices: { 'ceiling-1': built('C08') } }
    const without = analyseScheme({ room, scheme, catalogue: closed, quality: 'drag' })
    if (!without.ok) throw new Error(without.error.message)
    const upper = surface(without.value, 'ceiling-1').rating?.prediction.lossDb ?? []
    under.rating?.prediction.lossDb.forEach((loss, band) => {
      expect(loss).toBeLessThanOrEqual(upper[band] ?? Number.NaN)
    })
  })

  it('tell the vents in the calculation alone too, and claim no published value for a vented roof', () => {
    const roof = surface(analyse({}, { 'ceiling-1': built('C08') }), 'ceiling-1').rating
    if (!roof) throw new Error('no rating')
    // 23.5 dB by the vents, then the new ceiling alone, which stops less than the closed roof and ceiling together.
    const { prediction, physicsStc, stc } = roof
    expect(roof.published).toEqual([])
    expect(Math.abs(stc - physicsStc - prediction.anchor.shiftDb)).toBeLessThan(6)
    const bare = surface(analyse({}, {}), 'ceiling-1').rating
    for (const loss of bare?.prediction.physicsLossDb ?? [99]) expect(loss).toBeLessThanOrEqual(23.5)
  })

  it('count no band above 80 dB, and say that flanking decides high up', () => {
    const walls = room.walls.map((wall) => ({ ...wall, existing: 'concrete-203' }))
    const heavy = surface(analyse({ walls }, { 'wall-1': built('W22') }), 'wall-1')
    expect(heavy.rating?.stc).toBeLessThanOrEqual(80)
    expect(heavy.notes.map((note) => note.code)).toContain('flanking-decides')
  })

  it('carry a likely range of at least SD 2.0 both ways', () => {
    for (const { rating } of analyse({}, { 'wall-1': built('W14') }).surfaces) {
      if (!rating) continue
      expect(rating.plusMinus95).toBeGreaterThanOrEqual(1.96 * 2)
      expect(rating.likely[0]).toBeLessThanOrEqual(rating.stc - rating.plusMinus95)
      expect(rating.likely[1]).toBeGreaterThanOrEqual(rating.stc + rating.plusMinus95)
    }
  })
})

describe('cautions', () => {
  const codes = (result: ReturnType<typeof analyse>) => result.cautions.map((caution) => caution.code)

  it('name fire, bracing, services, asbestos and lead where a lining comes off', () => {
    const walls = room.walls.map((wall) => ({ ...wall, lining: { thicknessMm: 12.7, neededForFire: 'yes' as const } }))
    const result = analyse({ walls }, { 'wall-2': built('as-is', true) })
    expect(codes(result)).toEqual(
      expect.arrayContaining(['lining-fire', 'lining-bracing', 'lining-services', 'lining-asbestos-lead']),
    )
    expect(result.cautions.find((caution) => caution.code === 'lining-fire')?.text).toMatch(
      /^Wall 2: .*must not come off/,
    )
    expect(codes(analyse({ walls }, {}))).not.toContain('lining-fire')
  })

  it('ask for an engineer where trusses carry a ceiling, and for walls where a ceiling needs them', () => {
    expect(codes(analyse({}, { 'ceiling-1': built('C05') }))).toContain('ceiling-load')
    expect(codes(analyse({}, { 'ceiling-1': built('C08') }))).toContain('ceiling-without-walls')
    const onWalls = codes(analyse({}, { 'ceiling-1': built('C08'), 'wall-2': built('W14') }))
    expect(onWalls).toContain('ceiling-on-walls')
    expect(onWalls).not.toContain('ceiling-without-walls')
    expect(codes(analyse({}, { 'ceiling-1': built('C09') }))).toContain('nested-under-trusses')
  })

  it('say first that no room is left', () => {
    const corners = room.corners.map((corner) => ({ ...corner, xMm: corner.xMm / 20, yMm: corner.yMm / 20 }))
    const choices = Object.fromEntries(room.walls.map((wall) => [wall.id, built('W16')]))
    const result = analyse({ corners, openings: [] }, choices)
    expect(codes(result)[0]).toBe('nothing-left')
    expect(result.ledger.floorAreaM2.clear).toBe(0)
  })
})
