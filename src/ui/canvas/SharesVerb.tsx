import { whereWords } from '#analysis/paths/answerWords.ts'
import { planShares } from '#drawing/plan/shares.ts'
import { useReceiverAnswer } from '#ui/answers.ts'
import { useRoom, useSession, useView } from '#ui/session.ts'

/** Shows or hides what each wall and opening carries of what a receiver hears; nothing where that is not known. */
export function SharesVerb() {
  const { view } = useSession()
  const room = useRoom()
  const answer = useReceiverAnswer()
  const showsShares = useView((state) => state.showsShares)
  const shares = answer && planShares(answer, room)
  if (!answer || !shares) return null
  return (
    <button
      type="button"
      className="verb"
      aria-pressed={showsShares}
      title={shares.heading}
      onClick={() => view.setState({ showsShares: !showsShares })}
    >
      {`Shares${whereWords(answer)}`}
    </button>
  )
}
