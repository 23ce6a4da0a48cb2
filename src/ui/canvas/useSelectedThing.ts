import { useMemo } from 'react'
import type { Project } from '#project/project.ts'
import type { Thing } from '#state/view.ts'
import type { PlanRoom } from '#ui/canvas/planRoom.ts'
import { thingShape } from '#ui/canvas/thingShapes.ts'
import { useView } from '#ui/session.ts'

/** The selected thing, as long as it is there: undo and delete leave nothing to hold. */
export function useSelectedThing(project: Project, room: PlanRoom): Thing | null {
  const thing = useView((view) => view.thing)
  return useMemo(() => (thing && isThere(project, room, thing) ? thing : null), [project, room, thing])
}

function isThere(project: Project, room: PlanRoom, thing: Thing): boolean {
  if (thing.kind === 'partition') return project.partitions.some(({ id }) => id === thing.id)
  if (thing.kind === 'underlay') return project.underlays.some(({ id }) => id === thing.id)
  return thingShape(room, thing) !== null
}
