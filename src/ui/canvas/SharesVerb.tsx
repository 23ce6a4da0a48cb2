import { whereWords } from '#analysis/paths/answerWords.ts'
import { planShares } from '#drawing/plan/shares.ts'
import { useReceiverAnswer } from '#ui/answers.ts'
import type { PlanFrame } from '#ui/canvas/usePlanFrame.ts'
import { showsShares } from '#ui/canvas/usePlanShares.ts'
import { useRoom, useSession, useView } from '#ui/session.ts'

/** Shows or hides what each wall and opening carries of what a receiver hears; nothing where that is not known. */
export function SharesVerb({ size }: Pick<PlanFrame, 'size'>) {
  const { view } = useSession()
  const room = useRoom()
  const answer = useReceiverAnswer()
  const isShown = useView((state) => showsShares(state, size.width))
  const shares = answer && planShares(answer, room)
  if (!answer || !shares) return null
  return (
    <button
      type="button"
      className="verb"
      aria-pressed={isShown}
      title={shares.heading}
      onClick={() => view.setState({ showsShares: !isShown })}
    >
      {`Shares${whereWords(answer)}`}
    </button>
  )
}
