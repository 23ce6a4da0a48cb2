import type { CeilingPart, Drop, Furniture, HeightPoint, Obstacle, Opening, PlanPoint, Room } from '#analysis/room.ts'
import type { Command } from '#state/command.ts'
import { changeDrop } from '#state/commands/drops.ts'
import { changeFurniture } from '#state/commands/furniture.ts'
import { changeCeilingPart, changeHeight } from '#state/commands/heights.ts'
import { changeObstacle } from '#state/commands/obstacles.ts'
import { changeOpening } from '#state/commands/openings.ts'
import { onRectangle, type Rectangle, rectangleOf } from '#ui/panels/bench/tables/rectangle.ts'
import { wallEnds, wallLength } from '#ui/panels/bench/wallLength.ts'
import type { Millimetres } from '#units/quantity.ts'

/** One length of a thing, for a cell of its table and a field of its form alike. */
export interface LengthEntry {
  readonly key: string
  /** Over the column. */
  readonly head: string
  /** Beside the field of the form. */
  readonly label: string
  readonly value: Millimetres
  readonly leastMm?: number
  readonly moreThanLeast?: boolean
  readonly command: (value: Millimetres) => Command
}

const SIZE = { leastMm: 0, moreThanLeast: true } as const
const DISTANCE = { leastMm: 0 } as const

/** Distances, size and sill of an opening; the two distances follow each other. */
export function openingEntries(room: Room, opening: Opening): readonly LengthEntry[] {
  const { id, fromMm, widthMm } = opening
  const length = wallLength(room, opening.wall)
  const [first, second] = wallEnds(room, opening.wall)
  const change = (patch: Partial<Omit<Opening, 'id'>>) => changeOpening(room.id, id, patch)
  return [
    {
      key: 'from',
      head: 'From first end',
      label: `From corner ${first}`,
      value: fromMm,
      ...DISTANCE,
      command: (value) => change({ fromMm: value }),
    },
    {
      key: 'to',
      head: 'From other end',
      label: `From corner ${second}`,
      value: length - fromMm - widthMm,
      ...DISTANCE,
      command: (value) => change({ fromMm: length - widthMm - value }),
    },
    {
      key: 'width',
      head: 'Width',
      label: widthWords(opening),
      value: widthMm,
      ...SIZE,
      command: (value) => change(opening.shape === 'round' ? { widthMm: value, heightMm: value } : { widthMm: value }),
    },
    {
      key: 'height',
      head: 'Height',
      label: 'Height',
      value: opening.heightMm,
      ...SIZE,
      command: (value) => change(opening.shape === 'round' ? { widthMm: value, heightMm: value } : { heightMm: value }),
    },
    {
      key: 'sill',
      head: 'Sill',
      label: 'Sill over the floor',
      value: opening.sillMm,
      ...DISTANCE,
      command: (value) => change({ sillMm: value }),
    },
  ]
}

function widthWords({ kind, shape }: Opening): string {
  if (shape === 'round') return 'Diameter'
  return kind === 'door' || kind === 'vehicle-door' ? 'Width between the jambs' : 'Width'
}

/** Place and size of a shape along the page; null: only its corners describe it. */
function rectangleEntries(
  corners: readonly PlanPoint[],
  change: (corners: readonly PlanPoint[]) => Command,
): readonly LengthEntry[] | null {
  const box = rectangleOf(corners)
  if (box === null) return null
  const to = (patch: Partial<Rectangle>) => change(onRectangle(corners, { ...box, ...patch }))
  return [
    { key: 'x', head: 'x', label: 'x of its left side', value: box.xMm, command: (xMm) => to({ xMm }) },
    { key: 'y', head: 'y', label: 'y of its lower side', value: box.yMm, command: (yMm) => to({ yMm }) },
    {
      key: 'width',
      head: 'Width',
      label: 'Width, across the page',
      value: box.widthMm,
      ...SIZE,
      command: (widthMm) => to({ widthMm }),
    },
    {
      key: 'depth',
      head: 'Depth',
      label: 'Depth, up the page',
      value: box.depthMm,
      ...SIZE,
      command: (depthMm) => to({ depthMm }),
    },
  ]
}

/** What a shape on the plan is told by: along the page its place and size, then lengths of its own. */
export interface ShapeEntries {
  /** null: only its corners describe its place. */
  readonly place: readonly LengthEntry[] | null
  readonly own: readonly LengthEntry[]
}

export function obstacleEntries(room: Room, { id, corners, liningMm }: Obstacle): ShapeEntries {
  return {
    place: rectangleEntries(corners, (moved) => changeObstacle(room.id, id, { corners: moved })),
    own: [
      {
        key: 'lining',
        head: 'Lining',
        label: 'Lining all round',
        value: liningMm,
        ...DISTANCE,
        command: (value) => changeObstacle(room.id, id, { liningMm: value }),
      },
    ],
  }
}

export function dropEntries(room: Room, { id, corners, undersideMm, boxBelowMm, boxSidesMm }: Drop): ShapeEntries {
  return {
    place: rectangleEntries(corners, (moved) => changeDrop(room.id, id, { corners: moved })),
    own: [
      {
        key: 'underside',
        head: 'Underside',
        label: 'Floor to its bare underside',
        value: undersideMm,
        ...SIZE,
        command: (value) => changeDrop(room.id, id, { undersideMm: value }),
      },
      {
        key: 'box-below',
        head: 'Box below',
        label: 'Box below it',
        value: boxBelowMm,
        ...DISTANCE,
        command: (value) => changeDrop(room.id, id, { boxBelowMm: value }),
      },
      {
        key: 'box-sides',
        head: 'Box sides',
        label: 'Box at its sides',
        value: boxSidesMm,
        ...DISTANCE,
        command: (value) => changeDrop(room.id, id, { boxSidesMm: value }),
      },
    ],
  }
}

export function ceilingPartEntries(room: Room, { id, corners }: CeilingPart): ShapeEntries {
  return { place: rectangleEntries(corners, (moved) => changeCeilingPart(room.id, id, { corners: moved })), own: [] }
}

export function heightEntries(room: Room, point: HeightPoint): readonly LengthEntry[] {
  const change = (patch: Partial<Omit<HeightPoint, 'id'>>) => changeHeight(room.id, point.id, patch)
  return [
    { key: 'x', head: 'x', label: 'x', value: point.xMm, command: (xMm) => change({ xMm }) },
    { key: 'y', head: 'y', label: 'y', value: point.yMm, command: (yMm) => change({ yMm }) },
    {
      key: 'height',
      head: 'Height',
      label: 'Floor to what the tape touched',
      value: point.heightMm,
      ...SIZE,
      command: (heightMm) => change({ heightMm }),
    },
    {
      key: 'floor',
      head: 'Floor level',
      label: 'Level of the floor there',
      value: point.floorMm,
      command: (floorMm) => change({ floorMm }),
    },
  ]
}

export function furnitureEntries(room: Room, piece: Furniture): readonly LengthEntry[] {
  const { clearance } = piece
  const change = (patch: Partial<Omit<Furniture, 'id'>>) => changeFurniture(room.id, piece.id, patch)
  const size = (key: 'widthMm' | 'depthMm' | 'heightMm', head: string): LengthEntry => ({
    key: head.toLowerCase(),
    head,
    label: head,
    value: piece[key],
    ...SIZE,
    command: (value) => change({ [key]: value }),
  })
  const free = (key: keyof Furniture['clearance'], side: string): LengthEntry => ({
    key: `clear-${side}`,
    head: `Clear ${side}`,
    label: `Clear at the ${side}`,
    value: clearance[key],
    ...DISTANCE,
    command: (value) => change({ clearance: { ...clearance, [key]: value } }),
  })
  return [
    { key: 'x', head: 'x', label: 'x of its middle', value: piece.xMm, command: (xMm) => change({ xMm }) },
    { key: 'y', head: 'y', label: 'y of its middle', value: piece.yMm, command: (yMm) => change({ yMm }) },
    size('widthMm', 'Width'),
    size('depthMm', 'Depth'),
    size('heightMm', 'Height'),
    free('frontMm', 'front'),
    free('backMm', 'back'),
    free('leftMm', 'left'),
    free('rightMm', 'right'),
  ]
}
