import type { ReceiverAnswer } from '#analysis/paths/answer.ts'
import { Problems } from '#ui/panels/bench/tables/rows.tsx'
import { useAllCautions } from '#ui/panels/ledger/useAllCautions.ts'
import { useLedger } from '#ui/panels/ledger/useLedger.ts'
import { sharedSentences, stepShort } from '#ui/panels/stepWords.ts'
import { useShownProject } from '#ui/session.ts'
import { useNextSteps } from '#ui/useNextSteps.ts'
import { useStepVerbs } from '#ui/useStepVerbs.ts'

/** The best next step with what it gains and takes, and a press that does it. */
export function TryNext({ answer }: { readonly answer: ReceiverAnswer }) {
  const { units } = useShownProject()
  const { steps, isSlow } = useNextSteps(answer.receiverId)
  const verbs = useStepVerbs(answer.receiverId)
  const said = useAllCautions(useLedger().result).map(({ text }) => text)
  if (steps === null) return isSlow ? <p className="ledger-from">Working out what to do next …</p> : null
  const [step] = steps
  if (!step) return null
  return (
    <>
      <p className="ledger-from">
        {stepShort(step, units)}.{' '}
        <button type="button" className="ledger-try" onClick={() => verbs.take(step)}>
          Try it
        </button>
      </p>
      <Problems texts={sharedSentences([step], said).own(step)} />
    </>
  )
}
