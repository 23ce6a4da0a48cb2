import type { ReceiverAnswer } from '#analysis/paths/answer.ts'
import { gainWords } from '#analysis/paths/answerWords.ts'
import type { NextStep } from '#analysis/paths/nextSteps.ts'
import { BuildNotes } from '#ui/panels/bench/paths/BuildNotes.tsx'
import { Problems } from '#ui/panels/bench/tables/rows.tsx'
import { useAllCautions } from '#ui/panels/ledger/useAllCautions.ts'
import { useLedger } from '#ui/panels/ledger/useLedger.ts'
import { sharedSentences, stepCosts } from '#ui/panels/stepWords.ts'
import { useShownProject } from '#ui/session.ts'
import { useKeepsKeyboard } from '#ui/useKeepsKeyboard.ts'
import { useNextSteps } from '#ui/useNextSteps.ts'
import { type StepVerbs, useStepVerbs } from '#ui/useStepVerbs.ts'
import type { Decibels } from '#units/quantity.ts'

/** The best single step for every path: what it gains, what it takes, and a press that does it. */
export function NextList({ answer }: { readonly answer: ReceiverAnswer }) {
  const { steps, isSlow } = useNextSteps(answer.receiverId)
  const verbs = useStepVerbs(answer.receiverId)
  const place = useKeepsKeyboard<HTMLElement>()
  return (
    <section ref={place} tabIndex={-1} className="paths-next" aria-label="What next">
      <h3>What next</h3>
      {steps === null && isSlow && (
        <p className="bench-said" role="status">
          Working out what each path would gain …
        </p>
      )}
      {steps?.length === 0 && <p className="bench-said">{nothingNext(answer)}</p>}
      {steps !== null && steps.length > 0 && <Steps steps={steps} verbs={verbs} />}
    </section>
  )
}

interface StepsProps {
  readonly steps: readonly NextStep[]
  readonly verbs: StepVerbs
}

function Steps({ steps, verbs }: StepsProps) {
  const said = useAllCautions(useLedger().result).map(({ text }) => text)
  const { shared, own } = sharedSentences(steps, said)
  const [worth, little] = apart(steps)
  return (
    <>
      <StepList steps={worth} own={own} verbs={verbs} />
      {little.length > 0 && (
        <details className="paths-more">
          <summary className="paths-more-head">
            {little.length} more, each under {LITTLE_DB} dB
          </summary>
          <StepList steps={little} own={own} verbs={verbs} />
        </details>
      )}
      {shared.length > 0 && (
        <>
          <h4>Before several of these</h4>
          <Problems texts={shared} />
        </>
      )}
    </>
  )
}

/** A step that gains less at either end is heard by nobody. @source own choice */
const LITTLE_DB: Decibels = 0.5

/** The steps worth a look, and those that gain little; where all gain little they are all there is to look at. */
function apart(steps: readonly NextStep[]): readonly [readonly NextStep[], readonly NextStep[]] {
  const isLittle = ({ gainDb, gainLow95Db }: NextStep) => Math.max(gainDb, gainLow95Db) < LITTLE_DB
  const worth = steps.filter((step) => !isLittle(step))
  return worth.length === 0 ? [steps, []] : [worth, steps.filter(isLittle)]
}

interface StepListProps extends StepsProps {
  /** What has to be read before one step alone. */
  readonly own: (step: NextStep) => readonly string[]
}

function StepList({ steps, own, verbs }: StepListProps) {
  return (
    <ul className="next-steps">
      {steps.map((step) => (
        <Step key={step.pathId} step={step} cautions={own(step)} verbs={verbs} />
      ))}
    </ul>
  )
}

function nothingNext({ marginDb }: ReceiverAnswer): string {
  return marginDb === null
    ? 'What to do next is known once the margin is: first say what is missing.'
    : 'No single change in this catalogue makes any of these paths better. Several at once, another source level or another limit may.'
}

interface StepProps {
  readonly step: NextStep
  /** To be read before this one alone. */
  readonly cautions: readonly string[]
  readonly verbs: StepVerbs
}

function Step({ step, cautions, verbs }: StepProps) {
  const { units } = useShownProject()
  return (
    <li>
      <div className="next-step">
        <span className="next-gain">{gainWords(step.gainDb)}</span>
        <span className="next-label">{step.label}</span>
        <button
          type="button"
          className="next-do"
          onPointerEnter={(event) => event.pointerType === 'mouse' && verbs.point(step)}
          onPointerLeave={verbs.leave}
          onFocus={() => verbs.point(step)}
          onBlur={verbs.leave}
          onClick={() => verbs.take(step)}
        >
          Do it<span className="visually-hidden">: {step.label}</span>
        </button>
      </div>
      <p className="next-costs">{stepCosts(step, units)}</p>
      <Problems texts={cautions} />
      <BuildNotes texts={step.minds} />
    </li>
  )
}
