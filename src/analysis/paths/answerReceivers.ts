import type { ReceiverAnswer } from '#analysis/paths/answer.ts'
import { answerReceiver } from '#analysis/paths/answerReceiver.ts'
import type { SchemeResult } from '#analysis/results.ts'
import type { Room } from '#analysis/room.ts'
import type { Scheme } from '#analysis/scheme.ts'
import type { Receiver, Source } from '#analysis/target.ts'
import type { Catalogue } from '#assemblies/assembly.ts'

export interface AnswerInput {
  readonly room: Room
  readonly scheme: Scheme
  /** Of that room under that scheme. */
  readonly result: SchemeResult
  readonly sources: readonly Source[]
  /** Of the whole project: those of other rooms are passed over. */
  readonly receivers: readonly Receiver[]
  readonly catalogue: Catalogue
}

/** What every receiver of a room hears under a scheme, in the project's order. */
export function answerReceivers(input: AnswerInput): readonly ReceiverAnswer[] {
  return input.receivers
    .filter((receiver) => receiver.room === input.room.id)
    .map((receiver) => answerReceiver(input, receiver))
}
