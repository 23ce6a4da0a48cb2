import type { ReceiverAnswer } from '#analysis/paths/answer.ts'
import { gainWords } from '#analysis/paths/answerWords.ts'
import type { NextStep } from '#analysis/paths/nextSteps.ts'
import { Problems } from '#ui/panels/bench/tables/rows.tsx'
import { useShownProject } from '#ui/session.ts'
import { useNextSteps } from '#ui/useNextSteps.ts'
import { useStepVerbs } from '#ui/useStepVerbs.ts'
import { formatArea, formatLength } from '#units/format.ts'
import type { LengthUnit } from '#units/quantity.ts'

/** The best next step with what it gains and takes, and a press that does it. */
export function TryNext({ answer }: { readonly answer: ReceiverAnswer }) {
  const { units } = useShownProject()
  const { steps, isSlow } = useNextSteps(answer.receiverId)
  const verbs = useStepVerbs()
  if (steps === null) return isSlow ? <p className="ledger-from">Working out what to do next …</p> : null
  const [step] = steps
  if (!step) return null
  return (
    <>
      <p className="ledger-from">
        {stepWords(step, units)}{' '}
        <button type="button" className="ledger-try" onClick={() => verbs.take(step)}>
          Try it
        </button>
      </p>
      <Problems texts={step.cautions} />
    </>
  )
}

/** Hang a second sealed door in the lining: +4.3 dB, 0.0 ft². */
export function stepWords({ label, gainDb, areaLostM2, heightLostMm }: NextStep, units: LengthUnit): string {
  const length = (mm: number) => formatLength(mm, units)
  const height = length(heightLostMm) === length(0) ? '' : `, ${length(heightLostMm)} of height`
  return `${label}: ${gainWords(gainDb)}, ${formatArea(areaLostM2, units)}${height}.`
}
