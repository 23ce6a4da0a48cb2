import { depthsOf } from '#analysis/depths.ts'
import { newFloor, type RoomLevels, roomLevels } from '#analysis/heights/levels.ts'
import { planeAt, shifted } from '#analysis/heights/plane.ts'
import type { Roof } from '#analysis/heights/regions.ts'
import { linedRoofs } from '#analysis/heights/risers.ts'
import type { Plane } from '#analysis/results.ts'
import type { Room, SurfaceFacts } from '#analysis/room.ts'
import { choiceFor, type Scheme } from '#analysis/scheme.ts'
import type { Catalogue } from '#assemblies/assembly.ts'
import type { Point } from '#geometry/polygon.ts'
import type { Millimetres } from '#units/quantity.ts'

/** What the heights of a scheme follow from. */
export interface HeightsInput {
  readonly room: Room
  readonly scheme: Scheme
  readonly catalogue: Catalogue
}

/** The room's levels as they stand, and the faces of the new floor and ceiling, all over the datum. */
export interface Faces {
  readonly levels: RoomLevels
  readonly floor: Plane
  readonly ceiling: Plane
  readonly parts: readonly Roof[]
}

/** Where a scheme puts the faces of floor and ceiling. Only a new floor can be laid level. */
export function facesOf(input: HeightsInput): Faces {
  const { room, scheme, catalogue } = input
  const levels = roomLevels(room)
  const outline = outlineOf(room)
  const ceilingMm = netDepth(input, room.ceiling)
  const choice = choiceFor(scheme, room.floor.id)
  const isLaidLevel = choice.laidLevel === true && catalogue.assemblies.has(choice.assembly)
  return {
    levels,
    floor: newFloor(levels, outline, { thicknessMm: netDepth(input, room.floor), isLaidLevel }),
    ceiling: shifted(levels.ceiling, -ceilingMm),
    parts: linedRoofs(levels, outline, ceilingMm),
  }
}

/** What the choice for a surface takes in front of the line that was drawn; negative: it gives room back. */
export function netDepth({ scheme, catalogue }: HeightsInput, facts: SurfaceFacts): Millimetres {
  const choice = choiceFor(scheme, facts.id)
  return depthsOf(facts, choice, catalogue.assemblies.get(choice.assembly) ?? null).net
}

/** How far the new floor lies over the old one at a place, mm. */
export function floorTakesAt({ levels, floor }: Faces, point: Point): Millimetres {
  return planeAt(floor, point) - planeAt(levels.floor, point)
}

export function outlineOf(room: Room): Point[] {
  return room.corners.map((corner): Point => [corner.xMm, corner.yMm])
}
