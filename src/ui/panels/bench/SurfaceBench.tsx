import { useState } from 'react'
import { AsItStands } from '#ui/panels/bench/AsItStands.tsx'
import { ChooseView } from '#ui/panels/bench/ChooseView.tsx'
import { Controls } from '#ui/panels/bench/Controls.tsx'
import { CurveView } from '#ui/panels/bench/CurveView.tsx'
import type { BenchSurface, Face, Measure } from '#ui/panels/bench/candidates.ts'
import { LiningCautions } from '#ui/panels/bench/LiningCautions.tsx'
import { SelectButtons } from '#ui/panels/bench/SelectButtons.tsx'
import { Tabs } from '#ui/panels/bench/Tabs.tsx'
import { useBench } from '#ui/panels/bench/useBench.ts'
import type { Several } from '#ui/panels/bench/useSeveral.ts'
import { farSideWords, listOf } from '#ui/panels/words.ts'

type View = 'choose' | 'section' | 'curve' | 'stands'

const VIEWS: readonly { id: View; text: string; narrowOnly?: boolean }[] = [
  { id: 'choose', text: 'Choose' },
  { id: 'section', text: 'Section', narrowOnly: true },
  { id: 'curve', text: 'Curve', narrowOnly: true },
  { id: 'stands', text: 'As it stands' },
]

interface Props {
  readonly surfaces: readonly [BenchSurface, ...BenchSurface[]]
  readonly several: Several
}

/** What the selected surfaces are made of, and what else they could be. */
export function SurfaceBench({ surfaces, several }: Props) {
  const bench = useBench(surfaces)
  const [view, setView] = useState<View>('choose')
  const [measure, setMeasure] = useState<Measure>('stc')
  const [face, setFace] = useState<Face | null>(null)
  /** The surfaces whose lining was just taken off, or whose cautions were asked for. */
  const [asked, setAsked] = useState<string | null>(null)
  const key = surfaces.map(({ facts }) => facts.id).join(' ')
  const shownFace = face ?? bench.first.facts.measuredTo
  return (
    <>
      <header className="bench-head">
        <h2>
          {listOf(surfaces.map(({ label }) => label))}, to {farSideWords(bench.first.facts.farSide)}:{' '}
          {view === 'stands' ? 'as it stands' : 'what else it could be'}
        </h2>
        <Tabs label="View of the bench" views={VIEWS} current={view} onChoose={setView} />
        <SelectButtons several={several} />
      </header>
      {view === 'stands' ? (
        <AsItStands bench={bench} />
      ) : (
        <>
          <Controls
            bench={bench}
            {...{ measure, setMeasure, setFace }}
            face={shownFace}
            onLiningOff={() => setAsked(key)}
          />
          {bench.liningOff && <LiningCautions bench={bench} open={asked === key} onOpen={() => setAsked(key)} />}
          <div className={`bench-views shows-${view}`}>
            <ChooseView bench={bench} measure={measure} face={shownFace} />
            <CurveView bench={bench} />
          </div>
        </>
      )}
    </>
  )
}
