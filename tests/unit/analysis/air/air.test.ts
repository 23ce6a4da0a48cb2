import { describe, expect, it } from 'vitest'
import { octaveLoss, transmittedFraction } from '#acoustics/curve.ts'
import { ductAir } from '#analysis/air/ductAir.ts'
import { ductNotes, flowNotes } from '#analysis/air/ductNotes.ts'
import { airtightnessCap, gapCap, holeCap, mostSpoilt } from '#analysis/air/leakCaps.ts'
import { airNeed, needWords } from '#analysis/air/need.ts'
import { ductLimit, roomLimit } from '#analysis/air/quiet.ts'
import { bothAirflows, bothVelocities, nextDuctSize } from '#analysis/air/words.ts'
import { ductAreaM2, ductLossOf } from '#analysis/paths/ductPaths.ts'
import type { Duct, Room } from '#analysis/room.ts'
import type { Scheme } from '#analysis/scheme.ts'
import type { Receiver } from '#analysis/target.ts'
import { aReceiver } from '../../../support/paths.ts'
import { aRoom, aScheme, box, resultsOf } from '../../../support/rooms.ts'

/** 4 people in 20.9 m2 need 26.3 L/s: the example of OPENINGS.md, from ASHRAE 62.1, seen. */
const HALL = aRoom(box(0, 0, 5225, 4000), { people: 4 })
const RESULT = resultsOf(HALL)
const NEED = airNeed(HALL, RESULT)

function aDuct(change: Partial<Duct> = {}): Duct {
  const made = { liningMm: 0, linedLengthMm: 0, bends: 0, silencer: null }
  const size = { widthMm: 155, heightMm: 155, lengthMm: 3000 }
  return {
    id: 'duct-1',
    name: 'Supply',
    surface: 'wall-1',
    purpose: 'supply',
    shape: 'round',
    ...size,
    leadsTo: [],
    made,
    ...change,
  }
}

function withDucts(...ducts: readonly Duct[]): Room {
  return { ...HALL, ducts }
}

const quiet = (index: number, kind: 'NC' | 'NR' = 'NC'): Receiver =>
  aReceiver({ id: 'own', name: 'This room', room: HALL.id, place: { kind: 'this-room' }, limit: { kind, index } })

describe('the air people need', () => {
  it('is 26.3 L/s for 4 people in 20.9 m²', () => {
    expect(NEED.lPerS).toBeCloseTo(26.27, 2)
    expect(needWords(NEED)).toBe(
      '4 people and 20.90 m² (225.0 ft²) of clear floor need 26.3 L/s (56 cfm) of outdoor air',
    )
  })

  it('is not known where nobody said how many there are, and never 0', () => {
    const { people: _, ...nobody } = HALL
    const need = airNeed(nobody, RESULT)
    expect(need.lPerS).toBeNull()
    expect(needWords(need)).toBe(
      'each person needs 5.0 L/s (11 cfm) of outdoor air, and the floor 6.3 L/s (13 cfm) more',
    )
  })

  it('follows the clear floor of the scheme', () => {
    const lined = resultsOf(HALL, aScheme({ 'wall-1': 'W14', 'wall-2': 'W14', 'wall-3': 'W14', 'wall-4': 'W14' }))
    expect(airNeed(HALL, lined).lPerS!).toBeLessThan(NEED.lPerS!)
  })
})

describe('a duct for it', () => {
  it('of 155 mm moves air at 1.4 m/s, as the example says', () => {
    const room = withDucts(aDuct())
    const air = ductAir(aDuct(), room, NEED, [])
    expect(air.shareLPerS).toBeCloseTo(26.27, 2)
    expect(air.velocityMS).toBeCloseTo(1.39, 2)
    expect(ductAreaM2(aDuct())).toBeCloseTo(0.0189, 4)
  })

  it('shares the air with others of its purpose by area, so that all run at one velocity', () => {
    const wide = aDuct({ id: 'duct-2', widthMm: 310, heightMm: 310 })
    const back = aDuct({ id: 'duct-3', purpose: 'return' })
    const room = withDucts(aDuct(), wide, back)
    const [one, two, three] = [aDuct(), wide, back].map((duct) => ductAir(duct, room, NEED, []))
    expect(one!.shareLPerS! + two!.shareLPerS!).toBeCloseTo(NEED.lPerS!, 9)
    expect(one!.velocityMS).toBeCloseTo(two!.velocityMS!, 9)
    expect(three!.shareLPerS).toBeCloseTo(NEED.lPerS!, 9)
  })

  it('is told too fast with the round size that would do, which does', () => {
    const narrow = aDuct({ widthMm: 100, heightMm: 100 })
    const room = withDucts(narrow)
    const receivers = [quiet(20)]
    const air = ductAir(narrow, room, NEED, receivers)
    const sentence = notesOf(narrow, receivers).find(({ code }) => code === 'air-fast')?.text
    // NC-20: 300 ft/min at a supply grille = 1.52 m/s; 26.3 L/s through it is 148 mm across.
    expect(air.limitMS).toBeCloseTo(1.524, 3)
    expect(sentence).toContain('faster than 1.5 m/s (300 ft/min) for NC-20, set for this room')
    expect(sentence).toContain('a round duct of 150 mm (5 7/8") would be slow enough')
    const enough = { ...narrow, widthMm: 150, heightMm: 150 }
    const then = ductAir(enough, withDucts(enough), NEED, receivers)
    expect(then.velocityMS!).toBeLessThanOrEqual(then.limitMS!)
  })

  it('is offered in whole inches where the project counts in them', () => {
    expect(nextDuctSize(148, 'mm')).toBe(150)
    expect(nextDuctSize(150, 'mm')).toBe(150)
    expect(nextDuctSize(148, 'ft-in')).toBeCloseTo(152.4, 9)
  })

  it('has no velocity where it carries no air or nobody said how many there are', () => {
    const other = aDuct({ purpose: 'other' })
    expect(ductAir(other, withDucts(other), NEED, [])).toMatchObject({
      shareLPerS: null,
      velocityMS: null,
      limitMS: null,
    })
    const unknown = ductAir(aDuct(), withDucts(aDuct()), { ...NEED, people: null, lPerS: null }, [])
    expect(unknown).toMatchObject({ velocityMS: null, enoughDiameterMm: null })
    expect(unknown.limitMS).not.toBeNull()
  })
})

describe('how quiet moving air has to be', () => {
  it('is as the room itself asks, the strictest first, else as music rooms do', () => {
    expect(roomLimit(HALL, [])).toEqual({ nc: 25, words: 'NC-25, taken for a music room (own choice)' })
    expect(roomLimit(HALL, [quiet(30), quiet(20), aReceiver({ room: HALL.id })]).nc).toBe(20)
    expect(roomLimit(HALL, [quiet(20, 'NR')]).words).toBe('NR-20, set for this room')
    expect(roomLimit(HALL, [{ ...quiet(20), limit: { kind: 'dBA', levelDb: 30 } }]).nc).toBe(25)
  })

  it('is the stricter one where the duct ends in a quieter room', () => {
    const bedroom = aReceiver({ id: 'bed', room: HALL.id, limit: { kind: 'NC', index: 15 } })
    expect(ductLimit(aDuct({ leadsTo: ['bed'] }), HALL, [bedroom]).words).toBe('NC-15, set for the bedroom')
    expect(ductLimit(aDuct(), HALL, [bedroom]).nc).toBe(25)
  })
})

function notesOf(duct: Duct, receivers: readonly Receiver[] = [], scheme: Scheme = aScheme()) {
  const room = withDucts(duct)
  return ductNotes(duct, { room, scheme, result: RESULT, receivers, need: NEED, units: 'mm' })
}
const codesOf = (...given: Parameters<typeof notesOf>) => notesOf(...given).map(({ code }) => code)

describe('what is said of a duct', () => {
  const bedroom = aReceiver({ room: HALL.id })
  const garden = aReceiver({
    id: 'g',
    name: 'Garden',
    room: HALL.id,
    place: { kind: 'outdoors', distanceMm: 9000, atFacade: false },
  })

  it('that it is a loudspeaker in a bedroom, but not in the garden', () => {
    const shared = notesOf(aDuct({ leadsTo: [bedroom.id] }), [bedroom]).find(({ code }) => code === 'shared-duct')
    expect(shared?.text).toContain('Supply leads from here to Bedroom and works like a small loudspeaker there')
    expect(codesOf(aDuct({ leadsTo: [garden.id] }), [garden])).not.toContain('shared-duct')
  })

  it('that its sound is in nobody’s sum while it leads nowhere', () => {
    expect(codesOf(aDuct())).toContain('leads-nowhere')
    expect(codesOf(aDuct({ leadsTo: [garden.id] }), [garden])).not.toContain('leads-nowhere')
  })

  it('that it decides, until enough is done to it, by the scheme’s own figure', () => {
    const bare = notesOf(aDuct()).find(({ code }) => code === 'duct-decides')
    expect(bare?.text).toMatch(/^At \d+ Hz Supply lets through \d+ dB more than all of Wall 1 does/)
    const insertionLossDb = { 63: 80, 125: 80, 250: 80, 500: 80, 1000: 80, 2000: 80, 4000: 80 }
    const made = { ...aDuct().made, silencer: { name: 'Much', insertionLossDb } }
    expect(codesOf(aDuct(), [], aScheme({}, { ducts: { 'duct-1': made } }))).not.toContain('duct-decides')
    // A surface without a rating has nothing to be compared with.
    const unrated = { surfaces: RESULT.surfaces.map((surface) => ({ ...surface, rating: null })) }
    const setting = { room: withDucts(aDuct()), scheme: aScheme(), receivers: [], need: NEED, units: 'mm' } as const
    expect(ductNotes(aDuct(), { ...setting, result: unrated }).map(({ code }) => code)).not.toContain('duct-decides')
  })

  it('that its silencer has no box yet, or its box no silencer', () => {
    const insertionLossDb = { 63: 5, 125: 5, 250: 20, 500: 20, 1000: 20, 2000: 20, 4000: null }
    const ducts = { 'duct-1': { ...aDuct().made, silencer: { name: 'Fold', insertionLossDb } } }
    const size = { widthMm: 1000, depthMm: 500, heightMm: 300, angleDeg: 0, undersideMm: 0, xMm: 2000, yMm: 2000 }
    const boxes = [{ id: 'box-1', name: 'Box', duct: 'duct-1', room: HALL.id, ...size }]
    expect(codesOf(aDuct(), [], aScheme({}, { ducts }))).toContain('silencer-without-box')
    expect(codesOf(aDuct(), [], aScheme({}, { boxes }))).toContain('box-without-silencer')
    const both = codesOf(aDuct(), [], aScheme({}, { ducts, boxes }))
    expect(both.filter((code) => code.includes('without'))).toEqual([])
    expect(codesOf(aDuct()).filter((code) => code.includes('without'))).toEqual([])
  })

  it('what is missing for air to go in and out', () => {
    const flow = (...purposes: Duct['purpose'][]) =>
      flowNotes(withDucts(...purposes.map((purpose, k) => aDuct({ id: `duct-${k}`, purpose }))), NEED).map(
        ({ code }) => code,
      )
    expect(flow()).toEqual(['no-air'])
    expect(flow('other')).toEqual(['no-air'])
    expect(flow('supply')).toEqual(['no-return'])
    expect(flow('return')).toEqual(['no-supply'])
    expect(flow('supply', 'return')).toEqual([])
  })
})

describe('what a leak caps a surface at', () => {
  const wall = RESULT.surfaces[0]!

  it('is nothing where it is sealed, and the worse the less it is', () => {
    expect(airtightnessCap(HALL, wall, 'sealed')).toBeNull()
    const [ordinary, poor] = [airtightnessCap(HALL, wall, 'ordinary')!, airtightnessCap(HALL, wall, 'poor')!]
    expect(ordinary).toBeGreaterThan(poor + 15)
    expect(poor).toBeGreaterThan(25)
  })

  it('is that of a gap typed for it, wider gaps capping lower, down to its open area', () => {
    const capOf = (gapMm: number) => gapCap(HALL, wall, { leaks: { 'wall-1': { gapMm, holes: [] } } })
    expect(capOf(0)).toBeNull()
    expect(capOf(1)!).toBeGreaterThan(capOf(5)!)
    // 1 % open ends at 20 dB at the least, 10 lg of the share: a hole of that area is never worse than nothing at all.
    const share = 0.01
    const diameterMm = Math.sqrt((share * wall.soundAreaM2 * 4) / Math.PI) * 1000
    const hole = { id: 'hole-1', name: 'Cable', diameterMm, count: 1 }
    expect(holeCap(HALL, wall, hole)!).toBeGreaterThanOrEqual(20 - 1e-9)
  })

  it('adds up to what the hole lets through', () => {
    const one = { id: 'hole-1', name: 'Cable', diameterMm: 20, count: 1 }
    const ten = { ...one, count: 10 }
    const ratio = transmittedFraction(holeCap(HALL, wall, ten)!) / transmittedFraction(holeCap(HALL, wall, one)!)
    expect(ratio).toBeCloseTo(10, 6)
  })

  it('is not known of a surface without a rating', () => {
    expect(airtightnessCap(HALL, { ...wall, rating: null }, 'poor')).toBeNull()
    expect(mostSpoilt(RESULT.surfaces.map((surface) => ({ ...surface, rating: null })))).toBeNull()
  })

  it('is told of the best wall, which it spoils most', () => {
    const lined = resultsOf(HALL, aScheme({ 'wall-3': 'W20' }))
    expect(mostSpoilt(lined.surfaces)?.id).toBe('wall-3')
  })
})

describe('figures in words', () => {
  it('are in both units', () => {
    expect(bothAirflows(26.27)).toBe('26.3 L/s (56 cfm)')
    expect(bothVelocities(1.524)).toBe('1.5 m/s (300 ft/min)')
  })

  it('of a duct count the open end once', () => {
    const short = octaveLoss(ductLossOf(aDuct({ lengthMm: 1000 }), aDuct().made))
    const long = octaveLoss(ductLossOf(aDuct({ lengthMm: 2000 }), aDuct().made))
    for (const [octave, loss] of long.entries()) expect(loss - short[octave]!).toBeCloseTo(0.1, 6)
  })
})
