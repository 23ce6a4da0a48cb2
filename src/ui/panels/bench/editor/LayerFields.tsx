import type { BoardLayer, DampingLayer, FillerLayer, Layer } from '#assemblies/layer.ts'
import { DAMPING_THICKNESS_MM } from '#assemblies/layer.ts'
import { boardMass } from '#assemblies/mass.ts'
import { usualBoard, usualLayer } from '#assemblies/usualLayer.ts'
import type { DraftLayer } from '#state/draft.ts'
import { ChoiceField } from '#ui/fields/ChoiceField.tsx'
import { LengthField } from '#ui/fields/LengthField.tsx'
import { MassField } from '#ui/fields/MassField.tsx'
import { bothMasses } from '#ui/fields/readSurfaceMass.ts'
import { TextField } from '#ui/fields/TextField.tsx'
import { CavityFields } from '#ui/panels/bench/editor/CavityFields.tsx'
import { KIND_OPTIONS, MATERIAL_OPTIONS } from '#ui/panels/bench/editor/editorWords.ts'
import { useBuilding } from '#ui/panels/bench/editor/useBuilding.ts'
import { useShownProject } from '#ui/session.ts'
import type { LengthUnit } from '#units/quantity.ts'
import { unreachable } from '#units/result.ts'

/** What a layer is, field by field; what is impossible is told beside the layer, and stays as it was typed. */
export function LayerFields({ entry }: { readonly entry: DraftLayer }) {
  const { setLayer } = useBuilding()
  const { units } = useShownProject()
  return (
    <div className="layer-fields">
      <ChoiceField<Layer['kind']>
        name="layer-kind"
        label="What it is"
        value={entry.layer.kind}
        options={KIND_OPTIONS}
        onChoose={(kind) => setLayer(entry.key, usualLayer(kind, units))}
      />
      <KindFields entry={entry} />
      {entry.source !== null && (
        <p className="layer-source">
          Taken over, {entry.source.status}: {entry.source.text}
        </p>
      )}
    </div>
  )
}

function KindFields({ entry }: { readonly entry: DraftLayer }) {
  const { key, layer } = entry
  switch (layer.kind) {
    case 'board':
      return <BoardFields layerKey={key} board={layer} />
    case 'cavity':
      return <CavityFields layerKey={key} cavity={layer} />
    case 'damping-compound':
      return <CompoundFields layerKey={key} compound={layer} />
    case 'filler':
      return <FillerFields layerKey={key} filler={layer} />
    default:
      return unreachable(layer)
  }
}

function BoardFields({ layerKey, board }: { readonly layerKey: string; readonly board: BoardLayer }) {
  const { setLayer, kept } = useBuilding()
  const { units } = useShownProject()
  const set = (layer: Layer) => {
    setLayer(layerKey, layer)
    return null
  }
  const { surfaceMassKgM2: _, ...unweighed } = board
  return (
    <>
      <ChoiceField
        name="board-material"
        label="Material"
        value={board.material}
        options={MATERIAL_OPTIONS}
        onChoose={(material) => set(usualBoard(material))}
      />
      <LengthField
        name="board-thickness"
        label="Thickness"
        value={board.thicknessMm}
        unit={units}
        kept={kept(`${layerKey} thickness`)}
        onCommit={(thicknessMm) => set({ ...unweighed, thicknessMm })}
      />
      <MassField
        name="board-mass"
        label="Weight, as weighed"
        value={board.surfaceMassKgM2 ?? null}
        emptyMeans={densityWords(unweighed, units)}
        unit={units}
        kept={kept(`${layerKey} mass`)}
        onCommit={(mass) => set(mass === null ? unweighed : { ...board, surfaceMassKgM2: mass })}
      />
    </>
  )
}

/** What a board weighs that nobody weighed. */
function densityWords(board: BoardLayer, unit: LengthUnit): string {
  const isPossible = board.thicknessMm > 0
  return isPossible ? `empty: ${bothMasses(boardMass(board), unit)}, from its density` : 'empty: from its density'
}

function CompoundFields({ layerKey, compound }: { readonly layerKey: string; readonly compound: DampingLayer }) {
  const { setLayer, kept } = useBuilding()
  const { units } = useShownProject()
  return (
    <LengthField
      name="compound-thickness"
      label="Thickness"
      value={compound.thicknessMm ?? DAMPING_THICKNESS_MM}
      unit={units}
      kept={kept(`${layerKey} thickness`)}
      onCommit={(thicknessMm) => {
        setLayer(layerKey, { ...compound, thicknessMm })
        return null
      }}
    />
  )
}

function FillerFields({ layerKey, filler }: { readonly layerKey: string; readonly filler: FillerLayer }) {
  const { setLayer, kept } = useBuilding()
  const { units } = useShownProject()
  const set = (part: Partial<FillerLayer>) => {
    setLayer(layerKey, { ...filler, ...part })
    return null
  }
  return (
    <>
      <TextField
        name="filler-name"
        label="What it is called"
        value={filler.name}
        onCommit={(name) => (name.trim() === '' ? 'A filler needs a name.' : set({ name: name.trim() }))}
      />
      <LengthField
        name="filler-thickness"
        label="Thickness"
        value={filler.thicknessMm}
        unit={units}
        kept={kept(`${layerKey} thickness`)}
        onCommit={(thicknessMm) => set({ thicknessMm })}
      />
      <MassField
        name="filler-mass"
        label="Weight"
        value={filler.surfaceMassKgM2}
        unit={units}
        kept={kept(`${layerKey} mass`)}
        onCommit={(mass) => set({ surfaceMassKgM2: mass ?? 0 })}
      />
      <label className="check-field">
        <input
          type="checkbox"
          name="filler-floats"
          checked={filler.floats ?? false}
          onChange={(event) => set({ floats: event.target.checked })}
        />
        A floor floats on it
      </label>
    </>
  )
}
