import { describe, expect, it } from 'vitest'
import type { ReceiverAnswer } from '#analysis/paths/answer.ts'
import { answerReceivers } from '#analysis/paths/answerReceivers.ts'
import type { Opening } from '#analysis/room.ts'
import type { Catalogue } from '#assemblies/assembly.ts'
import type { OpeningType } from '#assemblies/opening.ts'
import { aCurve, answerTo, aReceiver, aSource, HALL, tenths, withCurves } from '../../support/paths.ts'
import { aScheme, resultsOf } from '../../support/rooms.ts'
import { CATALOGUE, openSample } from '../../support/samples.ts'

/** A type that lets the same through in every octave. */
function flat(id: string, kind: OpeningType['kinds'][number], lossDb: number): OpeningType {
  const any = CATALOGUE.openingTypes.get('door-solid-core')!
  const octaves = { 63: lossDb, 125: lossDb, 250: lossDb, 500: lossDb, 1000: lossDb, 2000: lossDb, 4000: lossDb }
  return { ...any, id, kinds: [kind], seals: 'none', loss: { kind: 'octaves', lossDb: octaves, sdDb: 0 } }
}

const TYPES = [flat('door-34', 'door', 34), flat('door-50', 'door', 50), flat('vent-30', 'vent', 30)]
const FLAT: Catalogue = {
  ...CATALOGUE,
  openingTypes: new Map([...CATALOGUE.openingTypes, ...TYPES.map((type) => [type.id, type] as const)]),
}

function opening(id: string, kind: Opening['kind'], widthMm: number, heightMm: number, type: string): Opening {
  return {
    id,
    kind,
    name: kind === 'door' ? 'Side door' : 'Vent',
    wall: 'wall-1',
    fromMm: kind === 'door' ? 200 : 2000,
    widthMm,
    heightMm,
    sillMm: 0,
    hinge: 'from',
    swing: 'in',
    leaves: 'one',
    hungIn: 'existing',
    lobby: null,
    revealLiningMm: 0,
    shape: 'rectangular',
    made: { type, seal: 'good' },
  }
}

/**
 * Our own demo data, SCENARIOS section 1, weakest-link sum: right wall 20 ft by 8 ft 6 in, 15.794 m2, with a door of
 * 1.652 m2; single numbers taken as flat curves. Computed there by formula; tolerance 0.1 dB, as they are printed.
 */
describe('the weakest link of a wall, from the paths of a receiver', () => {
  const WALL_M2 = 15.794
  const door = (type: string) => opening('door', 'door', 813, 2032, type)
  const vent = (type: string) => opening('vent', 'vent', 200, 100, type)

  function composite(openings: readonly Opening[]): { readonly lossDb: number; readonly answer: ReceiverAnswer } {
    const room = { ...HALL, openings }
    const taken = openings.reduce((sum, { widthMm, heightMm }) => sum + (widthMm * heightMm) / 1e6, 0)
    const answer = answerTo({
      room,
      catalogue: FLAT,
      given: { 'wall-1': { lossDb: aCurve(60), areaM2: WALL_M2 - taken } },
    })
    // Back from the level next door: NR = TL - 10 lg(S/A), A = 10 m2.
    return { lossDb: answer.noiseReductionDb![10]! + 10 * Math.log10(WALL_M2 / 10), answer }
  }

  it('is 43.7 dB with a door of 34 dB in a wall of 60, and the door carries 98 %', () => {
    const { lossDb, answer } = composite([door('door-34')])
    expect(lossDb).toBeCloseTo(43.7, 1)
    expect(answer.paths[0]!.path.id).toBe('door')
    expect(Math.round(100 * answer.paths[0]!.share)).toBe(98)
    expect(answer.sentence).toBe(
      'The side door carries 98 % of what the bedroom hears at 4000 Hz; the wall could be lighter.',
    )
  })

  it('is 57.1 dB with a door set of 50 dB', () => {
    expect(composite([door('door-50')]).lossDb).toBeCloseTo(57.1, 1)
  })

  it('is 29.0 dB with a vent of 0.02 m2 beside it that lets everything through', () => {
    expect(composite([door('door-50'), vent('vent-open')]).lossDb).toBeCloseTo(29.0, 1)
  })

  it('is 54.9 dB with 30 dB in that vent', () => {
    expect(composite([door('door-50'), vent('vent-30')]).lossDb).toBeCloseTo(54.9, 1)
  })
})

/** Derived: -10 lg of the open area's fraction, for a wall far better than that. */
describe('an open hole caps a wall', () => {
  it.each([
    [1, 20],
    [0.1, 30],
    [0.01, 40],
    [0.001, 50],
  ])('%s percent open: %s dB', (percent, capDb) => {
    const side = 1000 * Math.sqrt(percent / 10)
    const room = { ...HALL, openings: [opening('vent', 'vent', side, side, 'vent-open')] }
    const areaM2 = 10 * (1 - percent / 100)
    const { noiseReductionDb } = answerTo({ room, given: { 'wall-1': { lossDb: aCurve(80), areaM2 } } })
    expect(noiseReductionDb![10]!).toBeCloseTo(capDb, 1)
  })
})

/** WORKED-EXAMPLES, WE-9: follows from L2 = L1 - TL + 10 lg(S/A); S = 12, A = 10 m2. Printed to 0.1 dB. */
describe('the level next door', () => {
  const answer = answerTo({
    source: { levelsDb: { 63: 95, 125: 97, 250: 95, 500: 92, 1000: 90, 2000: 86, 4000: 80 } },
    receiver: { limit: { kind: 'NC', index: 45 } },
    given: { 'wall-1': { lossDb: aCurve([30, 38, 50, 58, 63, 60, 62]), areaM2: 12 } },
  })

  it('has the levels and the A-weighted level of the worked example', () => {
    expect(tenths(answer.levelsDb)).toEqual([65.8, 59.8, 45.8, 34.8, 27.8, 26.8, 18.8])
    expect(answer.levelA).toBeCloseTo(46.1, 1)
  })

  // The example names 63 Hz, where 65.8 lies between NC-40 and NC-45; at 125 Hz 59.8 lies nearer still to NC-45's 60.
  it('meets NC-45 by the 0.2 dB that are left at 125 Hz, as the example does at every octave', () => {
    expect(answer.marginDb).toBeCloseTo(60 - 59.79, 2)
    expect(answer.worstBandHz).toBe(125)
    expect(answer.verdict).toBe('meets-on-paper')
  })
})

/**
 * Our own demo data, SCENARIOS section 1, outside check of the one wall, derived there by hand:
 * Lp = Lin - TL - 6 + 12.0 - 19.1 - 8 = Lin - TL - 21.1 at 9 m. Tolerance 0.1 dB, as printed.
 */
describe('the level outdoors of the one long wall of the garage', () => {
  const garage = openSample('garage')
  const room = { ...garage.rooms[0]!, ducts: [] }
  const scheme = aScheme({}, { airtightness: 'sealed' })
  const KIT = [100, 103, 101, 100, 98, 97]
  const NEEDED = [15, 29, 34, 40, 42, 44]

  const outside = (lossDb: readonly number[], distanceMm = 9000) =>
    answerReceivers({
      room,
      scheme,
      result: withCurves(resultsOf(room, scheme), { 'wall-4': { lossDb: aCurve(lossDb) } }),
      sources: [aSource({ levelsDb: { 63: 100, 125: 103, 250: 101, 500: 100, 1000: 98, 2000: 97, 4000: null } })],
      receivers: [
        aReceiver({
          room: room.id,
          place: { kind: 'outdoors', distanceMm, atFacade: false },
          through: [{ surface: 'wall-4' }],
        }),
      ],
      catalogue: CATALOGUE,
    })[0]!

  it('is Lin - TL - 21.1', () => {
    const loss = [15, 29, 34, 40, 42, 44, 44]
    const { levelsDb } = outside(loss)
    KIT.forEach((level, octave) => {
      expect(levelsDb[octave]!).toBeCloseTo(level - loss[octave]! - 21.1, 1)
    })
    expect(levelsDb[6]).toBeNull()
  })

  it('is at NC-20 and 13 dB for the window with the losses said to be needed there', () => {
    const { levelsDb } = outside([...NEEDED, 44])
    const NC_20 = [51, 40, 33, 26, 22, 19]
    // Whole dB are needed there, so the level lies less than 1 dB below or half a dB above.
    NC_20.forEach((limit, octave) => {
      expect(levelsDb[octave]!).toBeGreaterThan(limit + 13 - 1)
      expect(levelsDb[octave]!).toBeLessThan(limit + 13 + 0.5)
    })
  })

  it('is said to come too near for the formula inside 1.5 times the root of the wall', () => {
    const codes = (distanceMm: number) => outside([...NEEDED, 44], distanceMm).notes.map(({ code }) => code)
    expect(codes(6100)).not.toContain('too-near')
    expect(codes(5900)).toContain('too-near')
  })
})

/** WORKED-EXAMPLES, WE-11: follows from the energy sum; one path of 58 and three of 65 beside 57 dB leave 53.4. */
describe('what goes round beside what goes through', () => {
  const beside = (direct: number) =>
    answerTo({
      receiver: { through: ['wall-1', 'wall-2', 'wall-3', 'wall-4', 'ceiling-1'].map((surface) => ({ surface })) },
      given: {
        'wall-1': { lossDb: aCurve(direct), areaM2: 10 },
        'wall-2': { lossDb: aCurve(58), areaM2: 10 },
        'wall-3': { lossDb: aCurve(65), areaM2: 10 },
        'wall-4': { lossDb: aCurve(65), areaM2: 10 },
        'ceiling-1': { lossDb: aCurve(65), areaM2: 10 },
      },
    }).noiseReductionDb!

  it('leaves 53.4 dB of 57, and 55.6 of 66', () => {
    expect(beside(57)[10]!).toBeCloseTo(53.4, 1)
    expect(beside(66)[10]!).toBeCloseTo(55.6, 1)
  })
})

/**
 * Our own demo data, SCENARIOS section 1: a band until 22:00, the nearest bedroom window 9 m from the long wall, legal limit
 * outside assumed 50 dBA at night. No figure is given for the whole; what is held here is the order of things.
 */
describe('the brief of the garage', () => {
  const project = openSample('garage')
  const [bare] = project.rooms
  const band = { 63: 108, 125: 110, 250: 107, 500: 105, 1000: 103, 2000: 100, 4000: 96 }

  function atTheWindow(schemeName: string, door: string): ReceiverAnswer {
    const room = {
      ...bare!,
      ducts: [],
      openings: bare!.openings.map((one) => {
        const type = one.kind === 'door' ? door : one.kind === 'window' ? 'plug' : 'infill'
        return { ...one, made: { type, seal: 'good' as const } }
      }),
    }
    // The walls alone are the sample's here: what it puts into openings and ducts is left out.
    const chosen = project.schemes.find(({ name }) => name === schemeName)!
    const scheme = { ...chosen, openings: {}, ducts: {}, leaks: {}, boxes: [] }
    return answerReceivers({
      room,
      scheme,
      result: resultsOf(room, scheme),
      sources: [aSource({ levelsDb: band, sdDb: 4, shakes: true })],
      receivers: [
        aReceiver({
          room: room.id,
          name: 'Bedroom window',
          place: { kind: 'outdoors', distanceMm: 9000, atFacade: false },
          through: [{ surface: 'wall-2' }],
          limit: { kind: 'dBA', levelDb: 50 },
        }),
      ],
      catalogue: CATALOGUE,
    })[0]!
  }

  const AS_IT_IS = 'A do nothing but close the door'

  it('is not met by the garage as it stands', () => {
    expect(atTheWindow(AS_IT_IS, 'door-hollow-core').marginDb!).toBeLessThan(-5)
  })

  it('is not met either by a lined wall with a hollow door in it: the door then carries nearly all', () => {
    const { marginDb, sentence, paths } = atTheWindow('B clips', 'door-hollow-core')
    expect(marginDb!).toBeLessThan(0)
    expect(paths[0]!.path.kind).toBe('opening')
    expect(sentence).toMatch(
      /^The side door carries 9\d % of what the bedroom window hears in dBA, .*; the wall could be lighter\.$/,
    )
  })

  it('gains ten decibels from a pair of solid doors, and then the wall decides, in the bass', () => {
    const single = atTheWindow('B clips', 'door-hollow-core')
    const pair = atTheWindow('B clips', 'pair-solid-core')
    expect(pair.marginDb! - single.marginDb!).toBeGreaterThan(8)
    expect(pair.paths[0]!.path.id).toBe('wall-2')
    expect(pair.dominantBandHz).toBe(63)
  })

  it('is never said without the line on what shakes the building', () => {
    const { notes, lowestResonanceHz } = atTheWindow('C independent room', 'pair-solid-core')
    expect(notes[0]!.text).toBe(
      `Structure-borne sound and bass below 50 Hz are not in this figure; lowest resonance of the build-ups: ${Math.round(lowestResonanceHz!)} Hz.`,
    )
  })
})
