import type { ReceiverAnswer } from '#analysis/paths/answer.ts'
import { decidingWords, marginRange, marginWords, notInMargin } from '#analysis/paths/answerWords.ts'
import type { Receiver } from '#analysis/target.ts'
import { useAnswers } from '#ui/answers.ts'
import { NOTHING_SELECTED } from '#ui/canvas/selecting.ts'
import { UnknownPaths } from '#ui/panels/bench/paths/UnknownPaths.tsx'
import { Verdict } from '#ui/panels/Verdict.tsx'
import { useSession } from '#ui/session.ts'

/** What the receiver in hand comes to under the scheme on the page; and the way to its paths. */
export function TargetAnswer({ receiver }: { readonly receiver: Receiver }) {
  const { view } = useSession()
  const answer = useAnswers().find(({ receiverId }) => receiverId === receiver.id)
  if (!answer) return null
  const notIn = notInMargin(answer)
  return (
    <div className="target-answer" aria-live="polite">
      <p className="answer-margin">
        <strong>{marginWords(answer.marginDb)}</strong>{' '}
        {answer.marginDb !== null && (
          <span className="answer-verdict">
            <Verdict answer={answer} />
          </span>
        )}
        <span className="answer-facts">{facts(answer)}</span>
        <button
          type="button"
          className="row-button"
          onClick={() => view.setState({ ...NOTHING_SELECTED, roomView: 'paths', receiverId: receiver.id })}
        >
          See its paths
        </button>
      </p>
      {answer.unknown.length > 0 ? (
        <UnknownPaths answer={answer} />
      ) : (
        <p className="target-sentence">{answer.sentence}</p>
      )}
      {notIn !== null && <p className="bench-said">{notIn}</p>}
    </div>
  )
}

function facts(answer: ReceiverAnswer): string {
  return [marginRange(answer), decidingWords(answer)].filter((part) => part !== null).join(' · ')
}
