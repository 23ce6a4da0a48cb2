import type { Rating } from '#acoustics/rating.ts'
import type { SpectrumRating } from '#acoustics/spectrumRating.ts'
import type { SurfaceRating } from '#analysis/results.ts'
import { contourLimitWords, spectrumLimitWords } from '#ui/panels/bench/how/howWords.ts'
import { likelyWords } from '#ui/panels/words.ts'

/** Every single number with what holds it back. */
export function RatingTable({ rating }: { readonly rating: SurfaceRating }) {
  return (
    <>
      <h4>Ratings</h4>
      <table className="figures how-ratings">
        <caption className="visually-hidden">Ratings, each with what holds it back</caption>
        <thead>
          <tr>
            <th scope="col">Rating</th>
            <th scope="col">Value</th>
            <th scope="col">Held back by</th>
          </tr>
        </thead>
        <tbody>
          {rowsOf(rating).map(([name, value, limit]) => (
            <tr key={name}>
              <th scope="row">{name}</th>
              <td className="number">{value}</td>
              <td>{limit}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </>
  )
}

type Row = readonly [name: string, value: string, limit: string]

function rowsOf(rating: SurfaceRating): readonly Row[] {
  const { stc, stcNo8dbRule, rw, c, ctr, c50, ctr50, oitc } = rating.evidence
  return [
    ['STC, 8 dB rule', `${stc.value}, ${likelyWords(rating)}`, contourLimitWords(stc)],
    contourRow('STC without the rule', stcNo8dbRule),
    contourRow('Rw', rw),
    spectrumRow('C, living noise', c),
    spectrumRow('Ctr, traffic', ctr),
    spectrumRow('C50-5000', c50),
    spectrumRow('Ctr,50-5000', ctr50),
    spectrumRow('OITC, outdoor noise', oitc),
  ]
}

function contourRow(name: string, rating: Rating): Row {
  return [name, String(rating.value), contourLimitWords(rating)]
}

function spectrumRow(name: string, rating: SpectrumRating): Row {
  return [name, String(rating.value), spectrumLimitWords(rating)]
}
