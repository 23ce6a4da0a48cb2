import { OCTAVES_HZ } from '#acoustics/bands.ts'
import type { ReceiverAnswer } from '#analysis/paths/answer.ts'
import { levelWords, limitWords } from '#analysis/paths/answerWords.ts'
import { decibels } from '#ui/charts/curveWords.ts'
import { LevelChart } from '#ui/charts/LevelChart.tsx'
import { useWidth } from '#ui/charts/useWidth.ts'

const HEIGHT = 216

/** The level at the receiver by octave against its limit, as a chart and as a table. */
export function Levels({ answer }: { readonly answer: ReceiverAnswer }) {
  const [ref, width] = useWidth<HTMLDivElement>(420)
  return (
    <section className="paths-levels" aria-label={`Level at ${answer.name}`}>
      <h3>Level there, by octave</h3>
      <div ref={ref}>
        <LevelChart width={width} height={HEIGHT} name={answer.name} levels={answer} />
      </div>
      {overallWords(answer) !== null && <p className="bench-said">{overallWords(answer)}</p>}
      <details className="paths-more">
        <summary className="paths-more-head">Levels in a table</summary>
        <LevelTable answer={answer} />
      </details>
    </section>
  )
}

/** Why no limit is drawn, and what beat or tone takes off it; null: it is drawn. */
function overallWords({ limit, limitOverallDb }: ReceiverAnswer): string | null {
  if (!('levelDb' in limit) || limitOverallDb === null) return null
  const less = limit.levelDb - limitOverallDb
  const held = less > 0 ? `, held ${decibels(less)} lower for beat or tone` : ''
  return `The limit is ${limitWords(limit)}${held}: all octaves count together, so it has no line here.`
}

type Column = readonly [head: string, list: readonly (number | null)[] | null]

function LevelTable({ answer }: { readonly answer: ReceiverAnswer }) {
  const columns: readonly Column[] = [
    ['Source', answer.sourceDb],
    ['There', answer.levelsDb],
    ['Likely from', answer.levelsLow95Db],
    ['to', answer.levelsHigh95Db],
    ['Limit', answer.limitDb],
  ]
  return (
    <table className="figures level-table">
      <caption className="visually-hidden">Level at {answer.name} by octave</caption>
      <thead>
        <tr>
          <th scope="col">Hz</th>
          {columns.map(([head]) => (
            <th key={head} scope="col">
              {head}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {OCTAVES_HZ.map((hz, octave) => (
          <tr key={hz}>
            <th scope="row">{hz}</th>
            {columns.map(([head, list]) => (
              <td key={head} className="number">
                {list === null ? 'none' : levelWords(list[octave])}
              </td>
            ))}
          </tr>
        ))}
      </tbody>
    </table>
  )
}
