import { describe, expect, it } from 'vitest'
import { FURNITURE_KINDS } from '#analysis/room.ts'
import type { Project } from '#project/project.ts'
import type { Command } from '#state/command.ts'
import { deleteDiagonal, setDiagonal, squareToDiagonal } from '#state/commands/diagonals.ts'
import { addDrop, changeDrop } from '#state/commands/drops.ts'
import { addFurniture, changeFurniture } from '#state/commands/furniture.ts'
import { addCeilingPart, addHeight, changeHeight, setCeilingShape } from '#state/commands/heights.ts'
import { addObstacle, changeObstacle } from '#state/commands/obstacles.ts'
import { addOpening, changeOpening } from '#state/commands/openings.ts'
import { deleteCorner, drawOutline, insertCorner, moveCorner, setRoomHeight } from '#state/commands/outline.ts'
import { layFloorLevel, runThrough, takeOutObstacle } from '#state/commands/schemes.ts'
import { deleteThing, moveThing, moveThingCorner } from '#state/commands/things.ts'
import { addUnderlay, changeUnderlay } from '#state/commands/underlays.ts'
import { setWallLength } from '#state/commands/wall.ts'
import {
  usualCeilingPart,
  usualDrop,
  usualFurniture,
  usualHeight,
  usualObstacle,
  usualOpening,
} from '#state/usualThings.ts'
import { A_PICTURE, applied, plainProject, refusalOf } from '../../support/anyProject.ts'

const plain = plainProject(5000, 4000, 2400)
const room = plain.rooms[0]
if (!room) throw new Error('no room')

const square = (x: number, y: number, size: number) => [
  { xMm: x, yMm: y },
  { xMm: x + size, yMm: y },
  { xMm: x + size, yMm: y + size },
  { xMm: x, yMm: y + size },
]
const crossed = [square(0, 0, 500)[0]!, square(0, 0, 500)[1]!, square(0, 0, 500)[3]!, square(0, 0, 500)[2]!]
const door = usualOpening('door', 'wall-1', 1000, 'mm', room)
const drop = { ...usualDrop(square(500, 500, 800), room), name: 'Duct' }
const desk = usualFurniture('desk', 2500, 2000, 'mm', room)
const withDoor = applied(plain, addOpening('room-1', door))
const withDrop = applied(plain, addDrop('room-1', drop))
const withPier = applied(plain, addObstacle('room-1', usualObstacle(square(2000, 2000, 400), room)))

describe('what is offered first for furniture', () => {
  it('is in whole inches for a feet-inch project, the space round it too', () => {
    for (const kind of FURNITURE_KINDS) {
      const { widthMm, depthMm, heightMm, clearance } = usualFurniture(kind, 0, 0, 'ft-in', room)
      for (const length of [widthMm, depthMm, heightMm, ...Object.values(clearance)]) {
        expect(Math.abs(length / 25.4 - Math.round(length / 25.4)), kind).toBeLessThan(1e-9)
      }
    }
  })
})

describe('what cannot be is refused with a sentence, and the document stays', () => {
  it.each<[string, Project, Command, string]>([
    [
      'an opening wider than its wall',
      plain,
      addOpening('room-1', { ...door, widthMm: 5200, fromMm: 0 }),
      '"Door" would be 5200 mm wide and Wall 1 is 5000 mm long; make it narrower.',
    ],
    [
      'an opening past the end of its wall',
      withDoor,
      changeOpening('room-1', 'opening-1', { fromMm: 4500 }),
      '"Door" would reach 326 mm past the end of Wall 1; it can begin at 4174 mm at the most.',
    ],
    [
      'an opening taller than the room',
      withDoor,
      changeOpening('room-1', 'opening-1', { heightMm: 2500 }),
      '"Door" would reach up to 2500 mm and the ceiling there is at 2400 mm; make it lower.',
    ],
    [
      'an opening in another',
      withDoor,
      addOpening('room-1', { ...door, name: 'Side door', fromMm: 1500 }),
      '"Side door" would overlap "Door" in Wall 1; move it along the wall or make it narrower.',
    ],
    [
      'an opening of no width',
      plain,
      addOpening('room-1', { ...door, widthMm: 0 }),
      '"Door": its width has to be more than 0; the drawing was kept as it was.',
    ],
    [
      'an opening without a name',
      withDoor,
      changeOpening('room-1', 'opening-1', { name: ' ' }),
      'An opening needs a name; type one.',
    ],
    [
      'an opening in no wall',
      withDoor,
      changeOpening('room-1', 'opening-1', { wall: 'wall-9' }),
      '"Door" needs a wall of Room; choose one.',
    ],
    [
      'a drop above the ceiling',
      withDrop,
      changeDrop('room-1', 'drop-1', { undersideMm: 2400 }),
      'The underside of "Duct" would be at 2400 mm and the ceiling there is at 2400 mm; a drop hangs below it.',
    ],
    [
      'a drop boxed down to the floor',
      withDrop,
      changeDrop('room-1', 'drop-1', { boxBelowMm: 2100 }),
      'The box below "Duct" would be 2100 mm deep and only 2100 mm are under it; make the box less deep.',
    ],
    [
      'a ceiling below a drop',
      withDrop,
      setRoomHeight('room-1', 2000),
      'The underside of "Duct" would be at 2100 mm and the ceiling there is at 2000 mm; a drop hangs below it. If the height is right, lower "Duct" first.',
    ],
    [
      'a drop whose sides cross',
      plain,
      addDrop('room-1', { ...drop, corners: crossed }),
      'The sides of "Duct" would cross, touch or enclose nothing; move its corners so that they keep apart.',
    ],
    [
      'an obstacle outside the room',
      withPier,
      moveThing('room-1', { kind: 'obstacle', id: 'obstacle-1' }, 9000, 0),
      '"Column" would lie outside Room; put it inside its walls.',
    ],
    [
      'a corner dragged through an obstacle',
      withPier,
      moveThingCorner('room-1', { kind: 'obstacle', id: 'obstacle-1' }, 0, 2600, 2200),
      'The sides of "Column" would cross, touch or enclose nothing; move its corners so that they keep apart.',
    ],
    [
      'a lining of less than nothing',
      withPier,
      changeObstacle('room-1', 'obstacle-1', { liningMm: -1 }),
      '"Column": its lining cannot be less than 0; the drawing was kept as it was.',
    ],
    [
      'a ceiling part outside the room',
      plain,
      addCeilingPart('room-1', usualCeilingPart(square(-3000, 0, 800), room)),
      '"Ceiling part" would lie outside Room; put it inside its walls.',
    ],
    [
      'furniture of no size',
      plain,
      addFurniture('room-1', { ...desk, depthMm: 0 }),
      '"Desk": its depth has to be more than 0; the drawing was kept as it was.',
    ],
    [
      'furniture in the garden',
      plain,
      addFurniture('room-1', { ...desk, yMm: 12_000 }),
      '"Desk" would lie outside Room; put it inside its walls.',
    ],
    [
      'a height of nothing',
      plain,
      changeHeight('room-1', 'height-1', { heightMm: 0 }),
      'The height has to be more than 0; the drawing was kept as it was.',
    ],
    [
      'a height past 60 m',
      plain,
      setRoomHeight('room-1', 61_000),
      'The height has to be at most 60 m; check its unit.',
    ],
    [
      'the last height',
      plain,
      deleteThing('room-1', { kind: 'height', id: 'height-1' }),
      'Room needs at least one measured height; this one stays.',
    ],
    [
      'a wall of no length',
      plain,
      setWallLength('room-1', 'wall-1', 0, 'to'),
      'Wall 1: its length has to be more than 0; the drawing was kept as it was.',
    ],
    [
      'a wall shorter than its door is wide',
      withDoor,
      setWallLength('room-1', 'wall-1', 800, 'to'),
      'Wall 1 would be shorter than its opening "Door" is wide; it was kept as it was.',
    ],
    [
      'a corner put onto another',
      plain,
      moveCorner('room-1', 'corner-2', 0, 0),
      'Wall 1 would have no length left; move it less far, or delete one of its corners.',
    ],
    [
      'a corner in a doorway',
      withDoor,
      insertCorner('room-1', 'wall-1', 1200),
      'A new corner there would stand in "Door"; put it beside the opening, or move the opening first.',
    ],
    [
      'a diagonal along a wall',
      plain,
      setDiagonal('room-1', 'corner-1', 'corner-2', 5000),
      'A diagonal runs across the room between two corners that no wall joins; choose two others.',
    ],
    [
      'a diagonal no shape has',
      applied(plain, setDiagonal('room-1', 'corner-1', 'corner-3', 9500)),
      squareToDiagonal('room-1', 'diagonal-1'),
      'No shape has these four wall lengths and this diagonal; measure the longest of them again.',
    ],
    [
      'a lining that runs through where its wall is not',
      plain,
      runThrough('scheme-1', 'corner-1', 'wall-2'),
      'Only one of the two walls that meet at a corner can run through there; choose one of them.',
    ],
    [
      'a locked picture dragged',
      applied(plain, addUnderlay({ ...A_PICTURE, isLocked: true })),
      moveThing('room-1', { kind: 'underlay', id: 'underlay-1' }, 10, 0),
      '"Scan" is locked; unlock it to move it.',
    ],
    [
      'a picture of no scale',
      applied(plain, addUnderlay(A_PICTURE)),
      changeUnderlay('underlay-1', { mmPerPx: 0 }),
      '"Scan": the size of a pixel has to be more than 0; the drawing was kept as it was.',
    ],
  ])('%s', (_, project, command, sentence) => {
    expect(refusalOf(project, command)).toBe(sentence)
  })
})

describe('things', () => {
  it('stand last where they were added, under an id of their own', () => {
    const two = applied(withDoor, addOpening('room-1', { ...door, name: 'Other', fromMm: 3000 }))
    expect(two.rooms[0]?.openings.map(({ id, name }) => [id, name])).toEqual([
      ['opening-1', 'Door'],
      ['opening-2', 'Other'],
    ])
  })

  it('turn to angles between -180 and 180 degrees', () => {
    const turned = applied(
      plain,
      addFurniture('room-1', desk),
      changeFurniture('room-1', 'furniture-1', { angleDeg: 270 }),
    )
    expect(turned.rooms[0]?.furniture[0]?.angleDeg).toBe(-90)
  })

  it('take their heights along when a part of the ceiling moves', () => {
    const project = applied(
      plain,
      addCeilingPart('room-1', usualCeilingPart(square(1000, 1000, 1000), room)),
      moveThing('room-1', { kind: 'ceiling-part', id: 'part-1' }, 100, -50),
    )
    expect(project.rooms[0]?.ceilingParts[0]?.heights).toEqual([
      { id: 'height-2', xMm: 1600, yMm: 1450, heightMm: 2400, floorMm: 0 },
    ])
  })

  it('go from every scheme that took them out', () => {
    const project = applied(
      withPier,
      takeOutObstacle('scheme-1', 'obstacle-1', true),
      deleteThing('room-1', { kind: 'obstacle', id: 'obstacle-1' }),
    )
    expect(project.schemes[0]?.takenOut).toEqual([])
  })

  it('on a new outline: heights and furniture that still fits stay, the rest goes', () => {
    const project = applied(
      withDrop,
      addOpening('room-1', door),
      addObstacle('room-1', usualObstacle(square(2000, 2000, 400), room)),
      addHeight('room-1', null, { xMm: 4000, yMm: 0, heightMm: 2300, floorMm: 0 }),
      addFurniture('room-1', desk),
      addFurniture('room-1', { ...desk, name: 'Far desk', xMm: 4000, yMm: 3400 }),
      setDiagonal('room-1', 'corner-1', 'corner-3', 6400),
      runThrough('scheme-1', 'corner-1', 'wall-1'),
      drawOutline('room-1', [
        [0, 0],
        [3000, 0],
        [3000, 2500],
        [0, 2500],
      ]),
    )
    const [drawn] = project.rooms
    expect(drawn?.heights).toHaveLength(2)
    expect(drawn?.furniture.map(({ name }) => name)).toEqual(['Desk'])
    expect([drawn?.openings, drawn?.drops, drawn?.obstacles, drawn?.diagonals]).toEqual([[], [], [], []])
    expect(project.schemes[0]?.runsThrough).toEqual({})
  })

  it('a lining keeps running through at its corner when the wall there is parted and made whole', () => {
    const before = applied(plain, runThrough('scheme-1', 'corner-2', 'wall-1'))
    const parted = applied(before, insertCorner('room-1', 'wall-1', 2000))
    expect(parted.schemes[0]?.runsThrough).toEqual({ 'corner-2': 'wall-5' })
    const whole = applied(parted, deleteCorner('room-1', 'corner-5'))
    expect(whole.schemes[0]?.runsThrough).toEqual({ 'corner-2': 'wall-1' })
  })

  it('a floor laid level keeps what is built on it', () => {
    const project = applied(plain, layFloorLevel('scheme-1', 'floor-1', true), setCeilingShape('room-1', 'level'))
    expect(project.schemes[0]?.choices['floor-1']).toEqual({ assembly: 'as-is', removeLining: false, laidLevel: true })
  })
})

describe('a room squared to its diagonal', () => {
  it.each(['corner-1', 'corner-2'])('keeps its four lengths and meets the diagonal from %s', (from) => {
    const to = from === 'corner-1' ? 'corner-3' : 'corner-4'
    const skew = applied(plain, setDiagonal('room-1', from, to, 6380), squareToDiagonal('room-1', 'diagonal-1'))
    const corners = skew.rooms[0]?.corners ?? []
    const gap = (one: number, other: number) =>
      Math.hypot(corners[one]!.xMm - corners[other]!.xMm, corners[one]!.yMm - corners[other]!.yMm)
    expect([gap(0, 1), gap(1, 2), gap(2, 3), gap(3, 0)].map((mm) => Math.round(mm * 1e6) / 1e6)).toEqual([
      5000, 4000, 5000, 4000,
    ])
    expect(from === 'corner-1' ? gap(0, 2) : gap(1, 3)).toBeCloseTo(6380, 6)
    expect(applied(skew, deleteDiagonal('room-1', 'diagonal-1')).rooms[0]?.diagonals).toEqual([])
  })
})

describe('what is offered first', () => {
  it('has a free name and fits its wall and the ceiling', () => {
    const low = applied(withDoor, setRoomHeight('room-1', 1900)).rooms[0]!
    const second = usualOpening('door', 'wall-1', 900, 'mm', low)
    expect(second).toMatchObject({ name: 'Door 2', heightMm: 1900, fromMm: 174 })
    expect(refusalOf(withDoor, addOpening('room-1', { ...second, heightMm: 1900 }))).toBeNull()
    expect(usualHeight(10, 10, room)).toEqual({ xMm: 10, yMm: 10, heightMm: 2400, floorMm: 0 })
    const fall = [
      { id: 'h1', xMm: 0, yMm: 0, heightMm: 2400, floorMm: 0 },
      { id: 'h2', xMm: 1000, yMm: 0, heightMm: 2420, floorMm: -20 },
      { id: 'h3', xMm: 0, yMm: 1000, heightMm: 2400, floorMm: 0 },
    ]
    // On a fall it offers the level that is known there: a new point alone tilts neither floor nor ceiling.
    const offered = usualHeight(500, 700, { ...room, heights: fall })
    expect(offered.floorMm).toBeCloseTo(-10, 9)
    expect(offered.heightMm).toBeCloseTo(2410, 9)
    expect(usualOpening('window', 'wall-2', 9000, 'ft-in', room).fromMm).toBeCloseTo(4000 - 1219.2, 9)
  })
})
