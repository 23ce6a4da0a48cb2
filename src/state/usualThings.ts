import type {
  CeilingPart,
  Drop,
  Furniture,
  FurnitureKind,
  HeightPoint,
  Obstacle,
  Opening,
  OpeningKind,
  PlanPoint,
  Room,
} from '#analysis/room.ts'
import { floorLevelAt, heightAt, highestCeilingOver, lowestCeilingAlong } from '#state/commands/ceilingOver.ts'
import { freeId } from '#state/commands/edit.ts'
import { wallLength } from '#state/commands/openingChecks.ts'
import usual from '#state/data/usual-things.json' with { type: 'json' }
import type { LengthUnit, Millimetres } from '#units/quantity.ts'

/** Between two heights that nobody has measured yet; the same as for a new room. */
const OFFERED_HEIGHT_MM: Millimetres = 2400

const OPENING_NAMES: Readonly<Record<OpeningKind, string>> = {
  door: 'Door',
  window: 'Window',
  'vehicle-door': 'Vehicle door',
  vent: 'Vent',
}

const FURNITURE_NAMES: Readonly<Record<FurnitureKind, string>> = {
  'drum-kit': 'Drum kit',
  desk: 'Desk',
  piano: 'Piano',
  booth: 'Booth',
  other: 'Furniture',
}

/**
 * An opening as it is offered first, made to fit its wall and the ceiling there.
 * @param wall  id of the wall it stands in
 * @param fromMm  where its first jamb is wanted, from the wall's first corner; it is moved where it would not fit
 */
export function usualOpening(
  kind: OpeningKind,
  wall: string,
  fromMm: Millimetres,
  units: LengthUnit,
  room: Room,
): Omit<Opening, 'id'> {
  const size = usual.openings[kind][units]
  const index = room.walls.findIndex((candidate) => candidate.id === wall)
  const length = wallLength(room.corners, index)
  const widthMm = Math.min(size.widthMm, length)
  const [from, to] = [room.corners[index], room.corners[(index + 1) % room.corners.length]]
  const begin = freePlace(room, wall, Math.max(0, Math.min(fromMm, length - widthMm)), widthMm, length)
  const ceiling = from && to ? lowestCeilingAlong(room, from, to, begin, begin + widthMm) : null
  const heightMm = Math.min(size.heightMm, ceiling ?? size.heightMm)
  return {
    kind,
    name: freeName(OPENING_NAMES[kind], room),
    wall,
    fromMm: begin,
    widthMm,
    heightMm,
    sillMm: Math.max(0, Math.min(size.sillMm, (ceiling ?? Number.POSITIVE_INFINITY) - heightMm)),
    hinge: 'from',
    swing: 'in',
    leaves: 'one',
    hungIn: 'existing',
    lobby: null,
    revealLiningMm: 0,
    shape: 'rectangular',
  }
}

/** The place nearest the wanted one where nothing else stands in the wall; the wanted one where there is none. */
function freePlace(
  room: Room,
  wall: string,
  wanted: Millimetres,
  width: Millimetres,
  length: Millimetres,
): Millimetres {
  const others = room.openings.filter((opening) => opening.wall === wall)
  const isFree = (begin: Millimetres) =>
    begin >= 0 &&
    begin + width <= length &&
    others.every((other) => begin + width <= other.fromMm || begin >= other.fromMm + other.widthMm)
  const beside = others.flatMap((other) => [other.fromMm - width, other.fromMm + other.widthMm])
  const places = [wanted, ...beside].filter(isFree).sort((a, b) => Math.abs(a - wanted) - Math.abs(b - wanted))
  return places[0] ?? wanted
}

/** Something the room has to hold, as it is offered first, with its middle at a place. */
export function usualFurniture(
  kind: FurnitureKind,
  xMm: Millimetres,
  yMm: Millimetres,
  units: LengthUnit,
  room: Room,
): Omit<Furniture, 'id'> {
  const clearance = usual.furniture[kind].clearance[units]
  return {
    kind,
    name: freeName(FURNITURE_NAMES[kind], room),
    xMm,
    yMm,
    ...usual.furniture[kind][units],
    angleDeg: 0,
    clearance,
  }
}

export function usualObstacle(corners: readonly PlanPoint[], room: Room): Omit<Obstacle, 'id'> {
  return { name: freeName('Column', room), corners, liningMm: usual.obstacle.liningMm }
}

/** A drop that hangs a usual way below the ceiling there. */
export function usualDrop(corners: readonly PlanPoint[], room: Room): Omit<Drop, 'id'> {
  const { hangsMm, boxBelowMm, boxSidesMm } = usual.drop
  const ceiling = highestCeilingOver(room, corners) ?? OFFERED_HEIGHT_MM
  const undersideMm = ceiling > 2 * hangsMm ? ceiling - hangsMm : ceiling / 2
  return { name: freeName('Beam', room), corners, undersideMm, boxBelowMm, boxSidesMm }
}

/** A part of the ceiling with the height that was there before, at its middle. */
export function usualCeilingPart(corners: readonly PlanPoint[], room: Room): Omit<CeilingPart, 'id'> {
  const middle = {
    xMm: corners.reduce((sum, corner) => sum + corner.xMm, 0) / Math.max(1, corners.length),
    yMm: corners.reduce((sum, corner) => sum + corner.yMm, 0) / Math.max(1, corners.length),
  }
  const taken = [...room.heights, ...room.ceilingParts.flatMap((part) => part.heights)].map(({ id }) => id)
  const point = { id: freeId('height', taken), ...usualHeight(middle.xMm, middle.yMm, room) }
  return { name: freeName('Ceiling part', room), corners, heights: [point] }
}

/** A measured height that says what is already known there of ceiling and floor, until it is typed over. */
export function usualHeight(xMm: Millimetres, yMm: Millimetres, room: Room): Omit<HeightPoint, 'id'> {
  const place = [xMm, yMm] as const
  return { xMm, yMm, heightMm: heightAt(room, place) ?? OFFERED_HEIGHT_MM, floorMm: floorLevelAt(room, place) ?? 0 }
}

/** Construction offered first for a new partition. */
export const USUAL_PARTITION: string = usual.partition.construction

/** A name, numbered from the second on. */
function freeName(plain: string, room: Room): string {
  const taken = new Set(
    [...room.openings, ...room.furniture, ...room.obstacles, ...room.drops, ...room.ceilingParts].map(
      ({ name }) => name,
    ),
  )
  let name = plain
  for (let n = 2; taken.has(name); n += 1) name = `${plain} ${n}`
  return name
}
