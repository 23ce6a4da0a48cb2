import { describe, expect, it } from 'vitest'
import type { Furniture, Room } from '#analysis/room.ts'
import type { Point } from '#geometry/polygon.ts'
import { type Drag, type DragSetting, wallDrag } from '#ui/canvas/drags.ts'
import { duplicate, freeName } from '#ui/canvas/duplicate.ts'
import { handleAt, handlesOf, thingAt } from '#ui/canvas/hitThings.ts'
import { openingMeasures, ringMeasures } from '#ui/canvas/measures.ts'
import { openingDrag, openingEndDrag } from '#ui/canvas/openingDrags.ts'
import { rectangle } from '#ui/canvas/placing.ts'
import type { Press } from '#ui/canvas/pointer.ts'
import { roomMiddle } from '#ui/canvas/roomMiddle.ts'
import { selectionAfter } from '#ui/canvas/selecting.ts'
import { ringPlaces, snapPoint } from '#ui/canvas/snap.ts'
import { snapShift } from '#ui/canvas/snapShape.ts'
import { handleDrag, thingDrag } from '#ui/canvas/thingDrags.ts'
import { furnitureRing, wallRun } from '#ui/canvas/thingShapes.ts'
import { openSample } from '../../../support/samples.ts'

const garage = openSample('garage')
const empty = garage.rooms[0]
if (!empty) throw new Error('no room')
const desk: Furniture = {
  id: 'furniture-1',
  kind: 'desk',
  name: 'Desk',
  xMm: 2000,
  yMm: 3000,
  widthMm: 1200,
  depthMm: 600,
  heightMm: 740,
  angleDeg: 0,
  clearance: { frontMm: 0, backMm: 0, leftMm: 0, rightMm: 0 },
}
const room: Room = { ...empty, furniture: [desk] }
const project = { ...garage, rooms: [room] }

const setting = (start: Point): DragSetting => ({ room, units: 'mm', scale: 0.1, start, clear: [], others: [] })
const press = (at: Point, free = false): Press => ({ at, free, place: [0, 0], adds: false, isTouch: false })
/** The room after a drag was let go at a place. */
function dropped(drag: Drag | null, at: Point, free = false): Room {
  const outcome = drag?.(press(at, free)).command.apply(project)
  if (!outcome?.ok || !outcome.value.rooms[0])
    throw new Error(outcome && !outcome.ok ? outcome.error.message : 'no drag')
  return outcome.value.rooms[0]
}

describe('what a press meets', () => {
  it('is the small thing before the large one', () => {
    expect(thingAt(room, [2000, 3000], 50)).toEqual({ kind: 'furniture', id: 'furniture-1' })
    const under: Room = { ...room, heights: [{ id: 'height-9', xMm: 2000, yMm: 3000, heightMm: 2400, floorMm: 0 }] }
    expect(thingAt(under, [2010, 3000], 50)).toEqual({ kind: 'height', id: 'height-9' })
    expect(thingAt(room, [500, 3000], 50)).toBeNull()
  })

  it('is a handle only of what is selected', () => {
    const handles = handlesOf(room, { kind: 'furniture', id: 'furniture-1' }, 0.1)
    expect(handleAt(handles, [2600, 2700], 60)).toEqual({ kind: 'ring', index: 1 })
    expect(handleAt(handles, [2000, 2700 - 260], 60)).toEqual({ kind: 'turn' })
    expect(handlesOf(room, null, 0.1)).toEqual([])
  })

  it('is the opening before its wall, and the wall a little past the opening', () => {
    const door = room.openings[0]!
    const [from, to] = handlesOf(room, { kind: 'opening', id: door.id }, 0.035).map(({ at }) => at)
    const past = (mm: number): Point => {
      const width = Math.hypot(to![0] - from![0], to![1] - from![1])
      return [to![0] + ((to![0] - from![0]) * mm) / width, to![1] + ((to![1] - from![1]) * mm) / width]
    }
    expect(thingAt(room, past(-100), 600)).toEqual({ kind: 'opening', id: door.id })
    expect(thingAt(room, past(200), 600)).toEqual({ kind: 'opening', id: door.id })
    expect(thingAt(room, past(500), 600)).toBeNull()
  })

  it('leaves the middle of what is small on the screen to move it by, and both ends to widen it by', () => {
    const door = room.openings[0]!
    const handles = handlesOf(room, { kind: 'opening', id: door.id }, 0.035)
    const [from, to] = [handles[0]!.at, handles[1]!.at]
    const along = (share: number): Point => [from[0] + share * (to[0] - from[0]), from[1] + share * (to[1] - from[1])]
    const reach = 2 * door.widthMm
    expect(handleAt(handles, along(0.5), reach)).toBeNull()
    expect(handleAt(handles, along(0.75), reach)).toBeNull()
    expect(handleAt(handles, along(0.95), reach)).toEqual({ kind: 'end', end: 'to' })
    expect(handleAt(handles, along(-0.4), reach)).toEqual({ kind: 'end', end: 'from' })
  })

  it('lets go of walls and corners when a thing is picked, and goes to another room with nothing selected', () => {
    const view = { roomId: 'room-1', surfaceIds: ['wall-1'], cornerId: 'corner-1', thing: null }
    const thing = { kind: 'drop', id: 'drop-1' } as const
    expect(selectionAfter(view, { kind: 'thing', thing }, false)).toEqual({ thing, surfaceIds: [], cornerId: null })
    expect(selectionAfter(view, { kind: 'room', id: 'room-2' }, false)).toMatchObject({
      roomId: 'room-2',
      surfaceIds: [],
    })
  })
})

describe('an opening in the hand', () => {
  // Side door in wall 2: 812.8 wide, 4673.6 from corner 2, on a wall 6096 long.
  const door = (in_: Room) => in_.openings.find(({ id }) => id === 'opening-2')

  it('slides along its wall, on the grid, and stops at its end', () => {
    const drag = openingDrag(setting([3657.6, 5000]), 'opening-2')
    expect(door(dropped(drag, [9999, 4502]))?.fromMm).toBe(4180)
    expect(door(dropped(drag, [3657.6, 9999]))?.fromMm).toBeCloseTo(6096 - 812.8, 6)
    expect(door(dropped(drag, [3657.6, 4502], true))?.fromMm).toBe(4176)
  })

  it('is held by the middle of its wall', () => {
    const drag = openingDrag(setting([3657.6, 4673.6]), 'opening-2')
    expect(door(dropped(drag, [3657.6, (6096 - 812.8) / 2 + 40]))?.fromMm).toBeCloseTo((6096 - 812.8) / 2, 6)
  })

  it('keeps its other end where an end is moved', () => {
    const moved = door(dropped(openingEndDrag(setting([3657.6, 4673.6]), 'opening-2', 'from'), [3657.6, 4500]))
    expect(moved?.fromMm).toBe(4500)
    expect((moved?.fromMm ?? 0) + (moved?.widthMm ?? 0)).toBeCloseTo(4673.6 + 812.8, 6)
  })

  it('is measured to both ends of its wall', () => {
    const run = wallRun(room, 'wall-2')
    if (!run) throw new Error('no wall')
    expect(openingMeasures(run, 1000, 900).map(({ lengthMm }) => Math.round(lengthMm))).toEqual([1000, 4196])
  })
})

describe('furniture in the hand', () => {
  const piece = { kind: 'furniture', id: 'furniture-1' } as const

  it('comes to lie against a wall within reach, and in its corner', () => {
    const moved = dropped(thingDrag(setting([2000, 3000]), piece), [640, 330]).furniture[0]
    expect([moved?.xMm, moved?.yMm]).toEqual([600, 300])
  })

  it('turns in steps of 15 degrees, with Alt by single ones', () => {
    const drag = handleDrag(setting([2000, 2440]), piece, { kind: 'turn' })
    expect(dropped(drag, [2600, 3010]).furniture[0]?.angleDeg).toBe(90)
    expect(dropped(drag, [2600, 3100], true).furniture[0]?.angleDeg).toBe(99)
  })

  it('is sized by a corner while the opposite one stays', () => {
    const drag = handleDrag(setting([2600, 3300]), piece, { kind: 'ring', index: 2 })
    const sized = dropped(drag, [2803, 3400]).furniture[0]
    expect([sized?.widthMm, sized?.depthMm]).toEqual([1400, 700])
    const corner = sized && furnitureRing(sized)[0]
    expect(corner?.map(Math.round)).toEqual([1400, 2700])
  })

  it('has a second one beside it under a name of its own', () => {
    const outcome = duplicate(project, project.rooms[0]!, piece)?.apply(project)
    expect(outcome?.ok && outcome.value.rooms[0]?.furniture.map(({ name }) => name)).toEqual(['Desk', 'Desk 2'])
    expect(freeName('Door 2', ['Door 2', 'Door 3'])).toBe('Door 4')
  })
})

describe('snapping', () => {
  it('moves a ring against one edge and leaves it where nothing is near', () => {
    const ring = rectangle([0, 0], [100, 100])
    const rest = {
      ring,
      edges: [
        [
          [500, -1000],
          [500, 1000],
        ] as const,
      ],
      tolerance: 20,
      step: 10,
      finest: 1,
      free: false,
    }
    expect(snapShift({ ...rest, shift: [388, 3] }).shift).toEqual([400, 0])
    expect(snapShift({ ...rest, shift: [203, 0] }).shift).toEqual([200, 0])
    expect(snapShift({ ...rest, shift: [388, 3], free: true }).shift).toEqual([388, 3])
  })

  it('holds a corner on middles of walls and on feet of perpendiculars', () => {
    const wall = rectangle([0, 0], [4000, 3000])
    const input = {
      tolerance: 60,
      step: 10,
      free: false,
      finest: 1,
      lines: [],
      places: ringPlaces([wall], [1234.5, 1000]),
    }
    expect(snapPoint({ ...input, at: [2030, 20] }).point).toEqual([2000, 0])
    expect(snapPoint({ ...input, at: [1250, 12] }).point).toEqual([1234.5, 0])
  })

  it('holds a wall in line with another room', () => {
    const other: Room = { ...empty, corners: empty.corners.map((corner) => ({ ...corner, yMm: corner.yMm + 7003 })) }
    const drag = wallDrag({ ...setting([1800, 6096]), others: [other] }, 'wall-3')
    expect(dropped(drag, [1800, 6980]).corners[2]?.yMm).toBeCloseTo(7003, 6)
  })
})

describe('places', () => {
  it('measures a thing to the two nearest edges', () => {
    const edges = [
      [
        [0, 0],
        [4000, 0],
      ] as const,
      [
        [0, 0],
        [0, 3000],
      ] as const,
      [
        [0, 3000],
        [4000, 3000],
      ] as const,
    ]
    expect(ringMeasures(rectangle([300, 200], [400, 400]), edges).map(({ lengthMm }) => lengthMm)).toEqual([200, 300])
  })

  it('finds the roomiest place of an L', () => {
    const points: Point[] = [
      [0, 0],
      [6000, 0],
      [6000, 2000],
      [4000, 2000],
      [4000, 6000],
      [0, 6000],
    ]
    const corners = points.map(([xMm, yMm], i) => ({ id: `corner-${i}`, xMm, yMm }))
    const [x, y] = roomMiddle({ ...room, corners }, null)
    expect(x).toBeLessThan(4000)
    expect(x).toBeGreaterThanOrEqual(1900)
    expect(y).toBeGreaterThanOrEqual(1900)
  })
})
