import type { ReceiverAnswer } from '#analysis/paths/answer.ts'
import { marginInTable } from '#analysis/paths/answerWords.ts'
import { useAnswers, useReceiverAnswer } from '#ui/answers.ts'
import { NOTHING_SELECTED } from '#ui/canvas/selecting.ts'
import { HearIt } from '#ui/hear/HearIt.tsx'
import { AnswerHead } from '#ui/panels/bench/paths/AnswerHead.tsx'
import { AnswerNotes } from '#ui/panels/bench/paths/AnswerNotes.tsx'
import { Levels } from '#ui/panels/bench/paths/Levels.tsx'
import { MeasuredPart } from '#ui/panels/bench/paths/MeasuredPart.tsx'
import { NextList } from '#ui/panels/bench/paths/NextList.tsx'
import { PathTable } from '#ui/panels/bench/paths/PathTable.tsx'
import { Shares } from '#ui/panels/bench/paths/Shares.tsx'
import { SiteFigures } from '#ui/panels/bench/paths/SiteFigures.tsx'
import { UnknownPaths } from '#ui/panels/bench/paths/UnknownPaths.tsx'
import { useHeard } from '#ui/panels/bench/paths/useHeard.ts'
import { useAnalysis, useSession } from '#ui/session.ts'

/** What one receiver hears, by which way, against its limit, and what to do about it. */
export function PathsView() {
  const answers = useAnswers()
  const answer = useReceiverAnswer()
  const analysed = useAnalysis()
  if (answer) return <Answer answer={answer} answers={answers} />
  return analysed.ok ? (
    <NobodyYet />
  ) : (
    <p className="bench-said">{analysed.error.message} Until it is put right nothing can be said of who hears what.</p>
  )
}

function NobodyYet() {
  const { view } = useSession()
  return (
    <div className="bench-view paths-none">
      <p className="bench-said">
        Nobody is named yet who must not hear it, so there is no path to judge. Set a target: what is played, who must
        not hear it, and how much is too much.
      </p>
      <button
        type="button"
        className="action plain"
        onClick={() => view.setState({ ...NOTHING_SELECTED, roomView: 'targets' })}
      >
        Set a target
      </button>
    </div>
  )
}

interface Props {
  readonly answer: ReceiverAnswer
  readonly answers: readonly ReceiverAnswer[]
}

function Answer({ answer, answers }: Props) {
  const { receiver, source } = useHeard(answer)
  return (
    <div className="bench-view paths-view">
      <AnswerHead answer={answer} answers={answers} />
      <p className="visually-hidden" role="status">
        {answer.name}: {marginInTable(answer)}, {answer.verdictWords}
      </p>
      <UnknownPaths answer={answer} />
      <div className="paths-columns">
        <Shares answer={answer} />
        <Levels answer={answer} />
        <NextList answer={answer} />
      </div>
      <SiteFigures answer={answer} />
      <PathTable answer={answer} />
      {receiver && receiver.measured.length > 0 && <MeasuredPart answer={answer} receiver={receiver} />}
      <AnswerNotes answer={answer} />
      <HearIt answer={answer} source={source} backgroundNc={receiver?.backgroundNc ?? 0} />
    </div>
  )
}
