import type { ReceiverAnswer } from '#analysis/paths/answer.ts'
import type { Caution } from '#analysis/results.ts'
import type { Scheme } from '#analysis/scheme.ts'
import type { Receiver, Source } from '#analysis/target.ts'
import type { Catalogue } from '#assemblies/assembly.ts'

/** Somebody who is named on the sheet. */
export interface SheetReceiver {
  readonly receiver: Receiver
  /** null: none chosen. */
  readonly source: Source | null
  readonly answer: ReceiverAnswer
}

/** What a sheet tells of who hears what. */
export interface SheetHeard {
  readonly scheme: Scheme
  readonly catalogue: Catalogue
  /** In the project's order. */
  readonly receivers: readonly SheetReceiver[]
  /** Beside those of the scheme's result. */
  readonly cautions: readonly Caution[]
  /** The receiver whose shares stand on the plan; absent: the one that is worst off. */
  readonly marked?: string | undefined
}

/** Whose shares stand on the plan; null: nobody is named. */
export function markedReceiver({ receivers, marked }: SheetHeard): SheetReceiver | null {
  const asked = receivers.find(({ receiver }) => receiver.id === marked)
  const rank = ({ answer }: SheetReceiver) => answer.marginLow95Db ?? Number.POSITIVE_INFINITY
  return asked ?? [...receivers].sort((one, other) => rank(one) - rank(other))[0] ?? null
}
