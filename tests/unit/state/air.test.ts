import { describe, expect, it } from 'vitest'
import type { Project } from '#project/project.ts'
import type { Command } from '#state/command.ts'
import {
  addDuct,
  changeDuct,
  deleteDuct,
  makeDuctIn,
  setAirtightness,
  setLeaks,
  setPeople,
  setReverberation,
} from '#state/commands/air.ts'
import { addBox, changeBox, deleteBox, moveBox } from '#state/commands/boxes.ts'
import { addReceiver, addSource } from '#state/commands/targets.ts'
import { SILENCER_PRESETS, usualBox, usualDuct, usualHole } from '#state/usualAir.ts'
import { A_BOX, A_DUCT, A_SOURCE, aBedroom, applied, plainProject, refusalOf } from '../../support/anyProject.ts'

const plain = applied(plainProject(5000, 4000), addSource(A_SOURCE), addReceiver(aBedroom()))
const withDuct = applied(plain, addDuct('room-1', { ...A_DUCT, leadsTo: ['receiver-1'] }))
const box = { ...A_BOX, xMm: 2000, yMm: 2000 }
const withBox = applied(withDuct, addBox('scheme-1', { ...box, duct: 'duct-1' }))
const LINED = { ...A_DUCT.made, liningMm: 25, linedLengthMm: 3000 }

const ducts = (project: Project) => project.rooms[0]?.ducts ?? []
const scheme = (project: Project) => project.schemes[0]!

describe('a duct', () => {
  it('is added, changed and taken out, with what schemes say of it; its box stays and serves none', () => {
    const made = applied(withBox, makeDuctIn('scheme-1', 'duct-1', LINED))
    expect(scheme(made).ducts).toEqual({ 'duct-1': LINED })
    const changed = applied(made, changeDuct('room-1', 'duct-1', { widthMm: 200, name: 'Fresh air' }))
    expect(ducts(changed)[0]).toMatchObject({ widthMm: 200, name: 'Fresh air', id: 'duct-1' })
    const gone = applied(changed, deleteDuct('room-1', 'duct-1'))
    expect(ducts(gone)).toEqual([])
    expect(scheme(gone).ducts).toBeUndefined()
    expect(scheme(gone).boxes?.[0]).toMatchObject({ name: 'Silencer box', duct: null })
  })

  it('is lined no further than it goes when it is made shorter', () => {
    const lined = applied(withDuct, changeDuct('room-1', 'duct-1', { made: LINED }))
    const short = applied(lined, changeDuct('room-1', 'duct-1', { lengthMm: 1200 }))
    expect(ducts(short)[0]?.made.linedLengthMm).toBe(1200)
  })

  it('stays as it stands in a scheme again, without leaving a trace', () => {
    const made = applied(withDuct, makeDuctIn('scheme-1', 'duct-1', LINED))
    expect(scheme(applied(made, makeDuctIn('scheme-1', 'duct-1', null)))).toEqual(scheme(withDuct))
  })
})

describe('leaks, airtightness, people and reverberation', () => {
  const hole = { id: 'hole-1', name: 'Cable', diameterMm: 20, count: 2 }

  it('are said of one surface in one scheme, and unsaid again', () => {
    const said = applied(plain, setLeaks('scheme-1', 'wall-1', { gapMm: 2, holes: [hole] }))
    expect(scheme(said).leaks).toEqual({ 'wall-1': { gapMm: 2, holes: [hole] } })
    expect(scheme(applied(said, setLeaks('scheme-1', 'wall-1', null)))).toEqual(scheme(plain))
  })

  it('are kept and forgotten', () => {
    const said = applied(
      plain,
      setPeople('room-1', 4),
      setReverberation('room-1', 0.3),
      setAirtightness('scheme-1', 'poor'),
    )
    expect(said.rooms[0]).toMatchObject({ people: 4, reverberationS: 0.3 })
    expect(scheme(said).airtightness).toBe('poor')
    const unsaid = applied(said, setPeople('room-1', null), setReverberation('room-1', null))
    expect(unsaid.rooms[0]).toEqual(plain.rooms[0])
  })
})

describe('a silencer box', () => {
  it('is added to one scheme, moved, turned, hung and taken out again', () => {
    const moved = applied(withBox, moveBox('scheme-1', 'box-1', 100, -50))
    expect(scheme(moved).boxes?.[0]).toMatchObject({ xMm: 2100, yMm: 1950, duct: 'duct-1' })
    const turned = applied(moved, changeBox('scheme-1', 'box-1', { angleDeg: 270, undersideMm: 0 }))
    expect(scheme(turned).boxes?.[0]).toMatchObject({ angleDeg: -90, undersideMm: 0 })
    expect(scheme(applied(turned, deleteBox('scheme-1', 'box-1'))).boxes).toBeUndefined()
  })
})

describe('what cannot be is refused with a sentence, and the document stays', () => {
  it.each<[string, Project, Command, string]>([
    [
      'a duct of no width',
      plain,
      addDuct('room-1', { ...A_DUCT, widthMm: 0 }),
      '"Supply": its diameter has to be more than 0; the drawing was kept as it was.',
    ],
    [
      'a duct through a surface that is not there',
      plain,
      addDuct('room-1', { ...A_DUCT, surface: 'wall-9' }),
      '"Supply" goes through "wall-9", which is no surface of Room; choose one of its walls, its ceiling or its floor.',
    ],
    [
      'a duct to nobody',
      plain,
      addDuct('room-1', { ...A_DUCT, leadsTo: ['receiver-9'] }),
      '"Supply" leads to "receiver-9", and there is no such receiver; add it under Targets first.',
    ],
    [
      'a lining longer than its duct',
      withDuct,
      makeDuctIn('scheme-1', 'duct-1', { ...LINED, linedLengthMm: 4000 }),
      '"Supply": 4000 mm of it would be lined and it is only 3000 mm long; type a shorter lined length, or the whole length first.',
    ],
    [
      'half a bend',
      withDuct,
      changeDuct('room-1', 'duct-1', { made: { ...A_DUCT.made, bends: 1.5 } }),
      '"Supply": its bends have to be a whole number from 0 to 20; it was kept as it was.',
    ],
    [
      'a silencer that makes it louder',
      withDuct,
      makeDuctIn('scheme-1', 'duct-1', {
        ...LINED,
        silencer: {
          name: 'S',
          insertionLossDb: { 63: null, 125: -3, 250: 10, 500: 10, 1000: 10, 2000: 10, 4000: null },
        },
      }),
      '"Supply": the insertion loss at 125 Hz has to be a number from 0 to 80 dB; leave it empty where nothing is stated.',
    ],
    [
      'a duct that is gone',
      plain,
      makeDuctIn('scheme-1', 'duct-1', LINED),
      'There is no duct "duct-1" in this project any more.',
    ],
    [
      'half a person',
      plain,
      setPeople('room-1', 1.5),
      'People have to be a whole number from 0 to 200; the former number was kept.',
    ],
    [
      'a room that does not ring',
      plain,
      setReverberation('room-1', 0),
      'A reverberation time has to be more than 0 s and at most 20 s; the former one was kept.',
    ],
    [
      'a gap less than nothing',
      plain,
      setLeaks('scheme-1', 'wall-1', { gapMm: -1, holes: [] }),
      'The gap cannot be less than 0; the drawing was kept as it was.',
    ],
    [
      'no hole at all',
      plain,
      setLeaks('scheme-1', 'wall-1', { holes: [{ id: 'hole-1', name: 'Cable', diameterMm: 20, count: 0 }] }),
      '"Cable": how many there are has to be a whole number from 1 to 1000; it was kept as it was.',
    ],
    [
      'a hole larger than its wall',
      plain,
      setLeaks('scheme-1', 'wall-1', { holes: [{ id: 'hole-1', name: 'Cable', diameterMm: 9000, count: 1 }] }),
      '"Cable": with it 63.62 m² would be open and all of Wall 1 is 12.00 m²; type a smaller diameter, or fewer of them.',
    ],
    [
      'a duct larger than the surface it goes through',
      withDuct,
      changeDuct('room-1', 'duct-1', { shape: 'round', widthMm: 20000, heightMm: 20000 }),
      '"Supply" would be 314.16 m² clear and all of the ceiling is 20.00 m²; type a smaller diameter.',
    ],
    [
      'a gap larger than its ceiling',
      plain,
      setLeaks('scheme-1', 'ceiling-1', { gapMm: 5000, holes: [] }),
      'The gap round the ceiling would be 90.00 m² and all of the ceiling is 20.00 m²; type a narrower one.',
    ],
    [
      'leaks in a wall that is not there',
      plain,
      setLeaks('scheme-1', 'wall-9', { holes: [] }),
      'There is no surface "wall-9" in this project.',
    ],
    [
      'a box outside the room',
      plain,
      addBox('scheme-1', { ...box, xMm: 9000 }),
      '"Silencer box" would lie outside Room; put it inside its walls.',
    ],
    [
      'a box for a duct of nobody',
      plain,
      addBox('scheme-1', { ...box, duct: 'duct-9' }),
      '"Silencer box" is to serve the duct "duct-9", which is not in Room; choose one that is, or none.',
    ],
    [
      'a box of no height',
      withBox,
      changeBox('scheme-1', 'box-1', { heightMm: 0 }),
      '"Silencer box": its height has to be more than 0; the drawing was kept as it was.',
    ],
    [
      'a box turned by no number',
      withBox,
      changeBox('scheme-1', 'box-1', { angleDeg: Number.NaN }),
      '"Silencer box": its angle has to be a number of degrees; it was kept as it was.',
    ],
    [
      'a box that is gone',
      plain,
      moveBox('scheme-1', 'box-1', 10, 10),
      'There is no silencer box "box-1" in this room any more.',
    ],
  ])('%s', (_, project, command, message) => {
    expect(refusalOf(project, command)).toBe(message)
  })
})

describe('what is offered first', () => {
  const room = plain.rooms[0]!

  it('can be built as it is, in either unit, and numbers its names', () => {
    for (const units of ['mm', 'ft-in'] as const) {
      const once = applied(plain, addDuct('room-1', usualDuct('supply', room, units)))
      const twice = applied(once, addDuct('room-1', usualDuct('supply', once.rooms[0]!, units)))
      expect(ducts(twice).map(({ name }) => name)).toEqual(['Supply duct', 'Supply duct 2'])
      const boxed = applied(once, addBox('scheme-1', usualBox(once.rooms[0]!, scheme(once), 2000, 2000, units)))
      expect(scheme(boxed).boxes?.[0]).toMatchObject({ name: 'Silencer box', duct: 'duct-1', undersideMm: 0 })
    }
    expect(usualHole([usualHole([])]).name).toBe('Cable hole 2')
  })

  it('has silencers from memory only, each with where its figures come from and none at its best', () => {
    expect(SILENCER_PRESETS.length).toBeGreaterThanOrEqual(3)
    for (const { source, insertionLossDb } of SILENCER_PRESETS) {
      expect(source.toLowerCase()).toMatch(/memory|own choice/)
      expect(insertionLossDb[63]).toBeLessThanOrEqual(15)
    }
  })
})
