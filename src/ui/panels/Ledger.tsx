import { schemeLetter } from '#state/commands/schemes.ts'
import { useReceiverId, worstAnswer } from '#ui/answers.ts'
import { type AnswerProps, MarginLine, WeakestLine } from '#ui/panels/ledger/marginLines.tsx'
import { Cautions, clashesOf, QuietLine, WeightLine } from '#ui/panels/ledger/quietLines.tsx'
import { FloorLine, HeightLine, type LineProps, VolumeLine } from '#ui/panels/ledger/spaceLines.tsx'
import { useAllCautions } from '#ui/panels/ledger/useAllCautions.ts'
import { useLedger } from '#ui/panels/ledger/useLedger.ts'
import { schemeTitle } from '#ui/panels/words.ts'
import { useScheme, useShownProject } from '#ui/session.ts'

/** The six numbers a client asks first, each before and after; a line opens downward into its detail. */
export function Ledger() {
  const project = useShownProject()
  const scheme = useScheme()
  const { result, refusal, before, cause, answers, answersBefore } = useLedger()
  const receiverId = useReceiverId()
  const answer = answers.find((candidate) => candidate.receiverId === receiverId) ?? worstAnswer(answers)
  const letter = schemeLetter(project.schemes.findIndex(({ id }) => id === scheme.id))
  return (
    <aside aria-label="Ledger" className="ledger">
      <h2 className="ledger-head">Ledger · {schemeTitle(scheme.name, letter)}</h2>
      {refusal !== null && (
        <p className="ledger-refusal" role="alert">
          <span className="warn-sign" aria-hidden="true" />
          {refusal} {result && 'The numbers below are the last that could be computed.'}
        </p>
      )}
      {result && (
        <div className={refusal === null ? undefined : 'is-former'}>
          <Lines
            line={{ result, before: refusal === null ? before : null, cause, unit: project.units }}
            heard={answer && { answer, answers, answersBefore: refusal === null ? answersBefore : [], cause, result }}
          />
        </div>
      )}
    </aside>
  )
}

interface LinesProps {
  readonly line: LineProps
  /** null: nobody is named yet who must not hear it. */
  readonly heard: AnswerProps | null
}

function Lines({ line, heard }: LinesProps) {
  const cautions = useAllCautions(line.result)
  return (
    <>
      <FloorLine {...line} />
      <HeightLine {...line} />
      <VolumeLine {...line} />
      {heard === null ? (
        <QuietLine {...line} />
      ) : (
        <>
          <MarginLine {...heard} />
          <WeakestLine {...heard} />
        </>
      )}
      <WeightLine {...line} />
      <Cautions cautions={cautions} clashes={clashesOf(line.result)} />
    </>
  )
}
