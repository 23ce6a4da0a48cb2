import type { SchemeResult } from '#analysis/results.ts'
import type { PlanPoint, Room } from '#analysis/room.ts'
import type { Point, Ring } from '#geometry/polygon.ts'
import type { Project } from '#project/project.ts'
import type { Command } from '#state/command.ts'
import { addBox } from '#state/commands/boxes.ts'
import { addDrop } from '#state/commands/drops.ts'
import { addFurniture } from '#state/commands/furniture.ts'
import { addCeilingPart, addHeight } from '#state/commands/heights.ts'
import { addObstacle } from '#state/commands/obstacles.ts'
import { addOpening } from '#state/commands/openings.ts'
import { usualBox } from '#state/usualAir.ts'
import {
  USUAL_PARTITION,
  usualCeilingPart,
  usualDrop,
  usualFurniture,
  usualHeight,
  usualObstacle,
  usualOpening,
} from '#state/usualThings.ts'
import type { Adding, Thing, ViewState } from '#state/view.ts'
import { cornerPoints, isInside, nearestWall } from '#ui/canvas/nearest.ts'
import type { PlanRoom } from '#ui/canvas/planRoom.ts'
import { roomMiddle } from '#ui/canvas/roomMiddle.ts'
import { gridStep, roundTo } from '#ui/canvas/snap.ts'
import { alongWall, type WallRun, wallRun } from '#ui/canvas/thingShapes.ts'
import type { LengthUnit, Millimetres } from '#units/quantity.ts'
import { unreachable } from '#units/result.ts'

/** What a new thing is put into. */
export interface PlaceSetting {
  readonly room: PlanRoom
  readonly result: SchemeResult | null
  readonly units: LengthUnit
}

type Rectangular = 'obstacle' | 'drop' | 'ceiling-part'

/** Whether two presses make it, as opposite corners of a rectangle. */
export function isRectangular(adding: Adding): adding is { readonly kind: Rectangular } {
  return adding.kind === 'obstacle' || adding.kind === 'drop' || adding.kind === 'ceiling-part'
}

/** An opening on the wall nearest a place, about that place; null further off than `reach`. */
export function openingAt(
  setting: PlaceSetting,
  adding: Adding & { readonly kind: 'opening' },
  at: Point,
  reach: Millimetres,
): Command | null {
  const { room } = setting
  const index = nearestWall(cornerPoints(room), at, () => reach)
  const id = index === null ? undefined : room.walls[index]?.id
  const run = id === undefined ? null : wallRun(room, id)
  if (!run) return null
  return openingAbout(setting, adding, run, alongWall(run, at))
}

/** An opening with its middle at a place along a wall, on the grid. */
function openingAbout(
  { room, units }: PlaceSetting,
  { opening }: Adding & { readonly kind: 'opening' },
  run: WallRun,
  middleMm: Millimetres,
): Command {
  const { widthMm } = usualOpening(opening, run.id, middleMm, units, room)
  const isHalf = Math.abs(middleMm - run.length / 2) < 1
  const fromMm = isHalf ? middleMm - widthMm / 2 : roundTo(middleMm - widthMm / 2, gridStep(units))
  return addOpening(room.id, usualOpening(opening, run.id, fromMm, units, room))
}

/** What one press puts down at a place. */
export function placeAt({ room, units }: PlaceSetting, adding: Adding, [x, y]: Point): Command | null {
  if (adding.kind === 'height') return addHeight(room.id, null, usualHeight(x, y, room))
  if (adding.kind === 'furniture') {
    return addFurniture(room.id, usualFurniture(adding.furniture, x, y, units, room))
  }
  if (adding.kind === 'box' && room.inScheme) {
    return addBox(room.inScheme.id, usualBox(room, room.inScheme, x, y, units))
  }
  return null
}

/** A thing between two opposite corners; null where it would have no area. */
export function rectangleOf({ room }: PlaceSetting, kind: Rectangular, a: Point, b: Point): Command | null {
  if (Math.abs(a[0] - b[0]) < LEAST_SIDE || Math.abs(a[1] - b[1]) < LEAST_SIDE) return null
  return ringThing(room, kind, rectangle(a, b))
}

/** Less than this two presses are one place, mm. */
const LEAST_SIDE = 5

function ringThing(room: Room, kind: Rectangular, ring: Ring): Command {
  const corners = ring.map(([xMm, yMm]): PlanPoint => ({ xMm, yMm }))
  switch (kind) {
    case 'obstacle':
      return addObstacle(room.id, usualObstacle(corners, room))
    case 'drop':
      return addDrop(room.id, usualDrop(corners, room))
    case 'ceiling-part':
      return addCeilingPart(room.id, usualCeilingPart(corners, room))
    default:
      return unreachable(kind)
  }
}

/** Counter-clockwise, from its lower left corner. */
export function rectangle(a: Point, b: Point): Ring {
  const [left, right] = [Math.min(a[0], b[0]), Math.max(a[0], b[0])]
  const [low, high] = [Math.min(a[1], b[1]), Math.max(a[1], b[1])]
  return [
    [left, low],
    [right, low],
    [right, high],
    [left, high],
  ]
}

/** A column as wide as this where the keyboard puts one down, mm. */
const COLUMN = 300
/** A beam as wide as this, mm. */
const BEAM = 200

/** A column with its middle at a place. */
export function usualColumn(room: Room, [x, y]: Point): Command {
  return ringThing(room, 'obstacle', rectangle([x - COLUMN / 2, y - COLUMN / 2], [x + COLUMN / 2, y + COLUMN / 2]))
}

/**
 * Where the keyboard puts a new thing, each way after the other until one is possible: an opening in the middle of the
 * selected wall, else of the first that has room for it; anything else in the middle of the clear room; a beam runs
 * across the room, a ceiling part covers its right half.
 */
export function placesInMiddle(setting: PlaceSetting, adding: Adding, selected: readonly string[]): readonly Command[] {
  const { room, result, units } = setting
  if (adding.kind === 'opening') {
    const isSelected = ({ id }: { readonly id: string }) => selected.includes(id)
    const walls = [...room.walls.filter(isSelected), ...room.walls.filter((wall) => !isSelected(wall))]
    return walls.flatMap(({ id }) => {
      const run = wallRun(room, id)
      return run ? [openingAbout(setting, adding, run, run.length / 2)] : []
    })
  }
  const middle = onGrid(roomMiddle(room, result), units)
  if (adding.kind === 'obstacle') return [usualColumn(room, middle)]
  if (isRectangular(adding)) return [ringThing(room, adding.kind, usualRectangle(room, adding.kind, middle))]
  const command = placeAt(setting, adding, middle)
  return command ? [command] : []
}

/** The first that works; if none does the first, for its refusal. */
export function firstPossible(project: Project, commands: readonly Command[]): Command | null {
  return commands.find((command) => command.apply(project).ok) ?? commands[0] ?? null
}

function usualRectangle(room: Room, kind: 'drop' | 'ceiling-part', [x, y]: Point): Ring {
  const points = cornerPoints(room)
  const [left, right, low, high] = extent(points)
  if (kind === 'ceiling-part') return rectangle([x, low], [right, high])
  return right - left > high - low
    ? rectangle([x - BEAM / 2, low], [x + BEAM / 2, high])
    : rectangle([left, y - BEAM / 2], [right, y + BEAM / 2])
}

/** The line that cuts the room across its longer side: at a place, else through its middle. */
export function cuttingLine({ room, result, units }: PlaceSetting, at: Point | null): readonly [Point, Point] {
  const [left, right, low, high] = extent(cornerPoints(room))
  const middle: Point = [(left + right) / 2, (low + high) / 2]
  const own = at ?? (isInside(cornerPoints(room), middle) ? middle : roomMiddle(room, result))
  const [x, y] = onGrid(own, units)
  return right - left > high - low
    ? [
        [x, low],
        [x, high],
      ]
    : [
        [left, y],
        [right, y],
      ]
}

function extent(points: readonly Point[]): readonly [number, number, number, number] {
  const xs = points.map(([x]) => x)
  const ys = points.map(([, y]) => y)
  return [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)]
}

function onGrid([x, y]: Point, units: LengthUnit): Point {
  const step = gridStep(units)
  return [roundTo(x, step), roundTo(y, step)]
}

/** The room on the page and its scheme. */
type Where = Pick<ViewState, 'roomId' | 'schemeId'>

export function whereOf({ id, inScheme }: PlanRoom): Where {
  return { roomId: id, schemeId: inScheme?.id ?? '' }
}

/** The thing a command has just added: always the last in its list. */
export function addedThing(project: Project, where: Where, kind: Thing['kind']): Thing | null {
  const room = project.rooms.find(({ id }) => id === where.roomId)
  const scheme = project.schemes.find(({ id }) => id === where.schemeId)
  const lists = {
    opening: room?.openings,
    obstacle: room?.obstacles,
    drop: room?.drops,
    'ceiling-part': room?.ceilingParts,
    height: room?.heights,
    furniture: room?.furniture,
    box: scheme?.boxes,
    partition: project.partitions,
    underlay: project.underlays,
  }
  const id = lists[kind]?.at(-1)?.id
  return id === undefined ? null : { kind, id }
}

/** A new wall until somebody says better: half its depth to either side of the line. */
export function usualCut(project: Project) {
  const taken = new Set(project.partitions.map(({ name }) => name))
  let name = 'Partition'
  for (let n = 2; taken.has(name); n += 1) name = `Partition ${n}`
  return { construction: USUAL_PARTITION, placement: 'middle', name } as const
}
