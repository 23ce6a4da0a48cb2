import { useEffect, useRef } from 'react'
import type { Layer } from '#assemblies/layer.ts'
import { layerDepth } from '#assemblies/layer.ts'
import type { OwnAssemblyProblem } from '#assemblies/ownAssembly.ts'
import { usualLayer } from '#assemblies/usualLayer.ts'
import { type DraftLayer, draftProblems, insertLayer, unreadProblems } from '#state/draft.ts'
import { LiningBox } from '#ui/panels/bench/Controls.tsx'
import { KIND_OPTIONS, layerWords } from '#ui/panels/bench/editor/editorWords.ts'
import { LayerFields } from '#ui/panels/bench/editor/LayerFields.tsx'
import { LayerVerbs } from '#ui/panels/bench/editor/LayerVerbs.tsx'
import { useBuilding } from '#ui/panels/bench/editor/useBuilding.ts'
import type { BenchState } from '#ui/panels/bench/useBench.ts'
import { capital } from '#ui/panels/words.ts'
import { useCatalogue, useShownProject } from '#ui/session.ts'
import { formatThickness } from '#units/format.ts'

interface Props {
  readonly bench: BenchState
  /** The existing lining was just chosen to come off. */
  readonly onLiningOff: () => void
}

/** The layers in order from the surface to the room; one is open at a time. */
export function LayerList({ bench, onLiningOff }: Props) {
  const { building, change } = useBuilding()
  const { units } = useShownProject()
  const { layers } = building.draft
  const openIndex = layers.findIndex(({ key }) => key === building.openKey)
  // An open layer tells what it could not read in the very field.
  const unread = unreadProblems(building).filter(({ layer }) => layer !== openIndex + 1)
  const problems = [...draftProblems(building.draft), ...unread]
  const total = layers.reduce((sum, { layer }) => sum + layerDepth(layer), 0)
  const place = useOpenedInSight(building.openKey)
  return (
    <section className="layers" aria-label="Layers" ref={place}>
      <div className="layers-end">
        <StandsThere bench={bench} />
        {bench.first.facts.lining !== null && <LiningBox bench={bench} onLiningOff={onLiningOff} />}
      </div>
      <ol className="layer-list">
        {layers.map((entry, index) => (
          <LayerItem
            key={entry.key}
            entry={entry}
            index={index}
            isLast={index === layers.length - 1}
            problems={problems.filter(({ layer }) => layer === index + 1)}
          />
        ))}
      </ol>
      {layers.length === 0 ? (
        <p className="layers-none">No layers yet.</p>
      ) : (
        <Sentences problems={problems.filter(({ layer }) => layer === null)} />
      )}
      <p className="layers-end layers-sum">
        Room <span>{problems.length === 0 && `${formatThickness(total, units)} in all`}</span>
      </p>
      <fieldset className="verbs layers-add">
        <legend className="field-label">Add on the room side</legend>
        {KIND_OPTIONS.map(({ value, text }) => (
          <button
            key={value}
            type="button"
            onClick={() => change((former) => insertLayer(former, layers.length, usualLayer(value, units)))}
          >
            {text}
          </button>
        ))}
      </fieldset>
    </section>
  )
}

/** Brings a layer that was just opened into sight and the focus to its first field; with none left, to what adds one. */
function useOpenedInSight(openKey: string | null) {
  const place = useRef<HTMLElement>(null)
  const known = useRef(openKey)
  useEffect(() => {
    if (known.current === openKey) return
    known.current = openKey
    const open = place.current?.querySelector<HTMLElement>('.layer[data-open="true"]')
    if (!open && document.activeElement === document.body) {
      place.current?.querySelector<HTMLElement>('.layers-add button')?.focus()
    }
    open?.querySelector<HTMLElement>('select, input')?.focus({ preventScroll: true })
    open?.scrollIntoView({ block: 'nearest' })
  }, [openKey])
  return place
}

/** What the assembly is built against. */
function StandsThere({ bench }: { readonly bench: BenchState }) {
  const catalogue = useCatalogue()
  const { facts, label } = bench.first
  const name = catalogue.existing.get(facts.existing)?.name ?? facts.existing
  const lining = facts.lining === null ? 'bare' : bench.liningOff ? 'lining off' : 'with its lining'
  return (
    <>
      {label} as it stands: {name}, {lining}
    </>
  )
}

interface ItemProps {
  readonly entry: DraftLayer
  readonly index: number
  readonly isLast: boolean
  readonly problems: readonly OwnAssemblyProblem[]
}

function LayerItem({ entry, index, isLast, problems }: ItemProps) {
  const { building, change } = useBuilding()
  const isOpen = building.openKey === entry.key
  const id = `layer-fields-${entry.key}`
  return (
    <li className="layer" data-open={isOpen} data-wrong={problems.length > 0}>
      <button
        type="button"
        className="layer-head"
        aria-expanded={isOpen}
        aria-controls={id}
        onClick={() => change((former) => ({ ...former, openKey: isOpen ? null : entry.key }))}
      >
        <span className="layer-number">{index + 1}</span>
        <LayerHead layer={entry.layer} />
      </button>
      <Sentences problems={problems} />
      {isOpen && (
        <div id={id} className="layer-open">
          <LayerFields entry={entry} />
          <LayerVerbs entry={entry} index={index} isLast={isLast} />
        </div>
      )}
    </li>
  )
}

function LayerHead({ layer }: { readonly layer: Layer }) {
  const { units } = useShownProject()
  return (
    <>
      <span className="layer-what">{capital(layerWords(layer))}</span>
      <span className="layer-depth">{formatThickness(layerDepth(layer), units)}</span>
    </>
  )
}

function Sentences({ problems }: { readonly problems: readonly OwnAssemblyProblem[] }) {
  return problems.map(({ message }) => (
    <p key={message} className="field-error" role="alert">
      <span className="warn-sign" aria-hidden="true" />
      {message}
    </p>
  ))
}
