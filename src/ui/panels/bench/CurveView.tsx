import { curveWords, LossCurve } from '#ui/charts/LossCurve.tsx'
import { useWidth } from '#ui/charts/useWidth.ts'
import type { Candidate } from '#ui/panels/bench/candidates.ts'
import type { BenchState } from '#ui/panels/bench/useBench.ts'
import { NO_PUBLISHED, rwWords, stcWords, whyNotRated } from '#ui/panels/words.ts'

const HEIGHT = 206

/** The rating of the present or pointed build-up, with the curve behind it. */
export function CurveView({ bench }: { readonly bench: BenchState }) {
  const { present, pointed } = bench
  const shown = pointed ?? present
  const [ref, width] = useWidth<HTMLDivElement>(400)
  const { rating } = shown.described
  const other = shown === present ? null : present.described.rating
  return (
    <div className="bench-curve" ref={ref}>
      <h3 className="curve-title">
        {rating === null ? (
          'Not rated'
        ) : (
          <>
            {stcWords(rating)}{' '}
            <small>
              · {rwWords(rating)} · {NO_PUBLISHED}
            </small>
          </>
        )}
      </h3>
      {rating === null ? (
        <p className="bench-said">{whyNotRated(shown.described)}</p>
      ) : (
        <LossCurve
          width={width}
          height={HEIGHT}
          shown={rating}
          shownName={nameOf(shown)}
          present={other}
          presentName={`now ${nameOf(present)}`}
        />
      )}
      <Notes shown={shown} />
      {rating && <p className="visually-hidden">{curveWords(rating, nameOf(shown))}</p>}
    </div>
  )
}

function nameOf(candidate: Candidate): string {
  return candidate.shortName
}

/** What is true but doubtful about this build-up, each as a sentence. */
function Notes({ shown }: { readonly shown: Candidate }) {
  const notes = shown.described.notes.filter(({ code }) => code !== 'soil' && code !== 'not-predicted')
  if (notes.length === 0) return null
  return (
    <ul className="bench-notes">
      {notes.map((note) => (
        <li key={note.code}>{note.text}</li>
      ))}
    </ul>
  )
}
