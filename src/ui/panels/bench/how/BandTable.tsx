import { BANDS_HZ } from '#acoustics/bands.ts'
import { SHOWN_LOSS_CAP_DB } from '#acoustics/curve.ts'
import type { SurfaceRating } from '#analysis/results.ts'
import { percent } from '#ui/panels/bench/how/howWords.ts'
import { fixed } from '#units/format.ts'

const HEADS = ['TL, dB', 'SD, dB', 'STC contour', 'short by', 'Rw contour', 'short by', 'C, %', 'Ctr, %', 'OITC, %']

/** The curve band by band: what the chart shows, in numbers. */
export function BandTable({ rating }: { readonly rating: SurfaceRating }) {
  const limit = rating.evidence.stc.limitingBandHz
  return (
    <>
      <h4>Band by band</h4>
      <p>
        Transmission loss with its standard deviation, the contours and what the curve falls short of them, and the
        share of a source that comes through in each band. The band that limits STC is marked.
      </p>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a table wider than a phone is scrolled with the arrow keys */}
      <section className="table-place" aria-label="The curve band by band" tabIndex={0}>
        <table className="figures how-bands">
          <caption className="visually-hidden">The curve band by band</caption>
          <thead>
            <tr>
              <th scope="col">Hz</th>
              {HEADS.map((head, column) => (
                // Two columns have the same head.
                // biome-ignore lint/suspicious/noArrayIndexKey: the columns never change
                <th key={column} scope="col">
                  {head}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {BANDS_HZ.map((hz, band) => (
              <tr key={hz} aria-current={hz === limit ? true : undefined}>
                <th scope="row">{hz}</th>
                {cellsOf(rating, band).map((cell, column) => (
                  // biome-ignore lint/suspicious/noArrayIndexKey: the columns never change
                  <td key={column} className="number">
                    {cell}
                  </td>
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </section>
    </>
  )
}

/** Empty where a rule does not look, or nothing falls short. */
function cellsOf({ prediction, evidence }: SurfaceRating, band: number): readonly string[] {
  const { stc, rw, c, ctr, oitc } = evidence
  const loss = Math.min(SHOWN_LOSS_CAP_DB, prediction.lossDb[band]!)
  return [
    fixed(loss, 1),
    fixed(prediction.spreadBandDb[band]!, 1),
    ...[stc, rw].flatMap(({ contour, shortfalls }) => [
      wholeOrNone(contour[band] ?? null),
      shortWords(shortfalls[band]!),
    ]),
    ...[c, ctr, oitc].map(({ shares }) => percent(shares[band]!)),
  ]
}

function wholeOrNone(level: number | null): string {
  return level === null ? '' : String(level)
}

function shortWords(value: number): string {
  return value === 0 ? '' : fixed(value, 1).replace(/\.0$/, '')
}
