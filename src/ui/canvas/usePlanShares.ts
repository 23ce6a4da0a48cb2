import { useMemo } from 'react'
import type { Room } from '#analysis/room.ts'
import { type PlanShares, planShares } from '#drawing/plan/shares.ts'
import { useReceiverAnswer } from '#ui/answers.ts'
import { useView } from '#ui/session.ts'

/** What the plan marks of what the shown receiver hears; null: it is not known, not wanted, or a tool needs the plan. */
export function usePlanShares(room: Room): PlanShares | null {
  const answer = useReceiverAnswer()
  const isWanted = useView((view) => view.showsShares && view.tool === 'select')
  return useMemo(() => (isWanted && answer ? planShares(answer, room) : null), [isWanted, answer, room])
}
