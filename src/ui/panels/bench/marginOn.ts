import type { ReceiverAnswer } from '#analysis/paths/answer.ts'
import type { AnswerInput } from '#analysis/paths/answerReceivers.ts'
import { notInMargin } from '#analysis/paths/answerWords.ts'
import { headed } from '#analysis/paths/names.ts'
import { marginWith } from '#analysis/paths/next/margins.ts'
import { choiceFor } from '#analysis/scheme.ts'
import type { BenchSurface, Candidate, Quiet } from '#ui/panels/bench/candidates.ts'
import type { Margins } from '#ui/panels/bench/rulerMarks.ts'
import { listOf } from '#ui/panels/words.ts'

/** What the margin of the shown receiver says of the surfaces in hand. */
export type MarginOn =
  /** Nobody is to be protected from this room yet. */
  | { readonly kind: 'none' }
  /** A full sentence: why the ruler cannot show it. */
  | { readonly kind: 'not-known'; readonly why: string }
  /** One under which the margin is not known is missing; beside it always stands what no airborne figure holds. */
  | { readonly kind: 'known'; readonly margins: Margins; readonly beside: string | null }

/**
 * The margin the shown receiver would have with every candidate on all of these surfaces, each keeping its own lining or
 * not as it was chosen.
 * @param answer  what that receiver hears now; null: the room has none
 */
export function marginOn(
  input: AnswerInput,
  answer: ReceiverAnswer | null,
  surfaces: readonly BenchSurface[],
  candidates: readonly Candidate[],
): MarginOn {
  const receiver = input.receivers.find(({ id }) => id === answer?.receiverId)
  if (!answer || !receiver) return { kind: 'none' }
  const ids = surfaces.map(({ facts }) => facts.id)
  if (!carriesAny(answer, ids)) {
    const names = listOf(surfaces.map(({ label }) => label))
    const why = `${headed(answer.name)}${answer.name.includes(',') ? ',' : ''} hears nothing by way of ${names}, so no margin depends on what is built there; the ruler shows STC.`
    return { kind: 'not-known', why }
  }
  const margins = new Map<string, Quiet>()
  for (const { id } of candidates) {
    const choices = Object.fromEntries(
      ids.map((surface) => [surface, { ...choiceFor(input.scheme, surface), assembly: id }]),
    )
    const margin = marginWith(input, receiver, { choices })
    if (margin) margins.set(id, { value: margin.middle, low: margin.low, high: margin.high })
  }
  if (margins.size > 0) {
    return { kind: 'known', margins: { receiver: answer.name, byCandidate: margins }, beside: notInMargin(answer) }
  }
  const why = answer.unknown[0]?.why ?? answer.sentence
  return { kind: 'not-known', why: `The margin at ${answer.name} is not known, so the ruler shows STC. ${why}` }
}

/** Whether sound comes to the receiver through one of these surfaces, or along it. */
function carriesAny({ paths, unknown }: ReceiverAnswer, ids: readonly string[]): boolean {
  return [...paths.map(({ path }) => path), ...unknown].some(({ element }) => ids.includes(element))
}
