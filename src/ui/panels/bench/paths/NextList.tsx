import type { ReceiverAnswer } from '#analysis/paths/answer.ts'
import { gainWords } from '#analysis/paths/answerWords.ts'
import type { NextStep } from '#analysis/paths/nextSteps.ts'
import { Problems } from '#ui/panels/bench/tables/rows.tsx'
import { bothAreas, otherUnit } from '#ui/panels/words.ts'
import { useShownProject } from '#ui/session.ts'
import { useNextSteps } from '#ui/useNextSteps.ts'
import { type StepVerbs, useStepVerbs } from '#ui/useStepVerbs.ts'
import { formatLength, formatMass } from '#units/format.ts'
import type { LengthUnit } from '#units/quantity.ts'

/** The best single step for every path: what it gains, what it takes, and a press that does it. */
export function NextList({ answer }: { readonly answer: ReceiverAnswer }) {
  const { steps, isSlow } = useNextSteps(answer.receiverId)
  const verbs = useStepVerbs()
  return (
    <section className="paths-next" aria-label="What next">
      <h3>What next</h3>
      {steps === null && isSlow && (
        <p className="bench-said" role="status">
          Working out what each path would gain …
        </p>
      )}
      {steps?.length === 0 && <p className="bench-said">{nothingNext(answer)}</p>}
      {steps !== null && steps.length > 0 && (
        <ul className="next-steps">
          {steps.map((step) => (
            <Step key={step.pathId} step={step} verbs={verbs} />
          ))}
        </ul>
      )}
    </section>
  )
}

function nothingNext({ marginDb }: ReceiverAnswer): string {
  return marginDb === null
    ? 'What to do next is known once the margin is: first say what is missing.'
    : 'No single change in this catalogue makes any of these paths better. Several at once, another source level or another limit may.'
}

function Step({ step, verbs }: { readonly step: NextStep; readonly verbs: StepVerbs }) {
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
      <p className="next-costs">{costWords(step, units)}</p>
      <Problems texts={step.cautions} />
    </li>
  )
}

/** At the lower end of the range +3.1 dB · takes no floor · takes 2 7/8" · 73 mm of height · adds 120 lb · 54 kg. */
export function costWords({ gainLow95Db, areaLostM2, heightLostMm, addedMassKg }: NextStep, units: LengthUnit): string {
  const length = (mm: number) => `${formatLength(mm, units)} · ${formatLength(mm, otherUnit(units))}`
  const mass = (kg: number) => `${formatMass(kg, units)} · ${formatMass(kg, otherUnit(units))}`
  return [
    `lower end of the range ${gainWords(gainLow95Db)}`,
    takes(areaLostM2, (size) => bothAreas(size, units), 'floor'),
    takes(heightLostMm, length, 'height'),
    ...(mass(Math.abs(addedMassKg)) === mass(0)
      ? []
      : [`${addedMassKg > 0 ? 'adds' : 'takes off'} ${mass(Math.abs(addedMassKg))}`]),
  ].join('; ')
}

function takes(size: number, text: (size: number) => string, what: string): string {
  if (text(Math.abs(size)) === text(0)) return `takes no ${what}`
  return `${size > 0 ? 'takes' : 'gives back'} ${text(Math.abs(size))} of ${what}`
}
