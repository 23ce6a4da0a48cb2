import { OCTAVES_HZ } from '#acoustics/bands.ts'
import { octaveLoss } from '#acoustics/curve.ts'
import { rate, STC } from '#acoustics/rating.ts'
import type { Path, PathShare, ReceiverAnswer } from '#analysis/paths/answer.ts'
import { BASIS_WORDS, gainWords, levelWords, PATH_KIND_WORDS, shareWords } from '#analysis/paths/answerWords.ts'
import { useShowPath } from '#ui/panels/bench/paths/useShowPath.ts'
import { bothAreas } from '#ui/panels/words.ts'
import { useShownProject } from '#ui/session.ts'
import { fixed } from '#units/format.ts'
import type { Hertz } from '#units/quantity.ts'

/** Every path in numbers: what it carries, how much it stops, and on what that rests. */
export function PathTable({ answer }: { readonly answer: ReceiverAnswer }) {
  if (answer.paths.length === 0) return null
  const hz = answer.worstBandHz ?? answer.dominantBandHz ?? null
  const heads = headsFor(answer, hz)
  return (
    <details className="paths-more">
      <summary className="paths-more-head">Every path in a table</summary>
      <div className="table-place">
        <table className="figures cards">
          <caption className="visually-hidden">Every path to {answer.name}</caption>
          <thead>
            <tr>
              <th scope="col">Path</th>
              {heads.map((head) => (
                <th key={head} scope="col">
                  {head}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {answer.paths.map((share) => (
              <PathRow key={share.path.id} share={share} heads={heads} hz={hz} />
            ))}
          </tbody>
        </table>
      </div>
    </details>
  )
}

function headsFor({ limit }: ReceiverAnswer, hz: Hertz | null): readonly string[] {
  const at = hz === null ? '' : ` at ${hz} Hz`
  return [
    'levelDb' in limit ? `Share in ${limit.kind}` : 'Share overall',
    hz === null ? 'Share at the deciding octave' : `Share${at}`,
    `Level there${at}`,
    'Gain if closed',
    'Area',
    hz === null ? 'STC' : `STC, loss${at}`,
    'What it is, and on what it rests',
  ]
}

interface RowProps {
  readonly share: PathShare
  readonly heads: readonly string[]
  readonly hz: Hertz | null
}

function PathRow({ share, heads, hz }: RowProps) {
  const show = useShowPath()
  const { units } = useShownProject()
  const { path } = share
  const octave = OCTAVES_HZ.indexOf(hz ?? 0)
  const cells = [
    shareWords(share.share),
    shareWords(share.shareAtWorstBand),
    levelWords(share.levelsDb[octave]),
    gainWords(share.gainIfClosedDb),
    areaWords(path, (area) => bothAreas(area, units)),
    lossWords(path, octave),
  ]
  return (
    <tr>
      <th scope="row">
        <button type="button" className="row-button" onClick={() => show(path)}>
          {path.label}
        </button>
      </th>
      {cells.map((cell, column) => (
        <td key={heads[column]} className="number" data-label={heads[column]}>
          {cell}
        </td>
      ))}
      <td className="path-basis" data-label={heads[cells.length]}>
        <span>
          {PATH_KIND_WORDS[path.kind]}, {BASIS_WORDS[path.basis]}. {path.notes.map(({ text }) => `${text} `).join('')}
        </span>
      </td>
    </tr>
  )
}

/** Small areas are told in square centimetres: a gap is not 0.0 m². */
const SMALL_M2 = 0.05

function areaWords({ areaM2 }: Path, text: (area: number) => string): string {
  return areaM2 < SMALL_M2 ? `${fixed(areaM2 * 1e4, 1)} cm²` : text(areaM2)
}

/** STC 52, 31 dB. */
function lossWords({ lossDb }: Path, octave: number): string {
  const stc = `STC ${rate(lossDb, STC).value}`
  const loss = octaveLoss(lossDb)[octave]
  return loss === undefined ? stc : `${stc}, ${fixed(loss, 0)} dB`
}
