import { useMemo } from 'react'
import type { Room } from '#analysis/room.ts'
import type { Mark } from '#drawing/model.ts'
import { shareKeyText } from '#drawing/plan/shareKeyMarks.ts'
import { type PlanShares, planShares } from '#drawing/plan/shares.ts'
import type { ViewState } from '#state/view.ts'
import { useReceiverAnswer } from '#ui/answers.ts'
import type { Size } from '#ui/canvas/usePlanFrame.ts'
import { useView } from '#ui/session.ts'

/** Shares stand on a plan of this width: as was asked, else where there is room for them and for their words. */
export function showsShares(view: Pick<ViewState, 'showsShares'>, width: number): boolean {
  return view.showsShares ?? width >= ROOM_FOR_SHARE_KEY
}

/** What the plan marks of what the shown receiver hears; null: it is not known, not wanted, or a tool needs the plan. */
export function usePlanShares(room: Room, { width }: Size): PlanShares | null {
  const answer = useReceiverAnswer()
  const isWanted = useView((view) => showsShares(view, width) && view.tool === 'select')
  return useMemo(() => (isWanted && answer ? planShares(answer, room) : null), [isWanted, answer, room])
}

/** A plan less wide than this has no room for what its shares are of: it is said under it, px. */
export const ROOM_FOR_SHARE_KEY = 520

interface Drawn {
  readonly room: Room
  readonly shares: PlanShares | null
  readonly size: Size
  readonly marks: readonly Mark[]
}

/** What the shares on a plan are of, and whether the plan itself says so; null: there are none. */
export function sharesSaid({
  room,
  shares,
  size,
  marks,
}: Drawn): { readonly text: string; readonly isDrawn: boolean } | null {
  if (shares === null) return null
  return { text: shareKeyText(room, shares, marks), isDrawn: size.width >= ROOM_FOR_SHARE_KEY }
}
