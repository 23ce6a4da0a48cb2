import { describe, expect, it } from 'vitest'
import type { Point } from '#geometry/polygon.ts'
import type { Project } from '#project/project.ts'
import { readProject } from '#project/read.ts'
import { writeProject } from '#project/write.ts'
import type { Command } from '#state/command.ts'
import { addDrop, changeDrop } from '#state/commands/drops.ts'
import { addFurniture } from '#state/commands/furniture.ts'
import { addCeilingPart } from '#state/commands/heights.ts'
import { addObstacle } from '#state/commands/obstacles.ts'
import { addOpening } from '#state/commands/openings.ts'
import { deleteCorner, drawOutline, insertCorner, moveCorner } from '#state/commands/outline.ts'
import { changePartition, cutRoom, joinRooms } from '#state/commands/partitions.ts'
import { addRoom, deleteRoom, renameRoom } from '#state/commands/rooms.ts'
import { assignAssembly } from '#state/commands/surfaces.ts'
import { deleteThing } from '#state/commands/things.ts'
import { setWallLength } from '#state/commands/wall.ts'
import { usualCeilingPart, usualDrop, usualFurniture, usualOpening } from '#state/usualThings.ts'
import { applied, plainProject, refusalOf } from '../../support/anyProject.ts'
import { CATALOGUE } from '../../support/samples.ts'

const plain = plainProject(6000, 4000, 2400)
const room = plain.rooms[0]
if (!room) throw new Error('no room')

/** A wall of concrete blocks, 100 mm, drawn up the page. */
const block = { construction: 'block-dense-100', placement: 'middle', name: 'Booth wall' } as const
const cut = (from: Point, to: Point) => cutRoom('room-1', from, to, block)
const two = applied(plain, cut([4000, 1000], [4000, 2000]))

const corners = (project: Project, index: number) =>
  project.rooms[index]?.corners.map(({ xMm, yMm }) => [Math.round(xMm * 1e6) / 1e6, Math.round(yMm * 1e6) / 1e6])

describe('two rooms of a file whose writer counted corners and obstacles from 1 in each', () => {
  const pier = (x: number) => {
    const corners = [
      { xMm: x, yMm: 1000 },
      { xMm: x + 300, yMm: 1000 },
      { xMm: x + 300, yMm: 1300 },
    ]
    return addObstacle('room-1', { name: `Pier at ${x}`, corners, liningMm: 0 })
  }
  const apart = applied(plain, pier(1000), pier(5000), cut([4000, 0], [4000, 4000]))
  const rooms = apart.rooms.map((it) => {
    const ids = new Map(it.corners.map(({ id }, i) => [id, `c${i + 1}`]))
    const now = (id: string) => ids.get(id) ?? id
    return {
      ...it,
      corners: it.corners.map((corner) => ({ ...corner, id: now(corner.id) })),
      walls: it.walls.map((wall) => ({ ...wall, from: now(wall.from), to: now(wall.to) })),
      obstacles: it.obstacles.map((obstacle) => ({ ...obstacle, id: 'o1' })),
    }
  })
  const runs = rooms[1]?.walls[0]
  const schemes = apart.schemes.map((scheme) => ({
    ...scheme,
    takenOut: ['o1'],
    runsThrough: { [runs?.from ?? '']: runs?.id ?? '' },
  }))
  const counted = { ...apart, rooms, schemes }

  it('become one whose file can be read, and of which schemes say what they said', () => {
    const joined = applied(counted, joinRooms('partition-1'))
    const read = readProject(writeProject(joined), CATALOGUE)
    expect(read.ok ? [] : read.error.problems).toEqual([])
    const [one] = joined.rooms
    expect(one?.obstacles.map(({ id }) => joined.schemes[0]?.takenOut?.includes(id))).toEqual([true, true])
    expect(Object.values(joined.schemes[0]?.runsThrough ?? {})).toHaveLength(1)
  })
})

describe('what hangs over both rooms of a partition', () => {
  const beam = [
    { xMm: 1000, yMm: 1500 },
    { xMm: 5000, yMm: 1500 },
    { xMm: 5000, yMm: 1800 },
    { xMm: 1000, yMm: 1800 },
  ]
  const around = (rectangle: readonly { readonly xMm: number; readonly yMm: number }[]) =>
    rectangle.map(({ xMm, yMm }) => `${Math.round(xMm * 100) / 100}, ${Math.round(yMm * 100) / 100}`).sort()
  const parted = (from: Point, to: Point) => {
    const hung = applied(
      plain,
      addDrop('room-1', { ...usualDrop(beam, room), name: 'Steel beam' }),
      addCeilingPart('room-1', { ...usualCeilingPart(beam, room), name: 'Bay' }),
    )
    return applied(hung, cut(from, to))
  }

  it.each([
    ['across', [3000, 0], [3000, 4000]],
    ['slanting', [2500, 0], [3500, 4000]],
  ] as const)('is one again, and no thicker, when they are joined: cut %s', (_, from, to) => {
    const apart = parted(from, to)
    expect(apart.rooms.map((it) => [it.drops.length, it.ceilingParts.length])).toEqual([
      [1, 1],
      [1, 1],
    ])
    const [joined] = applied(apart, joinRooms('partition-1')).rooms
    expect(joined?.drops.map(({ name, corners }) => [name, around(corners)])).toEqual([['Steel beam', around(beam)]])
    expect(joined?.ceilingParts.map(({ name, corners }) => [name, around(corners)])).toEqual([['Bay', around(beam)]])
  })

  it('stays two where one of them was changed in the meantime', () => {
    const apart = parted([3000, 0], [3000, 4000])
    const [one, other] = apart.rooms
    const boxed = applied(apart, changeDrop(other?.id ?? '', other?.drops[0]?.id ?? '', { boxBelowMm: 77 }))
    const [joined] = applied(boxed, joinRooms('partition-1')).rooms
    expect(one?.drops).toHaveLength(1)
    expect(joined?.drops).toHaveLength(2)
  })
})

describe('a room of two wings, one of them cut off', () => {
  const wings = [
    [0, 0],
    [9000, 0],
    [9000, 6000],
    [6000, 6000],
    [6000, 2000],
    [3000, 2000],
    [3000, 6000],
    [0, 6000],
  ] as const
  const drawn = applied(plain, drawOutline('room-1', wings))
  const cutOff = cut([500, 4000], [2500, 4000])
  const rectangle = (x: number, y: number, width: number, length: number) =>
    [
      [x, y],
      [x + width, y],
      [x + width, y + length],
      [x, y + length],
    ].map(([xMm = 0, yMm = 0]) => ({ xMm, yMm }))

  it('leaves what stands in the other wing with it, though it lies beyond the line drawn on', () => {
    const full = applied(
      drawn,
      addObstacle('room-1', { name: 'Column', corners: rectangle(7000, 5000, 300, 300), liningMm: 0 }),
      addFurniture('room-1', usualFurniture('desk', 7500, 5500, 'mm', drawn.rooms[0] ?? room)),
      addDrop('room-1', usualDrop(rectangle(6500, 3000, 300, 2900), drawn.rooms[0] ?? room)),
    )
    const [first, second] = applied(full, cutOff).rooms
    expect([first?.obstacles, first?.furniture, first?.drops]).toEqual([[], [], []])
    const former = full.rooms[0]
    expect(second).toMatchObject({
      obstacles: former?.obstacles,
      furniture: former?.furniture,
      drops: former?.drops,
    })
  })

  it('hangs a beam over both wings in both rooms', () => {
    const beam = applied(drawn, addDrop('room-1', usualDrop(rectangle(-100, 5000, 9200, 200), drawn.rooms[0] ?? room)))
    const [first, second] = applied(beam, cutOff).rooms
    expect(first?.drops).toEqual(beam.rooms[0]?.drops)
    expect(second?.drops.map(({ corners }) => corners)).toEqual(beam.rooms[0]?.drops.map(({ corners }) => corners))
    expect(second?.drops[0]?.id).not.toBe(first?.drops[0]?.id)
  })
})

describe('a room cut in two', () => {
  it('leaves the partition between them, from wall to wall', () => {
    expect(corners(two, 0)).toEqual([
      [0, 0],
      [3950, 0],
      [3950, 4000],
      [0, 4000],
    ])
    expect(corners(two, 1)).toEqual([
      [6000, 0],
      [6000, 4000],
      [4050, 4000],
      [4050, 0],
    ])
    expect(two.rooms.map(({ id, name }) => [id, name])).toEqual([
      ['room-1', 'Room'],
      ['room-2', 'Room 2'],
    ])
    expect(two.partitions).toEqual([
      {
        id: 'partition-1',
        ...block,
        sides: [
          { room: 'room-1', wall: two.rooms[0]?.walls[1]?.id },
          { room: 'room-2', wall: two.rooms[1]?.walls[2]?.id },
        ],
      },
    ])
    expect(two.rooms[0]?.walls[1]).toMatchObject({ existing: 'block-dense-100', lining: null, measuredTo: 'structure' })
  })

  it.each([
    ['first', 3900, 4000],
    ['second', 4000, 4100],
  ] as const)('has all its depth on the %s side of the line', (placement, left, right) => {
    const placed = applied(two, changePartition('partition-1', { placement }))
    expect(corners(placed, 0)?.[1]).toEqual([left, 0])
    expect(corners(placed, 1)?.[3]).toEqual([right, 0])
    expect(corners(applied(placed, changePartition('partition-1', { placement: 'middle' })), 0)).toEqual(
      corners(two, 0),
    )
  })

  it('takes what schemes chose along into both rooms', () => {
    const lined = applied(plain, assignAssembly('scheme-1', ['wall-1', 'ceiling-1'], null))
    const clips = CATALOGUE.assemblies.get('W07') ?? null
    const both = applied(lined, assignAssembly('scheme-1', ['wall-1'], clips), cut([4000, 0], [4000, 4000]))
    const bottom = both.rooms[1]?.walls[3]?.id ?? ''
    expect(both.schemes[0]?.choices[bottom]).toEqual({ assembly: 'W07', removeLining: false })
    expect(both.schemes[0]?.choices[both.rooms[1]?.ceiling.id ?? '']).toEqual({
      assembly: 'as-is',
      removeLining: false,
    })
  })

  it('cuts what hangs across it in two', () => {
    const ring = [
      { xMm: 3000, yMm: 1000 },
      { xMm: 5000, yMm: 1000 },
      { xMm: 5000, yMm: 1400 },
      { xMm: 3000, yMm: 1400 },
    ]
    const cutDuct = applied(plain, addDrop('room-1', usualDrop(ring, room)), cut([4000, 0], [4000, 4000]))
    const spans = cutDuct.rooms.map((part) => part.drops.map((drop) => drop.corners.map(({ xMm }) => xMm)))
    expect(spans.map(([xs]) => [Math.min(...(xs ?? [])), Math.max(...(xs ?? []))])).toEqual([
      [3000, 3950],
      [4050, 5000],
    ])
    expect(cutDuct.rooms.flatMap((part) => part.drops.map(({ id }) => id))).toEqual(['drop-1', 'drop-2'])
  })

  it('moves as one: a wall of another length takes both faces of the partition along', () => {
    const longer = applied(two, setWallLength('room-1', 'wall-1', 4450, 'to'))
    expect(corners(longer, 0)?.[1]).toEqual([4450, 0])
    expect(corners(longer, 1)?.[3]).toEqual([4550, 0])
  })

  it('is one room again when the partition is deleted', () => {
    const back = applied(two, deleteThing('room-1', { kind: 'partition', id: 'partition-1' }))
    expect(back.rooms).toHaveLength(1)
    expect(back.rooms[0]).toEqual(room)
    expect(applied(two, joinRooms('partition-1')).rooms).toEqual(back.rooms)
  })

  it('loses the partition when one of them is deleted or drawn anew', () => {
    expect(applied(two, deleteRoom('room-2')).partitions).toEqual([])
    expect(applied(two, deleteRoom('room-2')).rooms).toHaveLength(1)
    const drawn = drawOutline('room-1', [
      [0, 0],
      [3000, 0],
      [0, 3000],
    ])
    expect(applied(two, drawn).partitions).toEqual([])
  })
})

describe('a partition that ends on another', () => {
  const three = applied(two, cutRoom('room-1', [0, 2000], [3950, 2000], { ...block, name: 'Cross wall' }))

  it('parts it, so that every partition stands between two walls', () => {
    expect(three.rooms.map((part) => part.corners.length)).toEqual([4, 5, 4])
    expect(three.partitions.map(({ name }) => name)).toEqual(['Booth wall', 'Booth wall 2', 'Cross wall'])
    const middles = three.partitions.map(({ sides }) =>
      sides.map((side) => {
        const part = three.rooms.find(({ id }) => id === side.room)
        const index = part?.walls.findIndex(({ id }) => id === side.wall) ?? -1
        const [from, to] = [part?.corners[index], part?.corners[(index + 1) % (part?.corners.length ?? 1)]]
        return [((from?.xMm ?? 0) + (to?.xMm ?? 0)) / 2, ((from?.yMm ?? 0) + (to?.yMm ?? 0)) / 2]
      }),
    )
    expect(middles[0]).toEqual([
      [3950, 3025],
      [4050, 3000],
    ])
    expect(middles[1]).toEqual([
      [3950, 975],
      [4050, 1000],
    ])
    const read = readProject(writeProject(three), CATALOGUE)
    expect(read.ok ? read.value.project : read.error.problems).toEqual(three)
  })

  it('leaves no trace when the rooms it parted are joined', () => {
    const back = applied(three, joinRooms('partition-2'))
    expect(back).toEqual(two)
    expect(applied(back, joinRooms('partition-1')).rooms).toEqual(plain.rooms)
  })

  it('becomes the end of a wall in one room when the rooms round it are joined', () => {
    const around = applied(three, joinRooms('partition-1'), joinRooms('partition-2'))
    expect(around.rooms).toHaveLength(1)
    expect(around.partitions).toEqual([])
    expect(readProject(writeProject(around), CATALOGUE).ok).toBe(true)
  })
})

const withWindow = applied(
  plain,
  addOpening('room-1', { ...usualOpening('window', 'wall-3', 1500, 'mm', room), name: 'Escape window' }),
)

describe('what no partition can be', () => {
  it.each<[string, Project, Command, string]>([
    [
      'a line without length',
      plain,
      cut([1, 1], [1, 1]),
      'A partition needs a line; choose two places that lie apart.',
    ],
    [
      'one that misses the room',
      plain,
      cut([7000, 0], [7000, 100]),
      'The partition would miss Room; draw its line across the room, from wall to wall.',
    ],
    [
      'one along a wall',
      plain,
      cut([0, 40], [6000, 40]),
      'The partition would run along Wall 1; draw it across the room.',
    ],
    [
      'one into a corner',
      plain,
      cut([0, 0], [3000, 2500]),
      'The partition would come closer to Corner 1 than it is deep; draw it further from the corner.',
    ],
    [
      'one through a window',
      withWindow,
      cut([4000, 0], [4000, 4000]),
      'The partition would cross "Escape window"; draw it beside the opening, or move the opening first.',
    ],
    [
      'one of a floor',
      plain,
      cutRoom('room-1', [4000, 0], [4000, 4000], { ...block, construction: 'slab-on-ground' }),
      'There is no wall construction "slab-on-ground"; choose what the partition is built of.',
    ],
    [
      'one without a name',
      plain,
      cutRoom('room-1', [4000, 0], [4000, 4000], { ...block, name: ' ' }),
      'A partition needs a name; type one.',
    ],
    [
      'one whose corner is dragged off its line',
      two,
      moveCorner('room-1', two.rooms[0]?.corners[1]?.id ?? '', 3900, 0),
      'Corner 2 ends "Booth wall", which two rooms share; move the partition\'s wall, or join the rooms first.',
    ],
    [
      'one whose end is deleted',
      two,
      deleteCorner('room-1', two.rooms[0]?.corners[1]?.id ?? ''),
      'Corner 2 ends "Booth wall", which two rooms share; move the partition\'s wall, or join the rooms first.',
    ],
    [
      'one with a corner',
      two,
      insertCorner('room-1', two.rooms[0]?.walls[1]?.id ?? '', 1000),
      'Wall 2 is one side of "Booth wall", which two rooms share; it has no corners of its own. Join the rooms first.',
    ],
    [
      'one that is gone',
      plain,
      joinRooms('partition-1'),
      'There is no partition "partition-1" in this project any more.',
    ],
  ])('%s', (_, project, command, sentence) => {
    expect(refusalOf(project, command)).toBe(sentence)
  })
})

describe('rooms', () => {
  const beside: readonly Point[] = [
    [6200, 0],
    [9000, 0],
    [9000, 3000],
    [6200, 3000],
  ]

  it('stand beside each other, the new one last', () => {
    const more = applied(plain, addRoom('Store', beside), renameRoom('room-2', 'Machine room'))
    expect(more.rooms.map(({ name }) => name)).toEqual(['Room', 'Machine room'])
    const ids = more.rooms.flatMap(({ walls, ceiling, floor }) => [...walls, ceiling, floor].map(({ id }) => id))
    expect(new Set(ids).size).toBe(ids.length)
  })

  it.each<[string, Command, string]>([
    [
      'one over another',
      addRoom('Store', [
        [5000, 0],
        [9000, 0],
        [9000, 3000],
      ]),
      'The new room would lie over Room; draw it beside it, or cut Room in two with a partition.',
    ],
    ['one without a name', addRoom('', beside), 'A room needs a name; type one.'],
    [
      'a second one of a name',
      addRoom('Room', beside),
      'There is already a room called "Room"; give this one another name.',
    ],
    ['the last one deleted', deleteRoom('room-1'), 'A project keeps at least one room; this one stays.'],
  ])('refuse %s', (_, command, sentence) => {
    expect(refusalOf(plain, command)).toBe(sentence)
  })

  it('may share a wall line', () => {
    const wall: readonly Point[] = [
      [6000, 0],
      [9000, 0],
      [9000, 3000],
      [6000, 3000],
    ]
    expect(refusalOf(plain, addRoom('Store', wall))).toBeNull()
  })
})
