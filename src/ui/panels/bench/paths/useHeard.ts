import type { ReceiverAnswer } from '#analysis/paths/answer.ts'
import type { Receiver, Source } from '#analysis/target.ts'
import { useShownProject } from '#ui/session.ts'

/** What the user said of a receiver, and what is played for it. */
export interface Heard {
  /** null: it is gone. */
  readonly receiver: Receiver | null
  readonly source: Source | null
}

export function useHeard({ receiverId }: Pick<ReceiverAnswer, 'receiverId'>): Heard {
  const { receivers, sources } = useShownProject()
  const receiver = receivers.find(({ id }) => id === receiverId) ?? null
  return { receiver, source: sources.find(({ id }) => id === receiver?.source) ?? null }
}
