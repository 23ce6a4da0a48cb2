import { targetCautions } from '#analysis/cautions/targets.ts'
import { type AnswerInput, answerReceivers } from '#analysis/paths/answerReceivers.ts'
import { type MeasuredComparison, measuredAgainst } from '#analysis/paths/measuredAgainst.ts'
import { type NextStep, nextSteps } from '#analysis/paths/nextSteps.ts'
import type { Caution, SchemeResult } from '#analysis/results.ts'
import type { Scheme } from '#analysis/scheme.ts'
import type { SheetReceiver } from '#drawing/sheet/heard.ts'
import { invariant } from '#units/result.ts'

/** What one receiver hears under a scheme, as the sheet names it, with what reports tell beside. */
export interface Heard extends SheetReceiver {
  /** What was measured on site beside what is predicted; absent: nobody asked. */
  readonly measured?: readonly MeasuredComparison[] | undefined
  /** The best few, the best first; absent: nobody asked. */
  readonly nextSteps?: readonly NextStep[] | undefined
}

/** What is heard from a room under one scheme. */
export interface SchemeHeard {
  readonly scheme: Scheme
  readonly receivers: readonly Heard[]
  /** Beside those of the scheme's result. */
  readonly cautions: readonly Caution[]
}

/** Everything reports tell of who hears what. @param steps  how many next steps to look for; 0: none, which is quicker */
export function heardUnder(input: AnswerInput, steps: number): SchemeHeard {
  const { room, scheme, receivers, sources, result } = input
  return {
    scheme,
    receivers: answerReceivers(input).flatMap((answer) => {
      const receiver = receivers.find(({ id }) => id === answer.receiverId)
      if (!receiver) return []
      const source = sources.find(({ id }) => id === receiver.source) ?? null
      const measured = measuredAgainst(input, receiver, answer)
      const next = steps > 0 ? nextSteps(input, receiver.id).slice(0, steps) : undefined
      return [{ receiver, source, answer, measured, nextSteps: next }]
    }),
    cautions: targetCautions({ room, scheme, receivers, sources, result }),
  }
}

/** What is heard from a room under each of its results, in their order. */
export function heardFrom(
  { schemes, ...given }: Omit<AnswerInput, 'scheme' | 'result'> & { readonly schemes: readonly Scheme[] },
  results: readonly SchemeResult[],
  steps: number,
): readonly SchemeHeard[] {
  return results.map((result) => {
    const scheme = schemes.find(({ id }) => id === result.schemeId)
    invariant(scheme, 'a result is of one of the schemes')
    return heardUnder({ ...given, scheme, result }, steps)
  })
}
