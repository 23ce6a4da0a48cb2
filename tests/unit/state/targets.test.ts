import { describe, expect, it } from 'vitest'
import { sourcePreset } from '#analysis/presets.ts'
import type { Receiver } from '#analysis/target.ts'
import type { Project } from '#project/project.ts'
import { addDuct, setLeaks } from '#state/commands/air.ts'
import { changeScheme } from '#state/commands/changeScheme.ts'
import { changeOpening } from '#state/commands/openings.ts'
import { deleteCorner, insertCorner, startRectangle } from '#state/commands/outline.ts'
import { cutRoom, joinRooms } from '#state/commands/partitions.ts'
import { deleteRoom } from '#state/commands/rooms.ts'
import {
  addMeasured,
  addReceiver,
  addSource,
  changeReceiver,
  changeSource,
  deleteReceiver,
  deleteSource,
  hearSource,
} from '#state/commands/targets.ts'
import { moveWall } from '#state/commands/wall.ts'
import { sourceOf, usualReceiver, usualSourceOf } from '#state/usualTargets.ts'
import {
  A_DUCT,
  A_SOURCE,
  A_SPECTRUM,
  aBedroom,
  applied,
  fullProject,
  plainProject,
  refusalOf,
} from '../../support/anyProject.ts'

const plain = applied(plainProject(), addSource(A_SOURCE), addReceiver(aBedroom()))
const NOTHING = { 63: null, 125: null, 250: null, 500: null, 1000: null, 2000: null, 4000: null }

function receiver(project: Project, name = 'Bedroom'): Receiver {
  const found = project.receivers.find((one) => one.name === name)
  if (!found) throw new Error(`no receiver ${name}`)
  return found
}

const surfaces = ({ through }: Receiver) => through.map(({ surface }) => surface)

describe('sources and receivers', () => {
  it('let a receiver hear a source of the list in one step, and take one that is there already', () => {
    const preset = sourcePreset('band-amplified')
    if (!preset) throw new Error('no preset')
    const once = applied(plain, hearSource('receiver-1', sourceOf(preset)))
    expect(once.sources.map(({ name }) => name)).toEqual(['Drum kit', 'Amplified band rehearsal'])
    expect(receiver(once).source).toBe('source-2')
    const back = applied(
      once,
      changeReceiver('receiver-1', { source: 'source-1' }),
      hearSource('receiver-1', sourceOf(preset)),
    )
    expect(back.sources).toHaveLength(2)
    expect(receiver(back).source).toBe('source-2')
    expect(refusalOf(plain, hearSource('receiver-9', sourceOf(preset)))).toContain('There is no receiver')
  })

  it('are numbered where a name is taken, and a change to a name that is taken is refused', () => {
    const more = applied(plain, addReceiver(aBedroom()), addSource(A_SOURCE))
    expect(more.receivers.map(({ name }) => name)).toEqual(['Bedroom', 'Bedroom 2'])
    expect(more.sources.map(({ name }) => name)).toEqual(['Drum kit', 'Drum kit 2'])
    expect(refusalOf(more, changeReceiver('receiver-2', { name: ' Bedroom ' }))).toBe(
      'There is already "Bedroom" in this list; give this one another name.',
    )
  })

  it('bring the source with the receiver in one step, and take one that is there already', () => {
    const traffic = usualSourceOf('this-room')
    const [room] = plain.rooms
    if (!room) throw new Error('no room')
    const once = applied(plain, addReceiver(usualReceiver('this-room', room, plain), traffic))
    expect(once.sources.map(({ preset }) => preset)).toEqual([null, 'traffic-65'])
    expect(receiver(once, 'This room').source).toBe('source-2')
    const twice = applied(once, addReceiver(usualReceiver('this-room', room, once), traffic))
    expect(twice.sources).toEqual(once.sources)
  })

  it('lose their source with it, and ducts no longer lead to a receiver that is gone', () => {
    const led = applied(plain, addDuct('room-1', { ...A_DUCT, leadsTo: ['receiver-1'] }))
    expect(receiver(applied(led, deleteSource('source-1'))).source).toBeNull()
    const gone = applied(led, deleteReceiver('receiver-1'))
    expect(gone.receivers).toEqual([])
    expect(gone.rooms[0]?.ducts?.[0]?.leadsTo).toEqual([])
  })

  it('say that levels are measured once they are typed over a preset', () => {
    const preset = sourcePreset('drum-kit-hard')
    if (!preset) throw new Error('no preset')
    const kit = applied(plainProject(), addSource(sourceOf(preset)))
    expect(kit.sources[0]).toMatchObject({ basis: 'memory', sdDb: 5, shakes: true })
    const typed = applied(kit, changeSource('source-1', { levelsDb: A_SPECTRUM }))
    expect(typed.sources[0]).toMatchObject({ preset: 'drum-kit-hard', basis: 'measured', sdDb: 2 })
  })

  it('drop the preset of a limit that is typed, and the surfaces of a room that is left', () => {
    const preset = applied(plain, changeReceiver('receiver-1', { limitPreset: 'nc-bedroom' }))
    const typed = applied(preset, changeReceiver('receiver-1', { limit: { kind: 'dBA', levelDb: 30 } }))
    expect(receiver(typed).limitPreset).toBeNull()
    const cut = applied(
      plain,
      cutRoom('room-1', [2500, 0], [2500, 4000], {
        construction: 'block-dense-100',
        placement: 'middle',
        name: 'Wall',
      }),
    )
    expect(receiver(applied(cut, changeReceiver('receiver-1', { room: 'room-2' }))).through).toEqual([])
  })

  it.each<[string, Parameters<typeof changeReceiver>[1], string]>([
    [
      'a distance of 0',
      { place: { kind: 'outdoors', distanceMm: 0, atFacade: false } },
      '"Bedroom": its distance has to be more than 0, for in the open a level belongs to a distance; the former one was kept.',
    ],
    [
      'a distance of 0 to one surface',
      { through: [{ surface: 'wall-2', distanceMm: 0 }] },
      '"Bedroom", Wall 2: its distance has to be more than 0, for in the open a level belongs to a distance; the former one was kept.',
    ],
    [
      'zero absorption',
      { place: { kind: 'room', volumeM3: 30, furnishing: 'typed', absorptionM2: 0 } },
      '"Bedroom": its absorption has to be more than 0 m², for no room absorbs nothing; the former one was kept.',
    ],
    [
      'an absorption to be typed that is not',
      { place: { kind: 'room', volumeM3: 30, furnishing: 'typed', absorptionM2: null } },
      '"Bedroom": its absorption is to be typed and is missing; type it, or say that the room is furnished or bare.',
    ],
    [
      'no volume',
      { place: { kind: 'room', volumeM3: 0, furnishing: 'bare', absorptionM2: null } },
      '"Bedroom": the volume of its room has to be more than 0 m³; the former one was kept.',
    ],
    [
      'a source nobody knows',
      { source: 'source-9' },
      '"Bedroom": there is no source "source-9" in this project; add it first, or choose another.',
    ],
    [
      'a surface of no room',
      { through: [{ surface: 'wall-9' }] },
      '"Bedroom": "wall-9" is no surface of Room; choose among its walls, its ceiling and its floor.',
    ],
    [
      'a surface twice',
      { through: [{ surface: 'wall-1' }, { surface: 'wall-1' }] },
      '"Bedroom", Wall 1: it is named twice; once is enough.',
    ],
    [
      'a curve beyond all curves',
      { limit: { kind: 'NC', index: 90 } },
      '"Bedroom": its limit has to be from NC-0 to NC-80; the former value was kept.',
    ],
    [
      'a limit without a level',
      { limit: { kind: 'dBA', levelDb: Number.NaN } },
      '"Bedroom": its limit has to be from 0 to 120 dBA; the former value was kept.',
    ],
    [
      'too much of a screen',
      { through: [{ surface: 'wall-1', screenedDb: 60 }] },
      '"Bedroom", Wall 1: what screens it has to be from 0 to 40 dB; the former value was kept.',
    ],
    ['no name', { name: ' ' }, 'A receiver needs a name; type one.'],
  ])('refuse %s', (_, patch, message) => {
    expect(refusalOf(plain, changeReceiver('receiver-1', patch))).toBe(message)
  })

  it('refuse levels that are none, and keep what stands; no surface at all is stored', () => {
    const levelsDb = { ...A_SPECTRUM, 125: Number.NaN }
    expect(refusalOf(plain, changeSource('source-1', { levelsDb }))).toBe(
      '"Drum kit": its level at 125 Hz has to be a number from -50 to 200 dB; leave it empty where it is not known.',
    )
    expect(refusalOf(plain, addMeasured('receiver-1', { when: 'before', name: 'Before', differenceDb: NOTHING }))).toBe(
      '"Before" has no value in any octave; type at least one.',
    )
    expect(receiver(applied(plain, changeReceiver('receiver-1', { through: [] }))).through).toEqual([])
  })
})

describe('what is heard through a wall', () => {
  it('is heard through both pieces where a corner is put in, and through the one left where it goes', () => {
    const split = applied(plain, insertCorner('room-1', 'wall-1', 2000))
    expect(surfaces(receiver(split))).toEqual(['wall-1', 'wall-5', 'ceiling-1'])
    const corner = split.rooms[0]?.walls[0]?.to ?? ''
    expect(surfaces(receiver(applied(split, deleteCorner('room-1', corner))))).toEqual(['wall-1', 'ceiling-1'])
  })

  it('is heard through the wall that runs on over the place of one that goes', () => {
    const split = applied(plain, insertCorner('room-1', 'wall-1', 2000))
    const second = applied(split, changeReceiver('receiver-1', { through: [{ surface: 'wall-5' }] }))
    const corner = split.rooms[0]?.walls[0]?.to ?? ''
    expect(surfaces(receiver(applied(second, deleteCorner('room-1', corner))))).toEqual(['wall-1'])
  })

  it('stays as it was where a wall slides out of line with its neighbour and back', () => {
    const split = applied(plain, insertCorner('room-1', 'wall-1', 2000))
    for (const through of [[{ surface: 'wall-1' }], [{ surface: 'wall-5' }]]) {
      const one = applied(split, changeReceiver('receiver-1', { through }))
      const out = applied(one, moveWall('room-1', 'wall-5', 300))
      expect(out.rooms[0]?.walls).toHaveLength(6)
      expect(applied(out, moveWall('room-1', 'wall-5', -300)).receivers).toEqual(one.receivers)
    }
  })

  it('is heard through all walls of an outline drawn anew, whichever it was', () => {
    const third = applied(
      plain,
      changeReceiver('receiver-1', { through: [{ surface: 'wall-3' }, { surface: 'ceiling-1' }] }),
    )
    const drawn = applied(third, startRectangle('room-1', 3000, 3000))
    const walls = drawn.rooms[0]?.walls.map(({ id }) => id) ?? []
    expect(surfaces(receiver(drawn))).toEqual([...walls, 'ceiling-1'])
    const above = applied(plain, changeReceiver('receiver-1', { through: [{ surface: 'ceiling-1' }] }))
    expect(surfaces(receiver(applied(above, startRectangle('room-1', 3000, 3000))))).toEqual(['ceiling-1'])
  })

  it('keeps the gap of a wall that is split, and leaves its holes where they are', () => {
    const hole = { id: 'hole-1', name: 'Cable', diameterMm: 20, count: 1 }
    const leaking = applied(plain, setLeaks('scheme-1', 'wall-1', { gapMm: 1, holes: [hole] }))
    const split = applied(leaking, insertCorner('room-1', 'wall-1', 2000))
    expect(split.schemes[0]?.leaks).toEqual({
      'wall-1': { gapMm: 1, holes: [hole] },
      'wall-5': { gapMm: 1, holes: [] },
    })
    const corner = split.rooms[0]?.walls[0]?.to ?? ''
    expect(applied(split, deleteCorner('room-1', corner)).schemes[0]?.leaks).toEqual(leaking.schemes[0]?.leaks)
    const second = applied(split, setLeaks('scheme-1', 'wall-5', { holes: [hole] }))
    expect(applied(second, deleteCorner('room-1', corner)).schemes[0]?.leaks).toEqual({
      'wall-1': { gapMm: 1, holes: [hole, { ...hole, id: 'hole-1-2' }] },
    })
  })
})

describe('a room that is cut in two', () => {
  const cut = { construction: 'block-dense-100', placement: 'middle', name: 'Wall' } as const
  const all = applied(
    plain,
    changeReceiver('receiver-1', {
      through: ['wall-1', 'wall-2', 'wall-4', 'ceiling-1'].map((surface) => ({ surface })),
    }),
    addDuct('room-1', { ...A_DUCT, surface: 'wall-2', leadsTo: ['receiver-1'] }),
    addDuct('room-1', { ...A_DUCT, name: 'Return', leadsTo: ['receiver-1'] }),
  )
  const two = applied(all, cutRoom('room-1', [2500, 0], [2500, 4000], cut))

  it('is heard from both, each through its own surfaces, and its ducts lead on', () => {
    const [first, second] = two.rooms
    const own = (room: typeof first) => new Set([...(room?.walls ?? []), room?.ceiling].map((facts) => facts?.id))
    expect(two.receivers.map(({ name, room }) => [name, room])).toEqual([
      ['Bedroom', 'room-1'],
      ['Bedroom 2', 'room-2'],
    ])
    expect(surfaces(receiver(two)).every((id) => own(first).has(id))).toBe(true)
    expect(surfaces(receiver(two, 'Bedroom 2')).every((id) => own(second).has(id))).toBe(true)
    expect(surfaces(receiver(two))).toHaveLength(3)
    expect(surfaces(receiver(two, 'Bedroom 2'))).toHaveLength(3)
    const beyond = two.rooms.flatMap((room) => room.ducts ?? []).find(({ surface }) => surface === 'wall-2')
    expect(beyond?.leadsTo).toEqual([beyond && two.rooms[0]?.ducts?.includes(beyond) ? 'receiver-1' : 'receiver-2'])
  })

  it('is one receiver again when the rooms are joined, with all its surfaces', () => {
    const joined = applied(two, joinRooms('partition-1'))
    expect(joined.receivers).toEqual(all.receivers)
    expect(joined.rooms[0]?.ducts?.toSorted((a, b) => a.id.localeCompare(b.id))).toEqual(all.rooms[0]?.ducts)
  })

  it('keeps two receivers that say different things', () => {
    const differing = applied(two, changeReceiver('receiver-2', { limit: { kind: 'NC', index: 20 } }))
    const joined = applied(differing, joinRooms('partition-1'))
    expect(joined.receivers.map(({ name, room }) => [name, room])).toEqual([
      ['Bedroom', 'room-1'],
      ['Bedroom 2', 'room-1'],
    ])
    expect(surfaces(receiver(joined, 'Bedroom 2'))).toHaveLength(3)
  })

  it('takes its receivers along when one of the rooms goes', () => {
    const one = applied(two, deleteRoom('room-2'))
    expect(one.receivers.map(({ name }) => name)).toEqual(['Bedroom'])
  })
})

describe('a change of a scheme', () => {
  it('is refused where it speaks of what is not there any more', () => {
    const change = { openings: { 'opening-7': { type: 'door-solid-core', seal: 'good' } } } as const
    expect(refusalOf(plain, changeScheme('scheme-1', change, 'hang a door'))).toBe(
      'There is no opening "opening-7" in this project any more; choose again what to do.',
    )
    expect(refusalOf(plain, changeScheme('scheme-9', {}, 'nothing'))).toBe(
      'There is no scheme "scheme-9" in this project.',
    )
  })
})

describe('an opening that becomes one of another kind', () => {
  it('loses what cannot stand in it, as it stands and in schemes', () => {
    const project = fullProject()
    const room = project.rooms.find(({ openings }) => openings.length > 0)
    const window = applied(project, changeOpening(room?.id ?? '', 'opening-1', { kind: 'window' }))
    const opening = window.rooms.flatMap(({ openings }) => openings)[0]
    expect(opening).toMatchObject({ kind: 'window' })
    expect(opening).not.toHaveProperty('made')
    expect(window.schemes[0]).not.toHaveProperty('openings')
  })
})
