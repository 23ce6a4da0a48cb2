import { describe, expect, it } from 'vitest'
import { octaveList } from '#acoustics/bands.ts'
import { ductLoss } from '#acoustics/duct.ts'
import { holeLoss, slitLoss } from '#acoustics/leak.ts'
import type { Path } from '#analysis/paths/answer.ts'
import { pathsTo } from '#analysis/paths/pathsTo.ts'
import type { Duct, Opening } from '#analysis/room.ts'
import type { Scheme } from '#analysis/scheme.ts'
import { layersDepth } from '#assemblies/layer.ts'
import { type Asked, aCurve, anInput, answerTo, HALL, SEALED } from '../../../support/paths.ts'
import { aScheme } from '../../../support/rooms.ts'
import { openSample } from '../../../support/samples.ts'

function waysIn(asked: Asked): readonly Path[] {
  const input = anInput(asked)
  return pathsTo(input, input.receivers[0]!).paths
}

function wayIn(asked: Asked, id: string): Path {
  const found = waysIn(asked).find((path) => path.id === id)
  if (!found) throw new Error(`no path ${id}`)
  return found
}

const scheme = (change: Partial<Scheme>) => aScheme({}, { ...SEALED, ...change })

describe('the gap round a surface', () => {
  it('is none where everything is sealed, and one by the airtightness otherwise', () => {
    expect(waysIn({}).map(({ id }) => id)).toEqual(['wall-1'])
    const ordinary = wayIn({ scheme: scheme({ airtightness: 'ordinary' }) }, 'leak:wall-1')
    const poor = wayIn({ scheme: scheme({ airtightness: 'poor' }) }, 'leak:wall-1')
    // 1 mm over 0.25 % and 25 % of 2 x (5 + 2.4) m.
    expect(ordinary.areaM2).toBeCloseTo(14.8 * 0.001 * 0.0025, 9)
    expect(poor.areaM2).toBeCloseTo(14.8 * 0.001 * 0.25, 9)
    expect(poor.basis).toBe('assumed')
  })

  it('is ordinary where nobody has chosen', () => {
    const { airtightness: _, ...unsaid } = scheme({})
    expect(waysIn({ scheme: unsaid }).map(({ id }) => id)).toEqual(['wall-1', 'leak:wall-1'])
  })

  it('is as wide as typed, all round, and as deep as what is built there', () => {
    const typed = scheme({ leaks: { 'wall-1': { gapMm: 3, holes: [] } } })
    const gap = wayIn({ scheme: typed }, 'leak:wall-1')
    const { layers } = anInput({ scheme: typed }).result.surfaces[0]!
    expect(gap.areaM2).toBeCloseTo(14.8 * 0.003, 9)
    expect(gap.lossDb).toEqual(slitLoss({ widthMm: 3, depthMm: layersDepth(layers), place: 'edge' }))
    expect(gap.basis).toBe('typed')
    expect(gap.label).toBe('The gap round Wall 1')
  })

  it('goes round the whole outline at the ceiling', () => {
    const typed = scheme({ leaks: { 'ceiling-1': { gapMm: 1, holes: [] } } })
    const gap = wayIn({ scheme: typed, receiver: { through: [{ surface: 'ceiling-1' }] } }, 'leak:ceiling-1')
    expect(gap.areaM2).toBeCloseTo(18 * 0.001, 9)
    expect(gap.label).toBe('The gap round the ceiling')
  })

  it('closed by 0 mm is none, whatever the airtightness', () => {
    const closed = scheme({ airtightness: 'poor', leaks: { 'wall-1': { gapMm: 0, holes: [] } } })
    expect(waysIn({ scheme: closed }).map(({ id }) => id)).toEqual(['wall-1'])
  })
})

describe('holes', () => {
  it('are counted by their number, right through what is built', () => {
    const holes = [{ id: 'h1', name: 'Cable holes', diameterMm: 20, count: 3 }]
    const drilled = scheme({ leaks: { 'wall-1': { gapMm: 0, holes } } })
    const hole = wayIn({ scheme: drilled }, 'hole:wall-1:h1')
    const { layers } = anInput({ scheme: drilled }).result.surfaces[0]!
    expect(hole.areaM2).toBeCloseTo((3 * Math.PI * 100) / 1e6, 9)
    expect(hole.lossDb).toEqual(holeLoss({ diameterMm: 20, depthMm: layersDepth(layers) }))
    expect(hole.label).toBe('Cable holes in Wall 1')
  })
})

const DUCT: Duct = {
  id: 'duct-1',
  name: 'Supply duct',
  surface: 'wall-1',
  purpose: 'supply',
  shape: 'round',
  widthMm: 160,
  heightMm: 160,
  lengthMm: 3000,
  leadsTo: ['receiver-1'],
  made: { liningMm: 0, linedLengthMm: 0, bends: 0, silencer: null },
}

describe('a duct', () => {
  const insertionLossDb = { 63: null, 125: 10, 250: 20, 500: 30, 1000: 30, 2000: 30, 4000: 20 }
  const silenced = { ...DUCT.made, bends: 2, silencer: { name: 'Box', insertionLossDb } }

  it('lets sound into the rooms it leads to, and no others', () => {
    const elsewhere = { ...DUCT, id: 'duct-2', leadsTo: ['receiver-2'] }
    const ids = waysIn({ room: { ...HALL, ducts: [DUCT, elsewhere] } }).map(({ id }) => id)
    expect(ids).toEqual(['wall-1', 'duct:duct-1'])
  })

  it('is as it stands until a scheme does something to it, and says where a silencer has no figure', () => {
    const room = { ...HALL, ducts: [DUCT] }
    const built = { room, scheme: scheme({ ducts: { 'duct-1': silenced } }) }
    const section = { perimeterMm: Math.PI * 160, areaM2: (Math.PI / 4) * 0.0256, lengthM: 3 }
    const plain = { ...section, liningMm: 0, linedLengthM: 0, end: 'flush' as const }
    expect(wayIn({ room }, 'duct:duct-1').lossDb).toEqual(
      ductLoss({ ...plain, bends: 0, silencerDb: [null, null, null, null, null, null, null] }),
    )
    expect(wayIn(built, 'duct:duct-1').lossDb).toEqual(
      ductLoss({ ...plain, bends: 2, silencerDb: octaveList(insertionLossDb) }),
    )
    expect(answerTo(built).notes.map(({ text }) => text)).toContain(
      'Supply duct: nothing is stated for Box at 63 Hz, so nothing is counted there.',
    )
  })

  it('alone makes a path where no surface is named', () => {
    const answer = answerTo({ room: { ...HALL, ducts: [DUCT] }, receiver: { through: [] } })
    expect(answer.paths.map(({ path }) => path.id)).toEqual(['duct:duct-1'])
    expect(answer.marginDb).not.toBeNull()
    expect(answer.siteLoss).toBeNull()
    expect(answer.sentence).toMatch(/^The supply duct carries 100 % of what the bedroom hears/)
    expect(answer.notes.map(({ code }) => code)).toContain('ducts-alone')
    const beside = answerTo({ room: { ...HALL, ducts: [DUCT] } })
    expect(beside.notes.map(({ code }) => code)).not.toContain('ducts-alone')
  })
})

describe('openings', () => {
  const [, garageDoor] = openSample('garage').rooms[0]!.openings
  const door: Opening = {
    ...garageDoor!,
    wall: 'wall-1',
    fromMm: 200,
    made: { type: 'door-solid-core', seal: 'good' },
  }

  it('are paths of their own, and so are seals that are worn', () => {
    const ids = (made: Opening['made']) =>
      waysIn({ room: { ...HALL, openings: [{ ...door, made }] } }).map(({ id }) => id)
    expect(ids({ type: 'door-solid-core', seal: 'good' })).toEqual(['wall-1', door.id])
    expect(ids({ type: 'door-solid-core', seal: 'worn' })).toEqual(['wall-1', door.id, `seal:${door.id}`])
  })

  it('are what the scheme puts into them', () => {
    const room = { ...HALL, openings: [door] }
    const better = scheme({ openings: { [door.id]: { type: 'door-metal-filled', seal: 'good' } } })
    const loss = (asked: Asked) => wayIn(asked, door.id).lossDb
    expect(loss({ room, scheme: better })).not.toEqual(loss({ room }))
  })

  it('closed as the wall follow the wall, 5 dB weaker', () => {
    const plugged: Opening = { ...door, kind: 'vehicle-door', made: { type: 'plug', seal: 'good' } }
    const room = { ...HALL, openings: [plugged] }
    const given = { 'wall-1': { lossDb: aCurve(50) } }
    expect(wayIn({ room, given }, door.id).lossDb).toEqual(aCurve(45))
  })

  it('say where their figure is extended below 125 Hz', () => {
    const notes = answerTo({ room: { ...HALL, openings: [door] } }).notes
    expect(notes.map(({ code }) => code)).toContain('extended-below-125')
  })
})
