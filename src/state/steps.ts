import type { AnswerInput } from '#analysis/paths/answerReceivers.ts'
import { type NextStep, nextStepsByPath } from '#analysis/paths/nextSteps.ts'
import type { SchemeResult } from '#analysis/results.ts'
import type { Room } from '#analysis/room.ts'
import type { Scheme } from '#analysis/scheme.ts'
import type { Receiver } from '#analysis/target.ts'
import { projectCatalogue } from '#project/catalogue.ts'
import type { Project } from '#project/project.ts'

/** Whose next steps, in which room under which scheme. */
export interface StepsOf {
  readonly project: Project
  readonly room: Room
  readonly scheme: Scheme
  readonly result: SchemeResult
  readonly receiver: Receiver
}

interface Kept {
  readonly receiver: Receiver
  readonly sources: Project['sources']
  readonly steps: readonly NextStep[]
}

/** By result, then by receiver; a result belongs to one room, one scheme and one set of own assemblies. */
const known = new WeakMap<SchemeResult, Map<string, Kept>>()

/** Everything an answer is worked out from. */
export function answerInput({ project, room, scheme, result }: Omit<StepsOf, 'receiver'>): AnswerInput {
  const { sources, receivers } = project
  return { room, scheme, result, sources, receivers, catalogue: projectCatalogue(project) }
}

/** Next steps that were worked out already; null: not yet. */
export function knownSteps({ project, result, receiver }: StepsOf): readonly NextStep[] | null {
  const kept = known.get(result)?.get(receiver.id)
  return kept && kept.receiver === receiver && kept.sources === project.sources ? kept.steps : null
}

/**
 * Works next steps out, one path at a time, and remembers them while result, receiver and sources are the same objects:
 * they take a while, and whoever asks may breathe between or stop.
 */
export function* workOutSteps(of: StepsOf): Generator<undefined, readonly NextStep[], undefined> {
  const { project, result, receiver } = of
  const steps = knownSteps(of) ?? (yield* nextStepsByPath(answerInput(of), receiver.id))
  const byReceiver = known.get(result) ?? new Map<string, Kept>()
  known.set(result, byReceiver.set(receiver.id, { receiver, sources: project.sources, steps }))
  return steps
}
