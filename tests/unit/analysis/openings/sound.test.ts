import { describe, expect, it } from 'vitest'
import { openingMade } from '#analysis/openings/made.ts'
import {
  openingArea,
  openingContext,
  openingPerimeter,
  soundOfMade,
  soundOfOpening,
  wholeLoss,
} from '#analysis/openings/sound.ts'
import type { Duct, Opening, Room } from '#analysis/room.ts'
import type { Scheme } from '#analysis/scheme.ts'
import { anOpening, made } from '../../../support/openings.ts'
import { aRoom, aScheme, box, resultsOf } from '../../../support/rooms.ts'
import { CATALOGUE } from '../../../support/samples.ts'

const LINED = { 'wall-1': 'W14' }

function around(opening: Opening, scheme: Scheme = aScheme(LINED), change: Partial<Room> = {}) {
  const room = aRoom(box(0, 0, 4000, 3000), { openings: [opening], ...change })
  return { room, scheme, result: resultsOf(room, scheme), catalogue: CATALOGUE }
}

describe('what fills an opening', () => {
  const standing = anOpening({ made: made('door-hollow-core', 'worn') })

  it('is what the scheme puts in, else what stands there, else nothing anybody knows', () => {
    const chosen = made('pair-solid-core')
    expect(openingMade(standing, { openings: { 'opening-1': chosen } })).toBe(chosen)
    expect(openingMade(standing, { openings: { 'opening-2': chosen } })).toBe(standing.made)
    expect(openingMade(anOpening(), {})).toBeNull()
  })

  it('is not an id that every object has', () => {
    expect(openingMade(anOpening({ id: 'constructor' }), { openings: {} })).toBeNull()
  })
})

describe('the sound of an opening on the plan', () => {
  it('is not known while nobody has said what it is, and the sentence says where to', () => {
    const opening = anOpening()
    const sound = soundOfOpening(around(opening), opening)
    expect(sound.ok).toBe(false)
    if (!sound.ok) expect(sound.error).toMatch(/^Nobody has said what Door is.*say what this door is under Openings\.$/)
  })

  it('names the opening where a type cannot stand there', () => {
    const opening = anOpening({ made: made('window-pane-4') })
    const sound = soundOfOpening(around(opening), opening)
    expect(sound.ok ? '' : sound.error).toMatch(/^Door: "Single pane, 4 mm/)
  })

  it('takes the figure of the wall as the scheme builds it', () => {
    const opening = anOpening({ made: made('infill') })
    const bare = around(opening, aScheme())
    const lined = around(opening)
    const [before, after] = [bare, lined].map((place) => {
      const sound = soundOfOpening(place, opening)
      if (!sound.ok) throw new Error(sound.error)
      return sound.value.stc!
    })
    expect(after!).toBeGreaterThan(before!)
    const wall = lined.result.surfaces.find(({ id }) => id === 'wall-1')!.rating!
    expect(after).toBe(wall.stc)
  })

  it('counts the second door as far behind the first as the plan shows it, leaf to leaf', () => {
    const opening = anOpening({ lobby: { hinge: 'from', swing: 'in' }, made: made('pair-solid-core') })
    // W14 stands 146.05 mm before the wall; a leaf of 44.45 mm hangs flush with its face.
    expect(openingContext(around(opening), opening).pairGapMm).toBeCloseTo(146.05 - 44.45, 6)
    const bare = around(opening, aScheme())
    const sound = soundOfOpening(bare, opening)
    expect(sound.ok ? '' : sound.error).toMatch(/^Door: The two doors stand in one place/)
    expect(openingContext(around(anOpening()), anOpening()).pairGapMm).toBeNull()
  })

  it('counts the joint of two leaves, and a round vent as its circle', () => {
    expect(openingPerimeter(anOpening({ leaves: 'two' }))).toBe(2 * (900 + 2040) + 2040)
    const round = anOpening({ kind: 'vent', shape: 'round', widthMm: 150, heightMm: 150 })
    expect(openingArea(round)).toBeCloseTo(0.017671, 6)
    expect(openingPerimeter(round)).toBeCloseTo(471.239, 3)
    expect(openingArea(anOpening({ shape: 'round' }))).toBe(1.836)
  })

  it('takes the gap of worn seals into the whole', () => {
    const opening = anOpening({ made: made('door-metal-filled', 'worn') })
    const sound = soundOfOpening(around(opening), opening)
    if (!sound.ok) throw new Error(sound.error)
    const whole = wholeLoss(sound.value, opening)
    whole.forEach((loss, band) => {
      expect(loss).toBeLessThanOrEqual(sound.value.lossDb[band]!)
    })
    expect(whole[10]!).toBeLessThan(25)
  })

  it('asks for the duct a vent is served by', () => {
    const vent = anOpening({ kind: 'vent', name: 'Vent', widthMm: 200, heightMm: 200, made: made('vent-duct') })
    const none = soundOfOpening(around(vent), vent)
    expect(none.ok ? '' : none.error).toMatch(/^Vent is served by a duct, and no duct goes through its wall/)
    const withDuct = around(vent, aScheme(LINED), { ducts: [A_DUCT] })
    const sound = soundOfOpening(withDuct, vent)
    expect(sound.ok && sound.value.notes.map(({ code }) => code)).toContain('duct-counted-apart')
  })

  it('answers the same question with the same answer while a hand drags something else', () => {
    const opening = anOpening({ made: made('door-solid-core') })
    const place = around(opening)
    expect(soundOfOpening(place, opening)).toBe(soundOfOpening({ ...place }, opening))
    const other = soundOfMade(place, opening, made('door-solid-wood'))
    expect(other).not.toBe(soundOfOpening(place, opening))
  })
})

const A_DUCT: Duct = {
  id: 'duct-1',
  name: 'Supply',
  surface: 'wall-1',
  purpose: 'supply',
  shape: 'round',
  widthMm: 160,
  heightMm: 160,
  lengthMm: 3000,
  leadsTo: [],
  made: { liningMm: 0, linedLengthMm: 0, bends: 0, silencer: null },
}
