import { useId, useRef, useState } from 'react'
import { NO_PUBLISHED, publishedShort, publishedStc, publishedWords } from '#analysis/published.ts'
import type { SurfaceRating } from '#analysis/results.ts'
import { curveWords, dipWords } from '#ui/charts/curveWords.ts'
import { LossCurve } from '#ui/charts/LossCurve.tsx'
import { useFolded } from '#ui/charts/useFolded.ts'
import { useWidth } from '#ui/charts/useWidth.ts'
import type { Candidate } from '#ui/panels/bench/candidates.ts'
import { How } from '#ui/panels/bench/how/How.tsx'
import type { BenchState } from '#ui/panels/bench/useBench.ts'
import { capital, rwWords, stcWords, whyNotRated } from '#ui/panels/words.ts'

/** Beside the ruler, and on a phone, where the page scrolls. */
const HEIGHT = 192
const TALL = 260
/** Narrower than this the folded chart stands on a phone. */
const PHONE_PX = 500

/** The rating of the present or pointed build-up, with the curve behind it and, when asked, what it rests on. */
export function CurveView({ bench }: { readonly bench: BenchState }) {
  const { present, pointed } = bench
  const shown = pointed ?? present
  const [ref, width] = useWidth<HTMLDivElement>(400)
  const folded = useFolded()
  const [isAsked, setAsked] = useState(false)
  const asker = useRef<HTMLButtonElement>(null)
  const howId = useId()
  const { rating } = shown.described
  const close = () => {
    setAsked(false)
    asker.current?.focus()
  }
  return (
    <>
      <div className="bench-curve" ref={ref}>
        {rating === null ? (
          <>
            <h3 className="curve-title">Not rated</h3>
            <p className="bench-said">{whyNotRated(shown.described)}</p>
          </>
        ) : (
          <>
            <div className="curve-head">
              <CurveTitle rating={rating} isToOutdoors={bench.first.facts.farSide === 'outdoors'} />
              <button
                ref={asker}
                type="button"
                className="verb"
                aria-expanded={isAsked}
                aria-controls={isAsked ? howId : undefined}
                onClick={() => setAsked(!isAsked)}
              >
                How?
              </button>
            </div>
            <LossCurve
              width={width}
              height={folded && width < PHONE_PX ? TALL : HEIGHT}
              shown={rating}
              shownName={shown.shortName}
              present={shown === present ? null : present.described.rating}
              presentName={`now ${present.shortName}`}
            />
            <CurveKey rating={rating} names={shown === present ? null : [shown.shortName, present.shortName]} />
            <p className="visually-hidden">{curveWords(rating, shown.shortName)}</p>
          </>
        )}
        <Notes shown={shown} />
      </div>
      {isAsked && rating && <How id={howId} name={shown.shortName} rating={rating} onClose={close} />}
    </>
  )
}

interface TitleProps {
  readonly rating: SurfaceRating
  /** OITC is asked of what faces outdoors alone. */
  readonly isToOutdoors: boolean
}

function CurveTitle({ rating, isToOutdoors }: TitleProps) {
  return (
    <h3 className="curve-title">
      {stcWords(rating)}{' '}
      <small>
        {rwWords(rating)}
        {isToOutdoors && ` · OITC ${rating.evidence.oitc.value}`} · {publishedShort(rating.published) ?? NO_PUBLISHED}
      </small>
    </h3>
  )
}

/** What the lines are, and the source of what is in print. */
function CurveKey({
  rating,
  names,
}: {
  readonly rating: SurfaceRating
  /** Two curves: what is tried and what stands in the scheme. */
  readonly names: readonly [shown: string, present: string] | null
}) {
  const printed = publishedStc(rating.published)
  const dips = rating.prediction.resonances.map(dipWords)
  const isDrawnApart = printed !== null && printed.stc !== rating.stc
  return (
    <p className="bench-said curve-key">
      {names && `Heavy: ${names[0]}. Thin: now ${names[1]}. `}
      Dashed: the STC {rating.stc} contour.
      {isDrawnApart && ' Dotted: that of the published value.'} Bars: what the curve falls short of it. Pale: likely
      range of each band.{dips.length > 0 && ` Dips: ${dips.join('; ')}.`}
      {rating.published.length > 0 && ` ${capital(publishedWords(rating.published))}.`}
    </p>
  )
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
