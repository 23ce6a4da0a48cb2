import { describe, expect, it } from 'vitest'
import { OCTAVE_KEYS, octaveValues } from '#acoustics/bands.ts'
import { targetCautions } from '#analysis/cautions/targets.ts'
import type { Room } from '#analysis/room.ts'
import type { Scheme } from '#analysis/scheme.ts'
import type { Receiver, Source } from '#analysis/target.ts'
import { aReceiver, aSource } from '../../../support/paths.ts'
import { aRoom, aScheme, box, resultsOf } from '../../../support/rooms.ts'

const HALL = aRoom(box(0, 0, 5000, 4000), { people: 3 })
const OWN = { room: HALL.id }
const BUILT = aScheme({ 'wall-1': 'W14' })

interface Given {
  readonly room?: Room
  readonly scheme?: Scheme
  readonly sources?: readonly Source[]
  readonly receivers?: readonly Receiver[]
}

function cautions({ room = HALL, scheme = aScheme(), sources = [], receivers = [aReceiver(OWN)] }: Given) {
  return targetCautions({ room, scheme, sources, receivers, result: resultsOf(room, scheme) })
}
const codes = (given: Given) => cautions(given).map(({ code }) => code)

/** The same level in every octave; 100 dB each are 106.25 dBA together, as the weights add up to 6.25 dB. */
function playing(level: number, change: Partial<Source> = {}): Source {
  return aSource({ levelsDb: octaveValues(OCTAVE_KEYS.map(() => level)), ...change })
}

describe('hearing protection', () => {
  it('is asked for above 85 dBA, with the level and how long a day may take', () => {
    const [first] = cautions({ sources: [playing(90)] })
    expect(first).toMatchObject({ kind: 'life-safety', code: 'hearing:source-1' })
    // 90 dB in seven octaves: 96.25 dBA, 11.25 over the limit: 8 h / 2^(11.25/3) = 36 min.
    expect(first?.text).toContain('Kit: 96 dBA in this room, above the 85 dBA')
    expect(first?.text).toMatch(/at that level 36 minutes a day is as much as a recommended limit allows/)
  })

  it('is not asked for at or below it, nor for what nobody plays here', () => {
    expect(codes({ sources: [playing(78)] })).not.toContain('hearing:source-1')
    expect(codes({ sources: [playing(90)], receivers: [aReceiver({ ...OWN, source: null })] })).not.toContain(
      'hearing:source-1',
    )
    expect(codes({ sources: [playing(90)], receivers: [aReceiver({ room: 'room-9' })] })).toEqual([])
  })

  it('does not take the noise outside for what is played inside', () => {
    const outside = playing(90, { place: 'facade' })
    const room = aReceiver({ ...OWN, place: { kind: 'this-room' } })
    expect(codes({ sources: [outside], receivers: [room] })).not.toContain('hearing:source-1')
    expect(codes({ sources: [outside] })).not.toContain('hearing:source-1')
  })

  it('counts a level one metre off as the room makes it', () => {
    const shout = playing(78, { place: 'one-metre' })
    // A room of 48 m3 and 0.4 s absorbs 19.3 m2: 84.25 dBA, 17 dB up for the power, 12.9 down for the room.
    expect(cautions({ sources: [shout] })[0]?.text).toContain('88 dBA')
  })

  it('says at least where an octave has no level, and whose figure it is', () => {
    const [known] = OCTAVE_KEYS.slice(3)
    const levelsDb = octaveValues(OCTAVE_KEYS.map((key) => (key === known ? null : 95)))
    const text = cautions({ sources: [playing(95, { levelsDb, basis: 'memory' })] })[0]?.text
    expect(text).toMatch(/^Kit: at least \d+ dBA, as assumed in this room/)
  })

  it('is asked for each source, and alarms named once, for the loudest', () => {
    const sources = [playing(85), playing(100, { id: 'source-2', name: 'Band' })]
    const receivers = [aReceiver(OWN), aReceiver({ ...OWN, id: 'r2', source: 'source-2' })]
    const all = cautions({ sources, receivers })
    expect(all.map(({ code }) => code).slice(0, 3)).toEqual(['hearing:source-2', 'hearing:source-1', 'alarms'])
    expect(all.find(({ code }) => code === 'alarms')?.text).toMatch(/^Band plays at 106 dBA, .* flashing light/)
  })
})

describe('air and fire', () => {
  const AIR = ['air', 'combustion-air', 'air-intake']

  it('are spoken of before the room is closed up, and not twice once it is', () => {
    expect(codes({ sources: [playing(70)] })).toEqual(AIR)
    expect(codes({ sources: [playing(70)], scheme: BUILT })).toEqual([])
    const said = resultsOf(HALL, BUILT).cautions.map(({ code }) => code)
    for (const code of AIR) expect(said.filter((one) => one === code)).toEqual([code])
  })

  it('say how much air the people need', () => {
    const text = resultsOf(HALL, BUILT).cautions.find(({ code }) => code === 'air')?.text
    expect(text).toMatch(
      /3 people and 19\.\d\d m² \(\d+\.\d ft²\) of clear floor need 20\.\d L\/s \(\d+ cfm\) of outdoor air/,
    )
    const { people: _, ...unsaid } = HALL
    expect(resultsOf(unsaid, BUILT).cautions.find(({ code }) => code === 'air')?.text).toContain(
      'say how many there are under Air and leaks',
    )
  })

  it('are spoken of where only the joints are sealed or a door is changed', () => {
    const sealed = resultsOf(HALL, aScheme({}, { airtightness: 'sealed' })).cautions.map(({ code }) => code)
    expect(sealed).toEqual(expect.arrayContaining(AIR))
    expect(resultsOf(HALL).cautions.map(({ code }) => code)).not.toEqual(expect.arrayContaining(AIR))
  })

  it('a duct towards the house keeps fire and smoke apart; one outdoors does not say so', () => {
    const made = { liningMm: 0, linedLengthMm: 0, bends: 0, silencer: null }
    const size = { widthMm: 150, heightMm: 150, lengthMm: 3000 }
    const duct = {
      id: 'd',
      name: 'Supply',
      surface: 'wall-2',
      purpose: 'supply',
      shape: 'round',
      ...size,
      leadsTo: [],
      made,
    } as const
    const facing = (farSide: 'own-house' | 'outdoors'): Room => ({
      ...HALL,
      walls: HALL.walls.map((wall) => ({ ...wall, farSide })),
      ducts: [duct],
    })
    const fire = resultsOf(facing('own-house')).cautions.find(({ code }) => code === 'duct-fire')
    expect(fire).toMatchObject({ kind: 'life-safety', surfaces: ['wall-2'] })
    expect(fire?.text).toMatch(/^Wall 2: .* fire and smoke/)
    expect(resultsOf(facing('outdoors')).cautions.map(({ code }) => code)).not.toContain('duct-fire')
  })
})
