import { describe, expect, it } from 'vitest'
import { octaveValues } from '#acoustics/bands.ts'
import type { Opening } from '#analysis/room.ts'
import { type Asked, answerTo, HALL } from '../../../support/paths.ts'
import { openSample } from '../../../support/samples.ts'

const DOOR: Opening = { ...openSample('garage').rooms[0]!.openings[1]!, wall: 'wall-1', fromMm: 200 }

/** Nothing is known: no level, no margin, no share of everything, and a sentence that says what to do. */
function expectUnknown(asked: Asked, sentence: string | RegExp): void {
  const answer = answerTo(asked)
  expect(answer.verdict).toBe('not-known')
  expect(answer.verdictWords).toBe('not known')
  expect(answer.marginDb).toBeNull()
  expect(answer.marginLow95Db).toBeNull()
  expect(answer.levelA).toBeNull()
  expect(answer.worstBandHz).toBeNull()
  expect(answer.levelsDb).toEqual([null, null, null, null, null, null, null])
  expect(answer.paths.every(({ gainIfClosedDb }) => gainIfClosedDb === null)).toBe(true)
  if (typeof sentence === 'string') expect(answer.sentence).toBe(sentence)
  else expect(answer.sentence).toMatch(sentence)
}

describe('a receiver of which something is missing says so', () => {
  it.each<[string, Asked, string | RegExp]>([
    [
      'no surface',
      { receiver: { through: [] } },
      'Bedroom: nobody has said which surfaces it is heard through. Choose them under Targets.',
    ],
    ['only soil behind it', { receiver: { through: [{ surface: 'floor-1' }] } }, /^Bedroom: no sound goes through/],
    [
      'no source',
      { receiver: { source: null } },
      'Bedroom: nobody has said what is played. Choose a source under Targets.',
    ],
    ['a source that is gone', { receiver: { source: 'gone' } }, /^Bedroom: its source is no longer in the project/],
    [
      'a spectrum without any level',
      { source: { levelsDb: octaveValues([]) } },
      'Kit: it has no level in any octave. Type its levels under Targets.',
    ],
    [
      'a surface that is gone',
      { receiver: { through: [{ surface: 'wall-1' }, { surface: 'wall-9' }] } },
      'Bedroom: it is heard through a surface that is no longer in the room. Choose its surfaces again under Targets.',
    ],
    [
      'zero absorption',
      { receiver: { place: { kind: 'room', volumeM3: 30, furnishing: 'typed', absorptionM2: 0 } } },
      /absorption is 0 m², and no room absorbs nothing/,
    ],
    [
      'absorption to be typed',
      { receiver: { place: { kind: 'room', volumeM3: 30, furnishing: 'typed', absorptionM2: null } } },
      /its absorption is to be typed and is missing/,
    ],
    [
      'no volume',
      { receiver: { place: { kind: 'room', volumeM3: 0, furnishing: 'bare', absorptionM2: null } } },
      /its volume is 0 m³/,
    ],
    [
      'a distance of nothing',
      { receiver: { place: { kind: 'outdoors', distanceMm: 0, atFacade: false } } },
      /a distance to it is 0 mm/,
    ],
    [
      'a surface no distance away',
      {
        receiver: {
          place: { kind: 'outdoors', distanceMm: 9000, atFacade: false },
          through: [{ surface: 'wall-1', distanceMm: 0 }],
        },
      },
      /a distance to it is 0 mm/,
    ],
    ['traffic played in the room', { source: { place: 'facade' } }, /^Kit: its levels are at the wall outside/],
    [
      'a talker heard from outside',
      { source: { place: 'one-metre' }, receiver: { place: { kind: 'this-room' } } },
      /^Kit: its levels are one metre from a talker/,
    ],
    [
      'a room without reverberation',
      { room: { ...HALL, reverberationS: 0 }, receiver: { place: { kind: 'this-room' } } },
      /its reverberation time is 0 s/,
    ],
  ])('%s', (_, asked, sentence) => {
    expectUnknown(asked, sentence)
  })

  it('a door nobody has described, which is then a way of which nothing is known', () => {
    const { made: _, ...bare } = DOOR
    const room = { ...HALL, openings: [bare] }
    expectUnknown({ room }, /Side door/)
    const answer = answerTo({ room })
    expect(answer.unknown).toEqual([expect.objectContaining({ id: DOOR.id, kind: 'opening', element: DOOR.id })])
    expect(answer.sentence).toMatch(/under Openings/)
    expect(answer.noiseReductionDb).toBeNull()
    expect(answer.siteLoss).toBeNull()
    expect(answer.paths.reduce((sum, { share }) => sum + share, 0)).toBeCloseTo(1, 9)
    expect(answer.notes.map(({ code }) => code)).toContain('shares-of-the-known')
  })

  it('a door type nobody knows', () => {
    const room = { ...HALL, openings: [{ ...DOOR, made: { type: 'door-of-gold', seal: 'good' as const } }] }
    expectUnknown({ room }, /door-of-gold/)
  })

  it('an opening wider than its wall', () => {
    const made = { type: 'door-solid-core', seal: 'good' as const }
    const room = { ...HALL, openings: [{ ...DOOR, widthMm: 6000, fromMm: 0, made }] }
    expectUnknown({ room }, /Side door is .*wide and Wall 1 only/)
  })

  it('openings that are together larger than their wall', () => {
    const made = { type: 'door-solid-core', seal: 'good' as const }
    const room = { ...HALL, openings: [{ ...DOOR, widthMm: 4900, heightMm: 4000, fromMm: 0, made }] }
    expectUnknown({ room }, /Wall 1: the openings in it are together larger than the wall/)
  })

  it('shares are told all the same before a source is chosen, as for equally loud octaves', () => {
    const answer = answerTo({ receiver: { source: null, through: [{ surface: 'wall-1' }, { surface: 'wall-2' }] } })
    expect(answer.paths).toHaveLength(2)
    expect(answer.paths.reduce((sum, { share }) => sum + share, 0)).toBeCloseTo(1, 9)
    expect(answer.notes.map(({ code }) => code)).toContain('shares-without-source')
    expect(answer.noiseReductionDb).not.toBeNull()
  })

  it('a surface named twice counts once', () => {
    const twice = answerTo({ receiver: { through: [{ surface: 'wall-1' }, { surface: 'wall-1' }] } })
    expect(twice.paths).toHaveLength(1)
  })
})
