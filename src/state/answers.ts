import type { ReceiverAnswer } from '#analysis/paths/answer.ts'
import { answerReceivers } from '#analysis/paths/answerReceivers.ts'
import type { SchemeResult } from '#analysis/results.ts'
import type { Room } from '#analysis/room.ts'
import type { Scheme } from '#analysis/scheme.ts'
import { projectCatalogue } from '#project/catalogue.ts'
import type { Project } from '#project/project.ts'

/** Answers by result; a result belongs to one room, one scheme and one set of own assemblies. */
const known = new WeakMap<SchemeResult, Kept>()

interface Kept {
  readonly project: Pick<Project, 'receivers' | 'sources'>
  readonly answers: readonly ReceiverAnswer[]
}

/** What every receiver of a room hears, remembered while the result, the receivers and the sources are the same objects. */
export function projectAnswers(
  project: Project,
  room: Room,
  scheme: Scheme,
  result: SchemeResult,
): readonly ReceiverAnswer[] {
  const found = known.get(result)
  if (found && found.project.receivers === project.receivers && found.project.sources === project.sources) {
    return found.answers
  }
  const { receivers, sources } = project
  const answers = answerReceivers({ room, scheme, result, receivers, sources, catalogue: projectCatalogue(project) })
  known.set(result, { project: { receivers, sources }, answers })
  return answers
}
