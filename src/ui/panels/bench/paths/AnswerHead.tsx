import type { ReceiverAnswer } from '#analysis/paths/answer.ts'
import {
  decidingWords,
  heldWords,
  limitWords,
  marginRange,
  marginWords,
  notInMargin,
} from '#analysis/paths/answerWords.ts'
import { ChoiceField } from '#ui/fields/ChoiceField.tsx'
import { useHeard } from '#ui/panels/bench/paths/useHeard.ts'
import { Verdict } from '#ui/panels/Verdict.tsx'
import { useSession } from '#ui/session.ts'

interface Props {
  readonly answer: ReceiverAnswer
  readonly answers: readonly ReceiverAnswer[]
}

/** Who is spoken of, the margin in words with its range, and the weakest path in a sentence. */
export function AnswerHead({ answer, answers }: Props) {
  const { view } = useSession()
  const { receiver, source } = useHeard(answer)
  const notIn = notInMargin(answer)
  const sentence = sentenceOf(answer)
  const facts = [
    marginRange(answer),
    decidingWords(answer),
    source?.name ?? 'no source yet',
    `limit ${receiver ? heldWords(receiver) : limitWords(answer.limit)}`,
  ]
  return (
    <div className="answer-head">
      <ChoiceField
        name="receiver"
        label="Heard by"
        value={answer.receiverId}
        options={answers.map(({ receiverId, name, verdictWords }) => ({
          value: receiverId,
          text: `${name} · ${verdictWords}`,
        }))}
        onChoose={(receiverId) => view.setState({ receiverId })}
      />
      <p className="answer-margin">
        <strong>{marginWords(answer.marginDb)}</strong>{' '}
        {answer.marginDb !== null && (
          <span className="answer-verdict">
            <Verdict answer={answer} />
          </span>
        )}
        <span className="answer-facts">{facts.filter((fact) => fact !== null).join(' · ')}</span>
      </p>
      {(sentence !== '' || notIn !== null) && (
        <p className="answer-sentence">
          {sentence} {notIn !== null && <span className="answer-not-in">{notIn}</span>}
        </p>
      )}
    </div>
  )
}

/** What is missing of the ways themselves stands in a list of its own, with the way there. */
function sentenceOf({ sentence, unknown }: ReceiverAnswer): string {
  return unknown.reduce((text, { why }) => text.replace(why, ''), sentence).trim()
}
