import { type CSSProperties, useMemo } from 'react'
import { layersDepth } from '#assemblies/layer.ts'
import { DepthRuler } from '#ui/charts/DepthRuler.tsx'
import { rulerLayout } from '#ui/charts/rulerLayout.ts'
import { useFolded } from '#ui/charts/useFolded.ts'
import { useRulerHeight } from '#ui/charts/useRulerHeight.ts'
import { useWidth } from '#ui/charts/useWidth.ts'
import { type Candidate, depthFrom, type Face, MEASURE_WORDS } from '#ui/panels/bench/candidates.ts'
import { type Reading, rulerMarks, sentenceOf } from '#ui/panels/bench/rulerMarks.ts'
import { SectionView } from '#ui/panels/bench/SectionView.tsx'
import type { BenchState } from '#ui/panels/bench/useBench.ts'
import { listOf, whyNotRated } from '#ui/panels/words.ts'
import type { Millimetres } from '#units/quantity.ts'

/** Deeper existing constructions are cut off at a break line: a roof space must not push the assemblies together. */
const MOST_EXISTING_MM: Millimetres = 150

interface Props {
  readonly bench: BenchState
  readonly reading: Reading
}

/** Where the limit is met, named on the ruler. */
const AT_LIMIT = 0

/** The depth ruler and, on the same inches, the section of the present or pointed build-up. */
export function ChooseView({ bench, reading }: Props) {
  const { face, measure, margins, unit: units } = reading
  const [ref, width] = useWidth<HTMLDivElement>(900)
  const folded = useFolded()
  const height = useRulerHeight(ref, folded)
  const { candidates, present, pointed, chosenId, surfaces, first } = bench
  const existingMm = Math.min(MOST_EXISTING_MM, existingDepth(present, face))
  const marks = useMemo(() => rulerMarks(candidates, reading), [candidates, reading])
  const target = useMemo(
    () => (margins ? { value: AT_LIMIT, text: `0 dB: the limit at ${margins.receiver}` } : undefined),
    [margins],
  )
  const unratedMm = useMemo(() => {
    const marked = new Set(marks.map(({ id }) => id))
    return candidates.filter(({ id }) => !marked.has(id)).map((candidate) => depthFrom(candidate, face))
  }, [candidates, marks, face])
  const wide = useMemo(
    () => rulerLayout(marks, { width, height, existingMm, unratedMm, target }, units, chosenId),
    [marks, width, height, existingMm, unratedMm, target, units, chosenId],
  )
  const layout = useMemo(
    () => (folded ? rulerLayout(marks, { width, height, existingMm: 0, target }, units, chosenId) : wide),
    [folded, marks, width, height, target, units, chosenId, wide],
  )
  const shown = pointed ?? present
  const leftOfZero = { '--left-of-zero': `${Math.max(190, layout.x(0) - 24)}px` } as CSSProperties
  return (
    <div className="bench-choose" ref={ref}>
      {marks.length > 0 ? (
        <div className="ruler-place">
          <DepthRuler
            {...{ marks, layout, width, height }}
            unit={units}
            measure={MEASURE_WORDS[measure]}
            label={`Assembly for ${listOf(surfaces.map(({ label }) => label))}, by depth`}
            chosen={chosenId}
            pointed={pointed?.id ?? null}
            onPoint={bench.point}
            onLeave={bench.leave}
            onChoose={bench.choose}
          />
        </div>
      ) : (
        <p className="bench-said ruler-place">
          {whyNotRated(present.described)} It can be built on all the same: choose from the list above.
        </p>
      )}
      <div className="section-place">
        <SectionView candidate={shown} layout={wide} width={width} face={face} farSide={first.facts.farSide} />
      </div>
      <p className="bench-said choose-said" aria-live="polite" style={leftOfZero}>
        {sentenceOf(shown, reading)}
        {surfaces.length > 1 && ` · figures are for ${first.label}`}
        {candidates.length === 1 && '. These surfaces share no assembly: select walls alone, the ceiling or the floor.'}
        {pointed && pointed !== present && ' · press to build it'}
      </p>
    </div>
  )
}

/** What stands behind the chosen face, mm. */
function existingDepth(present: Candidate, face: Face): Millimetres {
  return Math.max(0, layersDepth(present.described.layers) - depthFrom(present, face))
}
