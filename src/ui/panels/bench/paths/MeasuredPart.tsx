import { useMemo } from 'react'
import type { ReceiverAnswer } from '#analysis/paths/answer.ts'
import { type MeasuredComparison, measuredAgainst } from '#analysis/paths/measuredAgainst.ts'
import type { Receiver } from '#analysis/target.ts'
import { answerInput } from '#state/steps.ts'
import { decibels } from '#ui/charts/curveWords.ts'
import { signed } from '#ui/panels/words.ts'
import { useAnalysis, useRoom, useScheme, useShownProject } from '#ui/session.ts'

interface Props {
  readonly answer: ReceiverAnswer
  readonly receiver: Receiver
}

/** What was measured on site beside what is predicted. */
export function MeasuredPart({ answer, receiver }: Props) {
  const project = useShownProject()
  const room = useRoom()
  const scheme = useScheme()
  const analysed = useAnalysis()
  const compared = useMemo(
    () =>
      analysed.ok
        ? measuredAgainst(answerInput({ project, room, scheme, result: analysed.value }), receiver, answer)
        : [],
    [project, room, scheme, analysed, receiver, answer],
  )
  return (
    <section className="paths-measured" aria-label="Measured against predicted">
      <h3>Measured against predicted</h3>
      {compared.map((comparison) => (
        <Compared key={comparison.measured.id} comparison={comparison} />
      ))}
    </section>
  )
}

const HEADS = ['Hz', 'Measured', 'Predicted', 'Measured less predicted', 'In the likely range']

function Compared({ comparison }: { readonly comparison: MeasuredComparison }) {
  const { measured, against, octaves, sentences } = comparison
  const title = `${measured.name}, ${against === 'scheme' ? 'against this scheme' : 'against the room as it stands'}`
  return (
    <div className="table-place">
      <table className="figures level-table">
        <caption>{title}</caption>
        <thead>
          <tr>
            {HEADS.map((head) => (
              <th key={head} scope="col">
                {head}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {octaves.map(({ hz, measuredDb, predictedDb, measuredLessPredictedDb, isWithin }) => (
            <tr key={hz}>
              <th scope="row">{hz}</th>
              <td className="number">{measuredDb === null ? 'not measured' : decibels(measuredDb)}</td>
              <td className="number">{predictedDb === null ? 'not known' : decibels(predictedDb)}</td>
              <td className="number">
                {measuredLessPredictedDb === null
                  ? 'not known'
                  : (signed(measuredLessPredictedDb, decibels) ?? decibels(0))}
              </td>
              <td>{isWithin === null ? 'not known' : isWithin ? 'yes' : 'no'}</td>
            </tr>
          ))}
        </tbody>
      </table>
      {sentences.map((text) => (
        <p key={text} className="bench-said">
          {text}
        </p>
      ))}
    </div>
  )
}
