import type { ReceiverAnswer } from '#analysis/paths/answer.ts'
import { projectAnswers } from '#state/answers.ts'
import { useAnalysis, useRoom, useScheme, useShownProject, useView } from '#ui/session.ts'

const NONE: readonly ReceiverAnswer[] = []

/** What every receiver of the room on the page hears under the scheme on the page; none where the plan is refused. */
export function useAnswers(): readonly ReceiverAnswer[] {
  const project = useShownProject()
  const room = useRoom()
  const scheme = useScheme()
  const analysed = useAnalysis()
  return analysed.ok ? projectAnswers(project, room, scheme, analysed.value) : NONE
}

/** The receiver that was picked; else the one that is worst off; null where the room has none. */
export function useReceiverAnswer(): ReceiverAnswer | null {
  const answers = useAnswers()
  const receiverId = useView((view) => view.receiverId)
  return answers.find((answer) => answer.receiverId === receiverId) ?? worstAnswer(answers)
}

/** The receiver with the least lower end of the margin; one whose margin is not known only where none is. */
export function worstAnswer(answers: readonly ReceiverAnswer[]): ReceiverAnswer | null {
  const rank = ({ marginLow95Db }: ReceiverAnswer) => marginLow95Db ?? Number.POSITIVE_INFINITY
  return answers.reduce<ReceiverAnswer | null>(
    (worst, answer) => (worst === null || rank(answer) < rank(worst) ? answer : worst),
    null,
  )
}
