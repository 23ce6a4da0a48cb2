import type { Room } from '#analysis/room.ts'
import type { Point } from '#geometry/polygon.ts'
import type { Partition } from '#project/project.ts'
import type { Command } from '#state/command.ts'
import { changeOpening } from '#state/commands/openings.ts'
import { moveWall } from '#state/commands/wall.ts'
import type { Thing } from '#state/view.ts'
import { movedBy, type PlanRoom, takenAway } from '#ui/canvas/planRoom.ts'
import { NOTHING_SELECTED } from '#ui/canvas/selecting.ts'
import { laid, TURN_STEP, wholeTurn } from '#ui/canvas/thingDrags.ts'
import { isSameThing, thingsOf, turnable, wallRun } from '#ui/canvas/thingShapes.ts'
import type { Session } from '#ui/session.ts'
import type { ShortcutHandlers } from '#ui/shortcuts.ts'
import type { Millimetres } from '#units/quantity.ts'

/** 10 mm, with Shift 100, with Alt 1. */
export function stepOf(event: KeyboardEvent): Millimetres {
  if (event.shiftKey) return 100
  return event.altKey ? 1 : 10
}

/** Keys while a thing is selected: arrows move it, Delete takes it out, R turns a piece. */
export function thingHandlers(session: Session, room: PlanRoom, thing: Thing): ShortcutHandlers {
  const arrow = (x: number, y: number) => (event: KeyboardEvent) => {
    const { partitions, rooms } = session.document.store.getState().project
    const step: Point = [x * stepOf(event), y * stepOf(event)]
    const partition = partitions.find(({ id }) => thing.kind === 'partition' && id === thing.id)
    const command = partition ? partitionStep(rooms, partition, step) : thingStep(room, thing, step)
    if (command) session.document.run(command)
  }
  const piece = turnable(room, thing)
  const turn = (event: KeyboardEvent) => {
    if (!piece) return
    const angleDeg = wholeTurn(piece.angleDeg + (event.shiftKey ? -TURN_STEP : TURN_STEP))
    session.document.run(laid(room, thing, { angleDeg }))
  }
  return {
    next: () => walkAll(session, room, 1),
    previous: () => walkAll(session, room, -1),
    'move-left': arrow(-1, 0),
    'move-right': arrow(1, 0),
    'move-up': arrow(0, 1),
    'move-down': arrow(0, -1),
    delete: () => {
      if (session.document.run(takenAway(room, thing)).ok) session.view.setState(NOTHING_SELECTED)
    },
    ...(piece ? { turn } : {}),
  }
}

/** A step of a thing; an opening takes the part of it that runs along its wall, and stops at the wall's ends. */
function thingStep(room: PlanRoom, thing: Thing, [dx, dy]: Point): Command | null {
  if (thing.kind !== 'opening') return movedBy(room, thing, dx, dy)
  const opening = room.openings.find(({ id }) => id === thing.id)
  const run = opening && wallRun(room, opening.wall)
  if (!opening || !run) return null
  const share = dx * run.along[0] + dy * run.along[1]
  const size = Math.hypot(dx, dy)
  // Across the wall there is nowhere to go; along a slanted one either arrow of its direction makes the whole step.
  const step = Math.abs(share) < size / 4 ? 0 : Math.sign(share) * size
  const most = Math.max(0, run.length - opening.widthMm)
  const fromMm = Math.min(most, Math.max(0, opening.fromMm + step))
  return step === 0 ? null : changeOpening(room.id, opening.id, { fromMm })
}

/** A step of a partition across its line. */
function partitionStep(rooms: readonly Room[], { sides: [side] }: Partition, [dx, dy]: Point): Command | null {
  const room = rooms.find(({ id }) => id === side.room)
  const run = room ? wallRun(room, side.wall) : null
  if (!run) return null
  const inward = -dx * run.along[1] + dy * run.along[0]
  const size = Math.hypot(dx, dy)
  return Math.abs(inward) < size / 4 ? null : moveWall(side.room, side.wall, Math.sign(inward) * size)
}

/** The next wall, ceiling, floor or thing of the room. */
export function walkAll({ view }: Session, room: PlanRoom, by: number): void {
  const { surfaceIds, thing } = view.getState()
  const stops = [
    ...[...room.walls, room.ceiling, room.floor].map(({ id }) => ({ surface: id })),
    ...thingsOf(room).map((one) => ({ thing: one })),
  ]
  const last = surfaceIds.at(-1)
  const now = stops.findIndex((stop) =>
    'thing' in stop ? isSameThing(stop.thing, thing) : thing === null && stop.surface === last,
  )
  const next = neighbour(stops, now, by)
  if (next === undefined) return
  view.setState(
    'thing' in next ? { ...NOTHING_SELECTED, thing: next.thing } : { ...NOTHING_SELECTED, surfaceIds: [next.surface] },
  )
}

/** The one before or after, round and round; from nowhere the first or the last. */
export function neighbour<Stop>(stops: readonly Stop[], at: number, by: number): Stop | undefined {
  if (at < 0) return by > 0 ? stops[0] : stops.at(-1)
  return stops[(at + by + stops.length) % stops.length]
}
