import { useState } from 'react'
import { startBuilding } from '#state/draft.ts'
import { CurveView } from '#ui/panels/bench/CurveView.tsx'
import { AssemblyFields, NameFields } from '#ui/panels/bench/editor/AssemblyFields.tsx'
import { BuildBar, useSaving } from '#ui/panels/bench/editor/BuildBar.tsx'
import { surfaceWords } from '#ui/panels/bench/editor/editorWords.ts'
import { LayerList } from '#ui/panels/bench/editor/LayerList.tsx'
import { LiveView } from '#ui/panels/bench/editor/LiveView.tsx'
import { StartBuilding } from '#ui/panels/bench/editor/StartBuilding.tsx'
import { useBuilding } from '#ui/panels/bench/editor/useBuilding.ts'
import { useLostFocus } from '#ui/panels/bench/editor/useLostFocus.ts'
import type { BenchState } from '#ui/panels/bench/useBench.ts'
import { useSession, useView } from '#ui/session.ts'

/** The place where assemblies of one's own are built, layer by layer. */
export function BuildView({ bench }: { readonly bench: BenchState }) {
  const building = useView((state) => state.building)
  const wanted = useView((state) => state.wantedDraft)
  return (
    <div className="build-view">
      {building === null ? (
        <StartBuilding bench={bench} />
      ) : (
        <>
          {wanted !== null && <AskFirst bench={bench} />}
          {building.draft.surface === bench.first.kind ? <Editor bench={bench} /> : <OtherSurface bench={bench} />}
        </>
      )}
    </div>
  )
}

function Editor({ bench }: { readonly bench: BenchState }) {
  const { building } = useBuilding()
  const { good, draft } = building
  const [asked, setAsked] = useState(false)
  const start = useLostFocus<HTMLDivElement>()
  return (
    <>
      <BuildBar bench={bench} />
      <div className="build-places">
        <div className="build-typed" ref={start} tabIndex={-1}>
          <NameFields />
          <LayerList bench={bench} onLiningOff={() => setAsked(true)} />
          <AssemblyFields />
        </div>
        {good === null ? (
          <NothingYet bench={bench} />
        ) : (
          <LiveView bench={bench} draft={good} isFormer={good !== draft} asked={asked} onAsk={() => setAsked(true)} />
        )}
      </div>
    </>
  )
}

/** Before the first layer: what stands there now, to be bettered. */
function NothingYet({ bench }: { readonly bench: BenchState }) {
  return (
    <div className="build-shown">
      <p className="bench-said build-live">
        Add a layer: its section, depth, weight and what {bench.first.label} rates with it follow as you build. Beside
        this stands the present one.
      </p>
      <div className="build-curve">
        <CurveView bench={bench} />
      </div>
    </div>
  )
}

/** The one in the making was begun for another kind of surface: it waits. */
function OtherSurface({ bench }: { readonly bench: BenchState }) {
  const { view } = useSession()
  const { building } = useBuilding()
  const { draft } = building
  const { room } = bench
  const back = draft.surface === 'wall' ? room.walls[0]?.id : room[draft.surface].id
  return (
    <div className="build-other">
      <p className="bench-said">
        "{draft.name}" is being built for {surfaceWords(draft.surface)} and waits for you there.
      </p>
      <button
        type="button"
        className="boxed"
        onClick={() => back !== undefined && view.setState({ surfaceIds: [back], cornerId: null, thing: null })}
      >
        Go on with it
      </button>
      <StartBuilding bench={bench} />
    </div>
  )
}

/** Another one was asked for while this one would be lost. */
function AskFirst({ bench }: { readonly bench: BenchState }) {
  const { view } = useSession()
  const { building } = useBuilding()
  const { save } = useSaving(bench)
  const begin = () =>
    view.setState(({ wantedDraft }) => ({ building: wantedDraft && startBuilding(wantedDraft), wantedDraft: null }))
  return (
    <fieldset className="verbs build-ask" role="alert">
      <legend className="visually-hidden">Another assembly is not saved yet</legend>
      <span>
        <span className="warn-sign" aria-hidden="true" />"{building.draft.name}" is not saved and would give way.
      </span>
      <button
        type="button"
        onClick={() => {
          if (save() === null) begin()
        }}
      >
        Save it and go on
      </button>
      <button type="button" onClick={begin}>
        Discard it and go on
      </button>
      <button type="button" onClick={() => view.setState({ wantedDraft: null })}>
        Stay with it
      </button>
    </fieldset>
  )
}
