import type { PlanPoint, Room } from '#analysis/room.ts'
import type { Project } from '#project/project.ts'
import type { Refusal } from '#state/command.ts'
import { withDrop } from '#state/commands/drops.ts'
import { withFurniture } from '#state/commands/furniture.ts'
import { withCeilingPart, withHeight } from '#state/commands/heights.ts'
import { withObstacle } from '#state/commands/obstacles.ts'
import { noUnderlay, withUnderlay } from '#state/commands/underlays.ts'
import type { Thing, ThingKind } from '#state/view.ts'
import type { LengthUnit } from '#units/quantity.ts'
import { fail, type Result } from '#units/result.ts'

/** What a thing is called in the undo list and in sentences. */
export const THING_WORDS: Readonly<Record<ThingKind, string>> = {
  opening: 'opening',
  obstacle: 'obstacle',
  drop: 'drop',
  height: 'height',
  'ceiling-part': 'ceiling part',
  furniture: 'furniture',
  box: 'silencer box',
  partition: 'partition',
  underlay: 'picture',
}

/** Shifts a place and keeps whatever else is said of it. */
export type Move = <Place extends PlanPoint>(place: Place) => Place

/** The room with a thing shifted; refused where it cannot be there. */
export function movedThing(room: Room, thing: Thing, units: LengthUnit, moved: Move): Result<Room, Refusal> {
  switch (thing.kind) {
    case 'obstacle':
      return withObstacle(room, thing.id, (it) => ({ ...it, corners: it.corners.map(moved) }))
    case 'drop':
      return withDrop(room, thing.id, units, (it) => ({ ...it, corners: it.corners.map(moved) }))
    case 'height':
      return withHeight(room, thing.id, moved)
    case 'ceiling-part':
      return withCeilingPart(room, thing.id, (it) => ({
        ...it,
        corners: it.corners.map(moved),
        heights: it.heights.map(moved),
      }))
    case 'furniture':
      return withFurniture(room, thing.id, moved)
    default:
      return notMoved(thing.kind)
  }
}

/** The project with a picture shifted; a locked one stays. */
export function movedUnderlay(project: Project, id: string, moved: Move): Result<Project, Refusal> {
  const underlay = project.underlays.find((candidate) => candidate.id === id)
  if (!underlay) return noUnderlay(id)
  if (!underlay.isLocked) return withUnderlay(project, id, moved)
  return fail({ code: 'locked', message: `"${underlay.name}" is locked; unlock it to move it.` })
}

/** The room with one corner of a footprint moved; refused where its sides would cross. */
export function movedCorner(
  room: Room,
  thing: Thing,
  units: LengthUnit,
  index: number,
  place: PlanPoint,
): Result<Room, Refusal> {
  const withMoved = <Shape extends { readonly corners: readonly PlanPoint[] }>(shape: Shape): Shape => ({
    ...shape,
    corners: shape.corners.map((corner, i) => (i === index ? place : corner)),
  })
  switch (thing.kind) {
    case 'obstacle':
      return withObstacle(room, thing.id, withMoved)
    case 'drop':
      return withDrop(room, thing.id, units, withMoved)
    case 'ceiling-part':
      return withCeilingPart(room, thing.id, withMoved)
    default:
      return notMoved(thing.kind)
  }
}

function notMoved(kind: ThingKind): Result<never, Refusal> {
  const message = `A ${THING_WORDS[kind]} is not moved across the plan; change its distances instead.`
  return fail({ code: 'not-moved', message })
}
