import { describe, expect, it } from 'vitest'
import { builtInCatalogue } from '#assemblies/catalogue.ts'
import type { Project } from '#project/project.ts'
import { readProject } from '#project/read.ts'
import { writeProject } from '#project/write.ts'
import type { Command } from '#state/command.ts'
import { addOpening, changeOpening } from '#state/commands/openings.ts'
import { makeOpening, makeOpeningIn } from '#state/commands/openingsMade.ts'
import { deleteRoom } from '#state/commands/rooms.ts'
import { copyScheme } from '#state/commands/schemes.ts'
import { deleteThing } from '#state/commands/things.ts'
import { usualOpening } from '#state/usualThings.ts'
import { anOpening, made } from '../../support/openings.ts'
import { openSample } from '../../support/samples.ts'

const garage = openSample('garage')
const roomId = garage.rooms[0]!.id
const [, door, window] = garage.rooms[0]!.openings
const schemeId = garage.schemes[0]!.id

function applied(project: Project, ...commands: readonly Command[]): Project {
  return commands.reduce((now, command) => {
    const outcome = command.apply(now)
    if (!outcome.ok) throw new Error(outcome.error.message)
    return outcome.value
  }, project)
}

function refusal(command: Command, project: Project = garage): string {
  const outcome = command.apply(project)
  if (outcome.ok) throw new Error('it was not refused')
  return outcome.error.message
}

describe('saying what fills an opening', () => {
  it('is kept in the room, written and read again, and can be taken back to not known', () => {
    const said = applied(garage, makeOpening(roomId, door!.id, made('door-solid-core', 'undercut')))
    expect(said.rooms[0]!.openings[1]!.made).toEqual({ type: 'door-solid-core', seal: 'undercut' })
    const read = readProject(writeProject(said), builtInCatalogue())
    expect(read.ok && read.value.project.rooms[0]!.openings).toEqual(said.rooms[0]!.openings)
    const unsaid = applied(said, makeOpening(roomId, door!.id, null))
    expect('made' in unsaid.rooms[0]!.openings[1]!).toBe(false)
  })

  it('stands in one scheme alone, and goes without a trace', () => {
    const pair = made('pair-solid-core', 'good', { second: { type: 'door-metal-filled', seal: 'worn' } })
    const put = applied(garage, makeOpeningIn(schemeId, door!.id, pair))
    expect(put.schemes[0]!.openings?.[door!.id]).toEqual(pair)
    expect(put.schemes[1]!.openings).toEqual(garage.schemes[1]!.openings)
    const read = readProject(writeProject(put), builtInCatalogue())
    expect(read.ok && read.value.project.schemes).toEqual(put.schemes)
    const gone = applied(put, makeOpeningIn(schemeId, door!.id, null))
    expect(gone.schemes[0]!.openings?.[door!.id]).toBeUndefined()
    const alone = applied(bare(), makeOpeningIn(schemeId, door!.id, pair), makeOpeningIn(schemeId, door!.id, null))
    expect('openings' in alone.schemes[0]!).toBe(false)
  })

  it('comes along with a copy of the scheme', () => {
    const put = applied(
      garage,
      makeOpeningIn(schemeId, door!.id, made('door-studio-set')),
      copyScheme(schemeId, 'Copy'),
    )
    expect(put.schemes.at(-1)!.openings?.[door!.id]?.type).toBe('door-studio-set')
  })

  it('is refused in a sentence where it cannot stand there', () => {
    const say = (what: Parameters<typeof made>) => refusal(makeOpening(roomId, door!.id, made(...what)))
    expect(say(['door-of-gold'])).toMatch(/no opening type "door-of-gold"; Side door was kept as it was/)
    expect(say(['window-pane-4'])).toMatch(/does not stand in a door; Side door was kept/)
    expect(say(['pair-solid-core', 'good', { second: { type: 'window-pane-4', seal: 'good' } }])).toMatch(
      /one leaf behind/,
    )
    expect(say(['pair-solid-core', 'good', { second: { type: 'pair-hollow-core', seal: 'good' } }])).toMatch(
      /single door/,
    )
    expect(say(['pair-solid-core', 'good', { second: { type: 'gone', seal: 'good' } }])).toMatch(
      /no opening type "gone"/,
    )
    expect(say(['door-solid-core', 'good', { panes: PANES }])).toMatch(/has no two panes to set/)
    const inWindow = (what: Parameters<typeof made>) => refusal(makeOpening(roomId, window!.id, made(...what)))
    expect(inWindow(['window-sash-4', 'undercut'])).toMatch(/no gap over the floor/)
    expect(inWindow(['window-pane-pair', 'good', { second: { type: 'door-solid-core', seal: 'good' } }])).toMatch(
      /only a door/,
    )
    expect(inWindow(['window-pane-pair', 'good', { panes: { ...PANES, gapMm: 0 } }])).toMatch(/4 to 600 mm/)
    const thin = { ...PANES, inner: { thicknessMm: 0.5, isLaminated: false } }
    expect(inWindow(['window-pane-pair', 'good', { panes: thin }])).toMatch(/2 to 60 mm thick/)
    const nan = { ...PANES, outer: { thicknessMm: Number.NaN, isLaminated: false } }
    expect(inWindow(['window-pane-pair', 'good', { panes: nan }])).toMatch(/2 to 60 mm thick/)
  })

  it('is refused where the opening, the room or the scheme is not there any more', () => {
    const what = made('door-solid-core')
    expect(refusal(makeOpening(roomId, 'opening-99', what))).toMatch(/no opening "opening-99"/)
    expect(refusal(makeOpening('room-99', door!.id, what))).toMatch(/no room "room-99"/)
    expect(refusal(makeOpeningIn('scheme-99', door!.id, what))).toMatch(/no scheme "scheme-99"/)
    expect(refusal(makeOpeningIn(schemeId, 'opening-99', what))).toMatch(/no opening "opening-99"/)
  })

  it('goes where the opening becomes another kind that cannot hold it, and stays where it can', () => {
    const turned = (type: string) =>
      applied(garage, makeOpening(roomId, door!.id, made(type)), changeOpening(roomId, door!.id, { kind: 'window' }))
    expect(turned('door-solid-core').rooms[0]!.openings[1]!.made).toBeUndefined()
    expect(turned('infill').rooms[0]!.openings[1]!.made?.type).toBe('infill')
  })
})

describe('an opening that is deleted', () => {
  it('takes along what schemes put into it, so that the next one does not inherit it', () => {
    const put = applied(garage, makeOpeningIn(schemeId, window!.id, made('plug')))
    const without = applied(put, deleteThing(roomId, { kind: 'opening', id: window!.id }))
    expect(without.schemes[0]!.openings?.[window!.id]).toBeUndefined()
    const room = without.rooms[0]!
    const again = applied(without, addOpening(roomId, usualOpening('window', room.walls[2]!.id, 100, 'mm', room)))
    const added = again.rooms[0]!.openings.at(-1)!
    expect(added.id).toBe(window!.id)
    expect(added.made).toBeUndefined()
    expect(again.schemes[0]!.openings?.[added.id]).toBeUndefined()
  })

  it('does so with its whole room', () => {
    const other = { ...garage.rooms[0]!, id: 'room-9', name: 'Other', openings: [anOpening({ id: 'opening-9' })] }
    const two: Project = { ...garage, rooms: [...garage.rooms, other] }
    const put = applied(two, makeOpeningIn(schemeId, 'opening-9', made('door-solid-core')), deleteRoom('room-9'))
    expect(put.schemes[0]!.openings?.['opening-9']).toBeUndefined()
  })
})

const PANES = {
  outer: { thicknessMm: 6, isLaminated: false },
  gapMm: 100,
  inner: { thicknessMm: 6.4, isLaminated: true },
}

/** The garage with nothing said of its openings in any scheme. */
function bare(): Project {
  return { ...garage, schemes: garage.schemes.map(({ openings: _, ...rest }) => rest) }
}
