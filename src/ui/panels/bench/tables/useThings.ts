import type { Project } from '#project/project.ts'
import type { Command } from '#state/command.ts'
import type { Thing, ThingKind } from '#state/view.ts'
import { boxesOf, type PlanRoom, planRoom, takenAway } from '#ui/canvas/planRoom.ts'
import { usePlanRoom } from '#ui/canvas/usePlanRoom.ts'
import { useScheme, useSession, useShownProject, useView } from '#ui/session.ts'

/** The selected thing, where this room or project still has it; a stale selection is none. */
export function useThing(): Thing | null {
  const project = useShownProject()
  const room = usePlanRoom()
  const thing = useView((view) => view.thing)
  return thing !== null && hasThing(project, room, thing) ? thing : null
}

function hasThing(project: Project, room: PlanRoom, { kind, id }: Thing): boolean {
  return idsOf(project, room, kind).includes(id)
}

/** Ids of all things of a kind, in the order of their list. */
export function idsOf(project: Project, room: PlanRoom, kind: ThingKind): readonly string[] {
  switch (kind) {
    case 'opening':
      return room.openings.map(({ id }) => id)
    case 'obstacle':
      return room.obstacles.map(({ id }) => id)
    case 'drop':
      return room.drops.map(({ id }) => id)
    case 'height':
      return [room.heights, ...room.ceilingParts.map(({ heights }) => heights)].flat().map(({ id }) => id)
    case 'ceiling-part':
      return room.ceilingParts.map(({ id }) => id)
    case 'furniture':
      return room.furniture.map(({ id }) => id)
    case 'box':
      return boxesOf(room).map(({ id }) => id)
    case 'partition':
      return project.partitions.map(({ id }) => id)
    case 'underlay':
      return project.underlays.map(({ id }) => id)
    default:
      return kind satisfies never
  }
}

/** What a table does with its things. */
export interface ThingVerbs {
  /** Selects a thing and stays with the table. */
  readonly pick: (thing: Thing) => void
  /** Selects a thing and shows its own form. */
  readonly open: (thing: Thing) => void
  readonly remove: (thing: Thing) => void
  /** Adds a thing and picks it; a refusal is said under the plan. */
  readonly add: (kind: ThingKind, command: Command) => void
}

export function useThingVerbs(): ThingVerbs {
  const { document, view } = useSession()
  const room = usePlanRoom()
  const { id: schemeId } = useScheme()
  const nothing = { surfaceIds: [], cornerId: null }
  const pick = (thing: Thing) => view.setState({ ...nothing, thing, listedThing: thing })
  return {
    pick,
    open: ({ kind, id }) => view.setState({ ...nothing, thing: { kind, id }, listedThing: null }),
    remove: (thing) => {
      document.run(takenAway(room, thing))
    },
    add: (kind, command) => {
      const known = new Set(idsOf(document.store.getState().project, room, kind))
      const outcome = document.run(command)
      if (!outcome.ok) return
      const now = outcome.value.rooms.find(({ id }) => id === room.id)
      const scheme = outcome.value.schemes.find(({ id }) => id === schemeId)
      const added = now && scheme && idsOf(outcome.value, planRoom(now, scheme), kind).find((id) => !known.has(id))
      if (added !== undefined) pick({ kind, id: added })
    },
  }
}
