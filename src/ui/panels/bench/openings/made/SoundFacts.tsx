import type { Opening } from '#analysis/room.ts'
import type { OpeningSound } from '#assemblies/openingSound.ts'
import {
  choiceCautions,
  type OctaveRow,
  octaveRows,
  openingStcWords,
} from '#ui/panels/bench/openings/made/madeWords.ts'
import { useOpeningSounds } from '#ui/panels/bench/openings/made/useOpeningSound.ts'
import { Problems } from '#ui/panels/bench/tables/rows.tsx'
import { useCatalogue, useScheme } from '#ui/session.ts'
import { fixed } from '#units/format.ts'

/** What an opening lets through in the shown scheme, what that rests on, and what to read before it is built. */
export function SoundFacts({ opening }: { readonly opening: Opening }) {
  const sounds = useOpeningSounds()
  const scheme = useScheme()
  const catalogue = useCatalogue()
  if (!sounds) return null
  const { sound } = sounds(opening)
  const chosen = scheme.openings?.[opening.id]
  return (
    <section aria-label={`Sound through ${opening.name}`}>
      <h3 className="curve-title">Sound through it in {scheme.name}</h3>
      {sound.ok ? <Known sound={sound.value} opening={opening} /> : <Problems texts={[sound.error]} />}
      {chosen && <Problems texts={choiceCautions(chosen, catalogue)} />}
    </section>
  )
}

function Known({ sound, opening }: { readonly sound: OpeningSound; readonly opening: Opening }) {
  const rows = octaveRows(sound, opening)
  return (
    <>
      <p className="opening-figure">
        <strong>{openingStcWords(sound)}</strong>, {BASIS_WORDS[sound.basis]}.
        {sound.publishedWords !== null && <> Published {sound.publishedWords}.</>}
      </p>
      <OctaveTable rows={rows} name={opening.name} />
      {rows.some(({ isAssumed }) => isAssumed) && (
        <p className="field-hint">~ is assumed: neither printed nor calculated.</p>
      )}
      <ul className="opening-notes">
        {sound.notes.map(({ code, text }) => (
          <li key={code}>{text}</li>
        ))}
      </ul>
    </>
  )
}

const BASIS_WORDS: Readonly<Record<OpeningSound['basis'], string>> = {
  calculated: 'calculated',
  published: 'from octaves in print',
  assumed: 'assumed',
}

/** Octave by octave, in numbers. */
function OctaveTable({ rows, name }: { readonly rows: readonly OctaveRow[]; readonly name: string }) {
  return (
    <table className="figures opening-octaves">
      <caption>Transmission loss of {name} with its seals, dB</caption>
      <thead>
        <tr>
          <th scope="col">Hz</th>
          {rows.map(({ hz }) => (
            <th key={hz} scope="col">
              {hz}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        <tr>
          <th scope="row">dB</th>
          {rows.map(({ hz, lossDb, isAssumed }) => (
            <td key={hz} className="number">
              {isAssumed && (
                <>
                  <span aria-hidden="true">~</span>
                  <span className="visually-hidden">assumed </span>
                </>
              )}
              {fixed(lossDb, 0)}
            </td>
          ))}
        </tr>
      </tbody>
    </table>
  )
}
