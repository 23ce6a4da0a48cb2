import type { AnswerInput } from '#analysis/paths/answerReceivers.ts'
import type { Margin } from '#analysis/paths/margin.ts'
import { tryQuickly } from '#analysis/paths/next/tryOut.ts'
import type { SchemeChange } from '#analysis/scheme.ts'
import type { Receiver } from '#analysis/target.ts'

/** The margin a receiver would have with a change made to the scheme; null: not known then. */
export function marginWith(input: AnswerInput, receiver: Receiver, change: SchemeChange): Margin | null {
  return tryQuickly(input, receiver, change).margin
}
