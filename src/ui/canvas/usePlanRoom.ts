import { type PlanRoom, planRoom } from '#ui/canvas/planRoom.ts'
import { useRoom, useScheme } from '#ui/session.ts'

/** The room on the page with what the scheme on the page puts into it. */
export function usePlanRoom(): PlanRoom {
  return planRoom(useRoom(), useScheme())
}
