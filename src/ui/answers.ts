import type { ReceiverAnswer } from '#analysis/paths/answer.ts'
import { projectAnswers } from '#state/answers.ts'
import { useAnalysis, useDocument, useRoom, useScheme, useSession, useShownProject, useView } from '#ui/session.ts'

const NONE: readonly ReceiverAnswer[] = []

/** What every receiver of the room on the page hears under the scheme on the page; none where the plan is refused. */
export function useAnswers(): readonly ReceiverAnswer[] {
  const project = useShownProject()
  const room = useRoom()
  const scheme = useScheme()
  const analysed = useAnalysis()
  return analysed.ok ? projectAnswers(project, room, scheme, analysed.value) : NONE
}

/** What the receiver hears that the page speaks of; null where the room has none. */
export function useReceiverAnswer(): ReceiverAnswer | null {
  const answers = useAnswers()
  const receiverId = useReceiverId()
  return answers.find((answer) => answer.receiverId === receiverId) ?? worstAnswer(answers)
}

/**
 * The receiver the page speaks of: the one that was picked, else the one that is worst off in what is recorded. A hand
 * that tries something must not make the page speak of another one meanwhile.
 */
export function useReceiverId(): string | null {
  const recorded = useRecordedAnswers()
  const pickedId = useView((view) => view.receiverId)
  const isThere = recorded.some(({ receiverId }) => receiverId === pickedId)
  return isThere ? pickedId : (worstAnswer(recorded)?.receiverId ?? null)
}

function useRecordedAnswers(): readonly ReceiverAnswer[] {
  const { results } = useSession()
  const project = useDocument((state) => state.project)
  const roomId = useRoom().id
  const schemeId = useScheme().id
  const room = project.rooms.find(({ id }) => id === roomId)
  const scheme = project.schemes.find(({ id }) => id === schemeId)
  if (!room || !scheme) return NONE
  const analysed = results(project, room, scheme)
  return analysed.ok ? projectAnswers(project, room, scheme, analysed.value) : NONE
}

/** The receiver with the least lower end of the margin; one whose margin is not known only where none is. */
export function worstAnswer(answers: readonly ReceiverAnswer[]): ReceiverAnswer | null {
  const rank = ({ marginLow95Db }: ReceiverAnswer) => marginLow95Db ?? Number.POSITIVE_INFINITY
  return answers.reduce<ReceiverAnswer | null>(
    (worst, answer) => (worst === null || rank(answer) < rank(worst) ? answer : worst),
    null,
  )
}
