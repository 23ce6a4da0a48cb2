import { describe, expect, it } from 'vitest'
import { answerReceivers } from '#analysis/paths/answerReceivers.ts'
import { aCurve, anInput, answerTo, aReceiver, tenths } from '../../../support/paths.ts'

/**
 * Two walls into a room that absorbs 10 m2, 100 dB in every octave, worked by hand:
 * 10 m2 x 10^-4 / 10 m2 = 0.0001 and 5 m2 x 10^-3 / 10 m2 = 0.0005, together 0.0006, so 100 + 10 lg 0.0006 = 67.78 dB.
 * Upper end: 0.0001 x 10^(1.96 x 2/10) + 0.0005 x 10^(1.96 x 4/10) = 0.003287, that is V = 7.39 dB;
 * with 1.96 x 3 = 5.88 dB of the source 9.44 dB.
 */
describe('an answer worked by hand', () => {
  const given = {
    'wall-1': { lossDb: aCurve(40), sdDb: aCurve(2), areaM2: 10 },
    'wall-2': { lossDb: aCurve(30), sdDb: aCurve(4), areaM2: 5 },
  }
  const through = [{ surface: 'wall-1' }, { surface: 'wall-2' }]
  const source = { sdDb: 3 }
  const answer = answerTo({ given, source, receiver: { through } })

  it('has its levels and both ends', () => {
    expect(tenths(answer.levelsDb)).toEqual([67.8, 67.8, 67.8, 67.8, 67.8, 67.8, 67.8])
    expect(answer.levelsHigh95Db[0]! - answer.levelsDb[0]!).toBeCloseTo(9.44, 2)
    // Lower end: 10 lg((0.0001 x 10^-0.392 + 0.0005 x 10^-0.784)/0.0006) = -6.89; root of 6.89^2 and 5.88^2.
    expect(answer.levelsDb[0]! - answer.levelsLow95Db[0]!).toBeCloseTo(9.06, 2)
  })

  it('has its margin under NC-25, tightest where that is 22 dB', () => {
    expect(answer.worstBandHz).toBe(4000)
    expect(answer.dominantBandHz).toBeNull()
    expect(answer.marginDb).toBeCloseTo(22 - 67.78, 2)
    expect(answer.marginLow95Db).toBeCloseTo(22 - 67.78 - 9.44, 2)
    expect(answer.verdict).toBe('does-not-meet')
  })

  it('has its shares, greatest first, and what closing each would gain', () => {
    expect(answer.paths.map(({ path }) => path.id)).toEqual(['wall-2', 'wall-1'])
    expect(answer.paths[0]!.share).toBeCloseTo(5 / 6, 9)
    expect(answer.paths[0]!.shareAtWorstBand).toBeCloseTo(5 / 6, 9)
    expect(answer.paths[0]!.gainIfClosedDb).toBeCloseTo(7.78, 2)
    expect(answer.paths[0]!.levelsDb[3]).toBeCloseTo(66.99, 2)
    expect(answer.sentence).toBe('Wall 2 carries 83 % of what the bedroom hears at 4000 Hz.')
  })

  it('has its noise reduction of 32.2 dB between the rooms, NIC 32', () => {
    expect(answer.noiseReductionDb).toHaveLength(21)
    expect(answer.noiseReductionDb![0]).toBeCloseTo(32.22, 2)
    expect(answer.differenceDb[500]).toBeCloseTo(32.22, 2)
    // 32 in every third falls short of the contour at 32 by 1 + 2 + 3 + 6 x 4 = 30 dB, and at 33 by 40.
    expect(answer.nic).toBe(32)
  })

  it('has one weighted level with the octave that brings most', () => {
    const weighted = answerTo({ given, source, receiver: { through, limit: { kind: 'dBA', levelDb: 80 } } })
    // 10 lg of the A-weights' sum over 63-4000 Hz is 6.25 dB, most of it at 2000 Hz (+1.2 dB).
    expect(weighted.levelA).toBeCloseTo(67.78 + 6.25, 1)
    expect(weighted.worstBandHz).toBeNull()
    expect(weighted.dominantBandHz).toBe(2000)
    expect(weighted.limitDb).toBeNull()
    expect(weighted.limitOverallDb).toBe(80)
    expect(weighted.marginDb).toBeCloseTo(80 - 74.03, 1)
    expect(weighted.verdictWords).toBe('likely, could be 10 dB worse')
    expect(weighted.sentence).toBe('Wall 2 carries 83 % of what the bedroom hears in dBA, where 2000 Hz counts most.')
  })

  it('is held 5 dB lower for beat', () => {
    const beat = answerTo({ given, source, receiver: { through, hasBeat: true } })
    expect(beat.marginDb).toBeCloseTo(answer.marginDb! - 5, 9)
    expect(beat.limitDb![6]).toBe(17)
  })

  it('speaks in four verdicts from both ends of the range', () => {
    const words = (levelDb: number) =>
      answerTo({ given, source, receiver: { through, limit: { kind: 'dBA', levelDb } } }).verdictWords
    expect([84, 80, 70, 60].map(words)).toEqual([
      'meets on paper',
      'likely, could be 10 dB worse',
      'open',
      'does not meet',
    ])
  })
})

describe('who is answered', () => {
  it('is every receiver of the room, in order, and no other', () => {
    const input = anInput()
    const receivers = ['a', 'b', 'c'].map((id) => aReceiver({ id, room: id === 'b' ? 'elsewhere' : input.room.id }))
    expect(answerReceivers({ ...input, receivers }).map(({ receiverId }) => receiverId)).toEqual(['a', 'c'])
  })
})

describe('where sound comes from', () => {
  const given = { 'wall-1': { lossDb: aCurve(40), areaM2: 10 } }

  it('is the room: what is played one metre from a talker is taken as the diffuse level of that power', () => {
    const far = answerTo({ given, source: { place: 'one-metre' } })
    // A = 0.161 x 5 x 4 x 2.4 / 0.4 = 19.32 m2: 100 + 11 + 6 - 12.86 dB.
    expect(far.sourceDb[3]).toBeCloseTo(104.14, 2)
    expect(far.notes.map(({ code }) => code)).toContain('one-metre')
  })

  it('is outside where the receiver is the room itself, which absorbs by its own reverberation', () => {
    const comesIn = answerTo({ given, source: { place: 'facade' }, receiver: { place: { kind: 'this-room' } } })
    // 100 - 40 + 10 lg(10/19.32).
    expect(comesIn.levelsDb[3]).toBeCloseTo(57.14, 2)
    expect(comesIn.nic).toBeNull()
    expect(comesIn.notes.map(({ code }) => code)).toContain('no-nic')
  })

  it('is 3 dB louder in front of a wall that reflects, and only when that is asked', () => {
    const at = (atFacade: boolean) =>
      answerTo({ given, receiver: { place: { kind: 'outdoors', distanceMm: 9000, atFacade } } }).levelsDb[0]!
    expect(at(true) - at(false)).toBeCloseTo(3, 9)
  })

  it('is further off, or screened, by what is said of each surface', () => {
    const outdoors = (through: Parameters<typeof aReceiver>[0]) =>
      answerTo({ given, receiver: { place: { kind: 'outdoors', distanceMm: 9000, atFacade: false }, ...through } })
    const near = outdoors({})
    const far = outdoors({ through: [{ surface: 'wall-1', distanceMm: 90_000, screenedDb: 5 }] })
    expect(near.levelsDb[0]! - far.levelsDb[0]!).toBeCloseTo(25, 9)
    expect(near.nic).toBeNull()
  })
})

describe('what must be read beside a margin', () => {
  const texts = (source: Parameters<typeof answerTo>[0]) => answerTo(source).notes.map(({ text }) => text)
  const STRUCTURE_BORNE = /^Structure-borne sound and bass below 50 Hz are not in this figure; lowest resonance/

  it('is structure-borne sound for what shakes the building, and for presets that do', () => {
    for (const source of [
      { shakes: true },
      ...['drum-kit-hard', 'bass-amplifier', 'band-amplified', 'cinema-loud'].map((preset) => ({ preset })),
    ]) {
      expect(texts({ source })).toContainEqual(expect.stringMatching(STRUCTURE_BORNE))
    }
    expect(texts({ source: { preset: 'speech-raised' } })).not.toContainEqual(expect.stringMatching(STRUCTURE_BORNE))
  })

  it('names the octaves that have no level and are not judged', () => {
    const levelsDb = { 63: null, 125: null, 250: 57, 500: 60, 1000: 54, 2000: 49, 4000: 44 }
    const answer = answerTo({ source: { name: 'Speech', levelsDb } })
    expect(answer.levelsDb.slice(0, 3)).toEqual([null, null, expect.any(Number)])
    expect(answer.notes.map(({ text }) => text)).toContain(
      'Speech has no level at 63, 125 Hz, so nothing is judged there.',
    )
    expect(answer.differenceDb[63]).not.toBeNull()
    expect([63, 125]).not.toContain(answer.worstBandHz)
    const weighted = answerTo({
      source: { name: 'Speech', levelsDb },
      receiver: { limit: { kind: 'dBA', levelDb: 30 } },
    })
    expect(weighted.notes.map(({ text }) => text)).toContain(
      'Speech has no level at 63, 125 Hz, so the dBA value is without them: the level is at least this, and the margin at most.',
    )
  })

  it('says that a curve below NC-15 is not in print', () => {
    expect(texts({ receiver: { limit: { kind: 'NC', index: 10 } } })).toContainEqual(
      expect.stringMatching(/^NC-10 is not in print/),
    )
  })
})
