import { describe, expect, it } from 'vitest'
import type { SilencerBox } from '#analysis/scheme.ts'
import type { Point } from '#geometry/polygon.ts'
import type { Project } from '#project/project.ts'
import type { Command } from '#state/command.ts'
import { addBox } from '#state/commands/boxes.ts'
import { createViewStore, type Thing } from '#state/view.ts'
import { ADD_GROUPS, addSentence } from '#ui/canvas/addWords.ts'
import { contextVerbs } from '#ui/canvas/contextVerbs.ts'
import type { DragSetting } from '#ui/canvas/drags.ts'
import { handlesOf, thingAt } from '#ui/canvas/hitThings.ts'
import { addedThing, placeAt, placesInMiddle, whereOf } from '#ui/canvas/placing.ts'
import { boxesOf, movedBy, planRoom, takenAway } from '#ui/canvas/planRoom.ts'
import type { Press } from '#ui/canvas/pointer.ts'
import { handleDrag, laid, thingDrag } from '#ui/canvas/thingDrags.ts'
import { furnitureRing, thingShape, thingsOf } from '#ui/canvas/thingShapes.ts'
import { projectThingLabel, thingSpoken } from '#ui/canvas/thingWords.ts'
import { A_BOX, applied, plainProject } from '../../../support/anyProject.ts'

const BOX: Thing = { kind: 'box', id: 'box-1' }
const project = applied(plainProject(6000, 4000), addBox('scheme-1', { ...A_BOX, xMm: 3000, yMm: 2000 }))
const room = planRoom(project.rooms[0]!, project.schemes[0]!)
const setting = (start: Point): DragSetting => ({ room, units: 'mm', scale: 0.1, start, clear: [], others: [] })
const press = (at: Point, free = false): Press => ({ at, free, place: [0, 0], adds: false, isTouch: false })

function boxAfter(command: Command | undefined | null, of: Project = project): SilencerBox | undefined {
  return command ? applied(of, command).schemes[0]?.boxes?.[0] : undefined
}

describe('the room with what its scheme puts into it', () => {
  it('is the same object while both are the same', () => {
    expect(planRoom(project.rooms[0]!, project.schemes[0]!)).toBe(room)
    expect(planRoom(project.rooms[0]!, { ...project.schemes[0]! })).not.toBe(room)
    expect(boxesOf(project.rooms[0]!)).toEqual([])
  })

  it('shows no box of another room or scheme', () => {
    expect(boxesOf(planRoom({ ...project.rooms[0]!, id: 'room-9' }, project.schemes[0]!))).toEqual([])
    expect(thingShape(planRoom(project.rooms[0]!, { ...project.schemes[0]!, boxes: [] }), BOX)).toBeNull()
  })
})

describe('a silencer box under the hand', () => {
  it('is met inside it and walked by keys, and called by its name', () => {
    expect(thingAt(room, [3000, 2000], 50)).toEqual(BOX)
    expect(thingAt(room, [500, 500], 50)).toBeNull()
    expect(thingsOf(room)).toContainEqual(BOX)
    expect(projectThingLabel(project, room, BOX)).toBe('Silencer box')
    expect(thingSpoken(project, room, BOX)).toBe('Silencer box, selected. Arrow keys move it, R turns it.')
  })

  it('has a handle at every corner and one to turn it by', () => {
    expect(handlesOf(room, BOX, 0.1).map(({ handle }) => handle.kind)).toEqual(['ring', 'ring', 'ring', 'ring', 'turn'])
  })

  it('moves, turns and is sized in its scheme', () => {
    const moved = thingDrag(setting([3000, 2000]), BOX)?.(press([3500, 1700], true))
    expect(boxAfter(moved?.command)).toMatchObject({ xMm: 3500, yMm: 1700 })
    const turned = handleDrag(setting([3000, 1500]), BOX, { kind: 'turn' })?.(press([3600, 2010]))
    expect(boxAfter(turned?.command)?.angleDeg).toBe(90)
    const sized = boxAfter(
      handleDrag(setting([3450, 2200]), BOX, { kind: 'ring', index: 2 })?.(press([3650, 2300])).command,
    )
    expect([sized?.widthMm, sized?.depthMm]).toEqual([1100, 500])
    expect(sized && furnitureRing(sized)[0]?.map(Math.round)).toEqual([2550, 1800])
  })

  it('moves by keys and goes by Delete, in its scheme alone', () => {
    expect(boxAfter(movedBy(room, BOX, 10, -10))).toMatchObject({ xMm: 3010, yMm: 1990 })
    expect(boxAfter(takenAway(room, BOX))).toBeUndefined()
    expect(boxAfter(laid(room, BOX, { angleDeg: 30 }))?.angleDeg).toBe(30)
  })

  it('can be turned, doubled and deleted from the menu', () => {
    const view = createViewStore({ roomId: 'room-1', schemeId: 'scheme-1' }).getState()
    const { title, verbs } = contextVerbs({ project, room, result: null, view }, { kind: 'thing', thing: BOX }, [0, 0])
    expect(title).toBe('Silencer box')
    expect(verbs.map(({ label }) => label)).toEqual(['Rotate 90°', 'Duplicate', 'Delete', 'Select'])
    const [, copy] = verbs
    const doubled = copy?.act.kind === 'run' ? applied(project, copy.act.command) : project
    expect(doubled.schemes[0]?.boxes?.map(({ name }) => name)).toEqual(['Silencer box', 'Silencer box 2'])
    expect(addedThing(doubled, whereOf(room), 'box')).toEqual({ kind: 'box', id: 'box-2' })
  })
})

describe('a new silencer box', () => {
  it('is one of the verbs of Add, with a sentence that says what a press does', () => {
    const verbs = ADD_GROUPS.flatMap((group) => group.verbs)
    expect(verbs.find(({ label }) => label === 'Silencer box')?.adding).toEqual({ kind: 'box' })
    expect(addSentence({ kind: 'box' }, false, false)).toBe(
      'Press: the silencer box stands there. Enter: in the middle of the room. Escape: leave.',
    )
  })

  it('stands where it is put, or in the middle by key', () => {
    const place = {
      room: planRoom(project.rooms[0]!, { ...project.schemes[0]!, boxes: [] }),
      result: null,
      units: 'mm',
    } as const
    const empty = { ...project, schemes: project.schemes.map((scheme) => ({ ...scheme, boxes: [] })) }
    expect(boxAfter(placeAt(place, { kind: 'box' }, [1200, 900]), empty)).toMatchObject({ xMm: 1200, yMm: 900 })
    const [byKey] = placesInMiddle(place, { kind: 'box' }, [])
    expect(boxAfter(byKey, empty)).toMatchObject({ xMm: 3000, yMm: 2000 })
  })
})
