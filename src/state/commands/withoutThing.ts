import type { Room } from '#analysis/room.ts'
import type { Project } from '#project/project.ts'
import type { Refusal } from '#state/command.ts'
import { noThing } from '#state/commands/edit.ts'
import { lastHeight } from '#state/commands/heights.ts'
import { THING_WORDS } from '#state/commands/movedThing.ts'
import { noUnderlay } from '#state/commands/underlays.ts'
import type { Thing } from '#state/view.ts'
import { fail, ok, type Result, unreachable } from '#units/result.ts'

/** The room without a thing; the last height of a room or of a part of its ceiling stays. */
export function withoutThing(room: Room, thing: Thing): Result<Room, Refusal> {
  const { kind, id } = thing
  switch (kind) {
    case 'opening':
      return without(room.openings, thing, (openings) => ({ ...room, openings }))
    case 'obstacle':
      return without(room.obstacles, thing, (obstacles) => ({ ...room, obstacles }))
    case 'drop':
      return without(room.drops, thing, (drops) => ({ ...room, drops }))
    case 'furniture':
      return without(room.furniture, thing, (furniture) => ({ ...room, furniture }))
    case 'ceiling-part':
      return without(room.ceilingParts, thing, (ceilingParts) => ({ ...room, ceilingParts }))
    case 'height':
      return withoutHeight(room, id)
    case 'box':
    case 'partition':
    case 'underlay':
      return noThing(THING_WORDS[kind], id)
    default:
      return unreachable(kind)
  }
}

function without<Entry extends { readonly id: string }>(
  entries: readonly Entry[],
  { kind, id }: Thing,
  put: (entries: readonly Entry[]) => Room,
): Result<Room, Refusal> {
  const index = entries.findIndex((entry) => entry.id === id)
  return index < 0 ? noThing(THING_WORDS[kind], id) : ok(put(entries.toSpliced(index, 1)))
}

function withoutHeight(room: Room, id: string): Result<Room, Refusal> {
  if (room.heights.some((point) => point.id === id)) {
    if (room.heights.length === 1) return fail(lastHeight(room.name))
    return ok({ ...room, heights: room.heights.filter((point) => point.id !== id) })
  }
  const index = room.ceilingParts.findIndex(({ heights }) => heights.some((point) => point.id === id))
  const part = room.ceilingParts[index]
  if (!part) return noThing('height', id)
  if (part.heights.length === 1) return fail(lastHeight(`"${part.name}"`))
  const kept = { ...part, heights: part.heights.filter((point) => point.id !== id) }
  return ok({ ...room, ceilingParts: room.ceilingParts.with(index, kept) })
}

export function withoutUnderlay(project: Project, id: string): Result<Project, Refusal> {
  const underlays = project.underlays.filter((underlay) => underlay.id !== id)
  return underlays.length === project.underlays.length ? noUnderlay(id) : ok({ ...project, underlays })
}
