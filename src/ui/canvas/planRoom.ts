import type { Room } from '#analysis/room.ts'
import type { Scheme, SilencerBox } from '#analysis/scheme.ts'
import type { Command } from '#state/command.ts'
import { deleteBox, moveBox } from '#state/commands/boxes.ts'
import { deleteThing, moveThing } from '#state/commands/things.ts'
import type { Thing } from '#state/view.ts'
import type { Millimetres } from '#units/quantity.ts'

/** A room with what the scheme on the page puts into it; absent: nothing is known of a scheme. */
export interface PlanRoom extends Room {
  readonly inScheme?: { readonly id: string; readonly boxes: readonly SilencerBox[] } | undefined
}

const known = new WeakMap<Room, WeakMap<Scheme, PlanRoom>>()

/** The same object while the room and the scheme are the same ones. */
export function planRoom(room: Room, scheme: Scheme): PlanRoom {
  const byScheme = known.get(room) ?? new WeakMap<Scheme, PlanRoom>()
  known.set(room, byScheme)
  const found = byScheme.get(scheme)
  if (found) return found
  const boxes = (scheme.boxes ?? []).filter((box) => box.room === room.id)
  const made: PlanRoom = { ...room, inScheme: { id: scheme.id, boxes } }
  byScheme.set(scheme, made)
  return made
}

export function boxesOf({ inScheme }: PlanRoom): readonly SilencerBox[] {
  return inScheme?.boxes ?? []
}

/** Moves a thing across the plan; a silencer box moves in its scheme alone. */
export function movedBy(room: PlanRoom, thing: Thing, dxMm: Millimetres, dyMm: Millimetres): Command {
  return thing.kind === 'box' && room.inScheme
    ? moveBox(room.inScheme.id, thing.id, dxMm, dyMm)
    : moveThing(room.id, thing, dxMm, dyMm)
}

/** Takes a thing out; a silencer box goes from its scheme alone. */
export function takenAway(room: PlanRoom, thing: Thing): Command {
  return thing.kind === 'box' && room.inScheme ? deleteBox(room.inScheme.id, thing.id) : deleteThing(room.id, thing)
}
