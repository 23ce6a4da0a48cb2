import type { PlanPoint } from '#analysis/room.ts'
import type { Command } from '#state/command.ts'
import { editRoom } from '#state/commands/edit.ts'
import { joinedRooms } from '#state/commands/joinRooms.ts'
import { movedCorner, movedThing, movedUnderlay, THING_WORDS } from '#state/commands/movedThing.ts'
import { withoutThing, withoutUnderlay } from '#state/commands/withoutThing.ts'
import type { Thing } from '#state/view.ts'
import type { Millimetres } from '#units/quantity.ts'

/** Moves a thing across the plan by a vector; a ceiling part takes its heights with it. */
export function moveThing(roomId: string, thing: Thing, dxMm: Millimetres, dyMm: Millimetres): Command {
  const moved = <Place extends PlanPoint>(place: Place): Place => ({
    ...place,
    xMm: place.xMm + dxMm,
    yMm: place.yMm + dyMm,
  })
  return {
    label: `move ${THING_WORDS[thing.kind]}`,
    apply: (project) =>
      thing.kind === 'underlay'
        ? movedUnderlay(project, thing.id, moved)
        : editRoom(project, roomId, (room) => movedThing(room, thing, project.units, moved)),
  }
}

/** Moves one corner of a footprint to a place in the plan. */
export function moveThingCorner(
  roomId: string,
  thing: Thing,
  index: number,
  xMm: Millimetres,
  yMm: Millimetres,
): Command {
  return {
    label: `move a corner of the ${THING_WORDS[thing.kind]}`,
    apply: (project) =>
      editRoom(project, roomId, (room) => movedCorner(room, thing, project.units, index, { xMm, yMm })),
  }
}

/** Takes a thing out. A partition's two rooms become one; what schemes say of an obstacle goes with it. */
export function deleteThing(roomId: string, thing: Thing): Command {
  return {
    label: `delete ${THING_WORDS[thing.kind]}`,
    apply: (project) => {
      if (thing.kind === 'partition') return joinedRooms(project, thing.id)
      if (thing.kind === 'underlay') return withoutUnderlay(project, thing.id)
      return editRoom(project, roomId, (room) => withoutThing(room, thing))
    },
  }
}
