import { useEffect, useRef } from 'react'
import { STC } from '#acoustics/rating.ts'
import type { SurfaceRating } from '#analysis/results.ts'
import { limitWords } from '#ui/charts/curveWords.ts'
import { useFolded } from '#ui/charts/useFolded.ts'
import { BandTable } from '#ui/panels/bench/how/BandTable.tsx'
import { Dips } from '#ui/panels/bench/how/Dips.tsx'
import { anchorWords, rangeWords } from '#ui/panels/bench/how/howWords.ts'
import { Neighbours } from '#ui/panels/bench/how/Neighbours.tsx'
import { Printed } from '#ui/panels/bench/how/Printed.tsx'
import { RatingTable } from '#ui/panels/bench/how/RatingTable.tsx'

interface Props {
  readonly id: string
  /** What is shown: its short name. */
  readonly name: string
  readonly rating: SurfaceRating
  readonly onClose: () => void
}

/** What every number of one build-up rests on: calculation, print, spread, bands, dips. */
export function How({ id, name, rating, onClose }: Props) {
  const box = useRef<HTMLElement>(null)
  const folded = useFolded()
  // Beside the curve it is in sight; below it, it has to be brought there once.
  const isBelow = useRef(folded)
  useEffect(() => {
    if (isBelow.current) box.current?.scrollIntoView({ block: 'start' })
  }, [])
  return (
    <section
      ref={box}
      id={id}
      className="bench-how"
      aria-label={`How ${name} is rated`}
      onKeyDown={(event) => {
        if (event.key !== 'Escape') return
        event.nativeEvent.stopPropagation()
        onClose()
      }}
    >
      <div className="how-head">
        <h3>How {name} is rated</h3>
        <button type="button" className="verb" onClick={onClose}>
          Close
        </button>
      </div>
      <div className="how-columns">
        <div>
          <h4>Calculation and print</h4>
          <p className="how-lead">{anchorWords(rating)}</p>
          <p>
            STC {rating.stc} is {limitWords(rating.evidence.stc, STC)}.
          </p>
          <Neighbours anchor={rating.prediction.anchor} />
          <h4>Likely range, 95 %</h4>
          <p>{rangeWords(rating)}</p>
          <h4>Published for exactly this build-up</h4>
          <Printed published={rating.published} />
          <h4>Dips</h4>
          <Dips resonances={rating.prediction.resonances} />
        </div>
        <div>
          <RatingTable rating={rating} />
          <BandTable rating={rating} />
        </div>
      </div>
    </section>
  )
}
