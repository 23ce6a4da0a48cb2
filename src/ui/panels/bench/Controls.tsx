import { AS_IS } from '#assemblies/assembly.ts'
import { assignAssembly } from '#state/commands/surfaces.ts'
import { ChoiceField, type Option } from '#ui/fields/ChoiceField.tsx'
import { depthFrom, type Face, MEASURE_WORDS, type Measure } from '#ui/panels/bench/candidates.ts'
import type { BenchState } from '#ui/panels/bench/useBench.ts'
import { stcWords } from '#ui/panels/words.ts'
import { useCatalogue, useSession, useShownProject } from '#ui/session.ts'
import { formatLength } from '#units/format.ts'

interface Props {
  readonly bench: BenchState
  readonly measure: Measure
  readonly setMeasure: (measure: Measure) => void
  /** Whose margin can be measured by; null: nobody's is known here. */
  readonly receiver: string | null
  readonly face: Face
  readonly setFace: (face: Face) => void
  /** A lining was just chosen to come off. */
  readonly onLiningOff: () => void
}

const LOSSES: readonly Option<Measure>[] = [
  { value: 'stc', text: MEASURE_WORDS.stc },
  { value: 'loss63', text: 'Loss at 63 Hz' },
  { value: 'loss125', text: 'Loss at 125 Hz' },
]

/** The same choice as on the ruler, by list; what the ruler measures; and the lining. */
export function Controls({ bench, measure, setMeasure, receiver, face, setFace, onLiningOff }: Props) {
  const structure = bench.first.kind === 'wall' ? 'the bare structure' : 'the bare joists or slab'
  const measures = receiver === null ? LOSSES : [{ value: 'margin' as const, text: `Margin at ${receiver}` }, ...LOSSES]
  return (
    <div className="bench-controls">
      <AssemblyField bench={bench} face={face} />
      <LiningBox bench={bench} onLiningOff={onLiningOff} />
      <MakeAllWalls bench={bench} />
      <ChoiceField<Face>
        name="depth-face"
        label="Depth from"
        value={face}
        options={[
          { value: 'finished-face', text: 'the finished face' },
          { value: 'structure', text: structure },
        ]}
        onChoose={setFace}
      />
      <ChoiceField name="measure" label="Against" value={measure} options={measures} onChoose={setMeasure} />
    </div>
  )
}

function AssemblyField({ bench, face }: Pick<Props, 'bench' | 'face'>) {
  const { units } = useShownProject()
  return (
    <ChoiceField
      name="assembly"
      label="Assembly"
      value={bench.chosenId}
      options={bench.candidates.map((candidate) => ({
        value: candidate.id,
        text: `${candidate.isOwn ? 'Own: ' : ''}${candidate.name} · ${formatLength(depthFrom(candidate, face), units)} · ${stcWords(candidate.described.rating)}`,
      }))}
      onChoose={bench.choose}
    />
  )
}

/** Takes the existing lining off first, or leaves it. */
export function LiningBox({ bench, onLiningOff }: Pick<Props, 'bench' | 'onLiningOff'>) {
  if (!bench.surfaces.some(({ facts }) => facts.lining !== null)) {
    return <p className="bench-said">Bare, no lining.</p>
  }
  return (
    <label className="check-field">
      <input
        type="checkbox"
        name="remove-lining"
        checked={bench.liningOff}
        onChange={(event) => {
          bench.setLiningOff(event.target.checked)
          if (event.target.checked) onLiningOff()
        }}
      />
      Remove the existing lining
    </label>
  )
}

function MakeAllWalls({ bench }: Pick<Props, 'bench'>) {
  const { document } = useSession()
  const catalogue = useCatalogue()
  const { chosenId, first, room, scheme, surfaces } = bench
  if (first.kind !== 'wall' || chosenId === null || surfaces.length === room.walls.length) return null
  const assembly = chosenId === AS_IS ? null : (catalogue.assemblies.get(chosenId) ?? null)
  const command = assignAssembly(
    scheme.id,
    room.walls.map(({ id }) => id),
    assembly,
  )
  return (
    <button type="button" onClick={() => document.run(command)}>
      Make all walls this
    </button>
  )
}
