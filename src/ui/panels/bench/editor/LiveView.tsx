import { scaleLinear } from 'd3-scale'
import { useMemo } from 'react'
import { layersDepth } from '#assemblies/layer.ts'
import { allCautions } from '#assemblies/usualCautions.ts'
import { textWidth } from '#drawing/text.ts'
import type { AssemblyDraft } from '#state/draft.ts'
import { frequencyWords } from '#ui/charts/curveWords.ts'
import { useWidth } from '#ui/charts/useWidth.ts'
import { CurveView } from '#ui/panels/bench/CurveView.tsx'
import type { Candidate } from '#ui/panels/bench/candidates.ts'
import { draftCandidate, draftCautions } from '#ui/panels/bench/editor/draftCandidate.ts'
import { BuildFigures } from '#ui/panels/bench/inspect/BuildFigures.tsx'
import { LiningCautions } from '#ui/panels/bench/LiningCautions.tsx'
import { SectionView } from '#ui/panels/bench/SectionView.tsx'
import type { BenchState } from '#ui/panels/bench/useBench.ts'
import { CautionItem } from '#ui/panels/ledger/quietLines.tsx'
import { capital, stcWords } from '#ui/panels/words.ts'
import { useCatalogue } from '#ui/session.ts'
import type { Millimetres } from '#units/quantity.ts'

interface Props {
  readonly bench: BenchState
  /** The last version that can be built. */
  readonly draft: AssemblyDraft
  /** True where what is typed cannot be built, so that this is an earlier version. */
  readonly isFormer: boolean
  /** The cautions of taking the lining off stand here in full. */
  readonly asked: boolean
  readonly onAsk: () => void
}

/** The assembly in the making against the surface in hand: figures, section, curve and cautions. */
export function LiveView({ bench, draft, isFormer, asked, onAsk }: Props) {
  const catalogue = useCatalogue()
  const { first, room, scheme, surfaces, liningOff } = bench
  const candidate = useMemo(
    () => draftCandidate(first, draft, liningOff, catalogue),
    [first, draft, liningOff, catalogue],
  )
  const shown = useMemo<BenchState>(() => ({ ...bench, pointed: candidate }), [bench, candidate])
  const ids = surfaces.map(({ facts }) => facts.id)
  const cautions = draftCautions(room, scheme, ids, candidate.assembly, catalogue)
  return (
    // A part that scrolls by itself can be reached and scrolled by keys.
    // biome-ignore lint/a11y/noNoninteractiveTabindex: it scrolls
    <section className="build-shown" aria-label="What it comes to" tabIndex={0}>
      <div className="build-live">
        <Figures bench={bench} candidate={candidate} draft={draft} isFormer={isFormer} />
        <LiveSection bench={bench} candidate={candidate} />
        <Resonances candidate={candidate} />
      </div>
      <div className="build-curve">
        <CurveView bench={shown} />
      </div>
      {bench.liningOff && (
        <div className="build-cautions">
          <LiningCautions bench={bench} open={asked} onOpen={onAsk} />
        </div>
      )}
      <section className="build-cautions" aria-label="Cautions of this assembly">
        <h3>Before it is built</h3>
        <ul className="cautions">
          {cautions.map((caution) => (
            <CautionItem key={caution.code} caution={caution} />
          ))}
        </ul>
        <ul className="caution-lines">
          {allCautions(candidate.assembly).map((text) => (
            <li key={text}>{text}</li>
          ))}
        </ul>
      </section>
    </section>
  )
}

type FiguresProps = Pick<Props, 'bench' | 'draft' | 'isFormer'> & { readonly candidate: Candidate }

function Figures({ bench, candidate, draft, isFormer }: FiguresProps) {
  const layers = draft.layers.map(({ layer }) => layer)
  return (
    <div className="build-figures-place" aria-live="polite">
      {isFormer && (
        <p className="field-error">
          <span className="warn-sign" aria-hidden="true" />
          What is typed cannot be built: this is the last version that can.
        </p>
      )}
      <BuildFigures layers={layers}>
        <div>
          <dt>{bench.first.label} with it</dt>
          <dd>{stcWords(candidate.described.rating)}</dd>
        </div>
      </BuildFigures>
    </div>
  )
}

/** Room for the words at the ends of the section, px. */
const WORD_SIZE = 13
const END = 12
/** Deeper existing constructions are cut off at a break line, as on the ruler. */
const MOST_EXISTING_MM: Millimetres = 150

/** The section at a scale of its own: what stands there in the left part, what is built in the rest. */
function LiveSection({ bench, candidate }: { readonly bench: BenchState; readonly candidate: Candidate }) {
  const [ref, width] = useWidth<HTMLDivElement>(340)
  const { described } = candidate
  const { facts } = bench.first
  const face = facts.measuredTo
  const depth = face === 'structure' ? described.depthFromStructureMm : described.depthFromFaceMm
  const standing = Math.max(0, layersDepth(described.layers) - depth)
  const scale = useMemo(() => {
    const built = Math.max(depth, 1)
    const left = Math.min(standing, MOST_EXISTING_MM)
    const room = textWidth('room', WORD_SIZE, 400) + END
    const far = textWidth('neighbour', WORD_SIZE, 400) + END
    return scaleLinear()
      .domain([-left, built])
      .range([far, Math.max(far + 40, width - room)])
  }, [depth, standing, width])
  return (
    <div ref={ref} className="build-section">
      <SectionView candidate={candidate} layout={{ x: scale }} width={width} face={face} farSide={facts.farSide} />
    </div>
  )
}

function Resonances({ candidate }: { readonly candidate: Candidate }) {
  const resonances = candidate.described.rating?.prediction.resonances ?? []
  if (resonances.length === 0) return null
  return (
    <div className="build-resonances">
      <h3>Where it lets more through</h3>
      <ul>
        {resonances.map(({ hz, cause, remedy }) => (
          <li key={`${Math.round(hz)} ${cause}`}>
            <strong>{frequencyWords(hz)}</strong> {capital(cause)}. <span className="soft">{remedy}</span>
          </li>
        ))}
      </ul>
    </div>
  )
}
