import { useEffect, useMemo, useState } from 'react'
import type { BenchView } from '#state/view.ts'
import { AsItStands } from '#ui/panels/bench/AsItStands.tsx'
import { ChooseView } from '#ui/panels/bench/ChooseView.tsx'
import { Controls } from '#ui/panels/bench/Controls.tsx'
import { CurveView } from '#ui/panels/bench/CurveView.tsx'
import type { BenchSurface, Face, Measure } from '#ui/panels/bench/candidates.ts'
import { BuildView } from '#ui/panels/bench/editor/BuildView.tsx'
import { useHasUnsaved } from '#ui/panels/bench/editor/useBuilding.ts'
import { InsideView } from '#ui/panels/bench/inspect/InsideView.tsx'
import { LiningCautions } from '#ui/panels/bench/LiningCautions.tsx'
import type { Reading } from '#ui/panels/bench/rulerMarks.ts'
import { SelectButtons } from '#ui/panels/bench/SelectButtons.tsx'
import { Tabs } from '#ui/panels/bench/Tabs.tsx'
import { useBench } from '#ui/panels/bench/useBench.ts'
import { useMarginOn } from '#ui/panels/bench/useMarginOn.ts'
import type { Several } from '#ui/panels/bench/useSeveral.ts'
import { farSideWords, listOf } from '#ui/panels/words.ts'
import { useSession, useShownProject, useView } from '#ui/session.ts'

const VIEWS: readonly { id: BenchView; text: string; narrowOnly?: boolean }[] = [
  { id: 'choose', text: 'Choose' },
  { id: 'section', text: 'Section', narrowOnly: true },
  { id: 'curve', text: 'Curve', narrowOnly: true },
  { id: 'inside', text: 'Look inside' },
  { id: 'build', text: 'Build your own' },
  { id: 'stands', text: 'As it stands' },
]

interface Props {
  readonly surfaces: readonly [BenchSurface, ...BenchSurface[]]
  readonly several: Several
}

/** What the selected surfaces are made of, and what else they could be. */
export function SurfaceBench({ surfaces, several }: Props) {
  const bench = useBench(surfaces)
  const { view: viewStore } = useSession()
  const view = useView((state) => state.benchView)
  const setView = (benchView: BenchView) => viewStore.setState({ benchView })
  useEffect(() => () => viewStore.setState({ benchView: 'choose' }), [viewStore])
  const [wanted, setWanted] = useState<Measure>('margin')
  const [wantedFace, setFace] = useState<Face | null>(null)
  /** The surfaces whose lining was just taken off, or whose cautions were asked for. */
  const [asked, setAsked] = useState<string | null>(null)
  const key = surfaces.map(({ facts }) => facts.id).join(' ')
  const unsaved = useHasUnsaved()
  const views = VIEWS.map((entry) =>
    entry.id === 'build' && unsaved ? { ...entry, text: `${entry.text}, unsaved` } : entry,
  )
  const margin = useMarginOn(bench)
  const { units } = useShownProject()
  const face = wantedFace ?? bench.first.facts.measuredTo
  const margins = margin.kind === 'known' && wanted === 'margin' ? margin.margins : null
  const measure = wanted === 'margin' && !margins ? 'stc' : wanted
  const reading = useMemo((): Reading => ({ face, measure, unit: units, margins }), [face, measure, units, margins])
  return (
    <>
      <header className="bench-head">
        <h2>
          {listOf(surfaces.map(({ label }) => label))}, to {farSideWords(bench.first.facts.farSide)}: {HEADS[view]}
        </h2>
        <Tabs label="View of the bench" views={views} current={view} onChoose={setView} />
        <SelectButtons several={several} />
      </header>
      {view === 'stands' && <AsItStands bench={bench} />}
      {view === 'inside' && <InsideView key={key} bench={bench} />}
      {view === 'build' && <BuildView bench={bench} />}
      {(view === 'choose' || view === 'section' || view === 'curve') && (
        <>
          <Controls
            bench={bench}
            {...{ measure, face, setFace }}
            setMeasure={setWanted}
            receiver={margin.kind === 'known' ? margin.margins.receiver : null}
            onLiningOff={() => setAsked(key)}
          />
          {bench.liningOff && <LiningCautions bench={bench} open={asked === key} onOpen={() => setAsked(key)} />}
          {margin.kind === 'not-known' && <p className="bench-said">{margin.why}</p>}
          {margins && margin.kind === 'known' && margin.beside && <p className="bench-said">{margin.beside}</p>}
          <div className={`bench-views shows-${view}`}>
            <ChooseView bench={bench} reading={reading} />
            <CurveView bench={bench} />
          </div>
        </>
      )}
    </>
  )
}

const CHOICE_HEAD = 'what else it could be'
const HEADS: Readonly<Record<BenchView, string>> = {
  choose: CHOICE_HEAD,
  section: CHOICE_HEAD,
  curve: CHOICE_HEAD,
  inside: 'what it is made of',
  build: 'your own',
  stands: 'as it stands',
}
