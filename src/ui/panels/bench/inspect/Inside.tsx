import type { Assembly, ExistingConstruction } from '#assemblies/assembly.ts'
import { allCautions } from '#assemblies/usualCautions.ts'
import { FIXED_TO_OPTIONS } from '#ui/panels/bench/editor/editorWords.ts'
import { BuildFigures } from '#ui/panels/bench/inspect/BuildFigures.tsx'
import { LayerTable } from '#ui/panels/bench/inspect/LayerTable.tsx'

/** Everything an assembly is made of, to be read. */
export function AssemblyInside({ assembly, isOwn }: { readonly assembly: Assembly; readonly isOwn: boolean }) {
  const { layers, layerSources, source, cautions } = assembly
  const fixed = FIXED_TO_OPTIONS.find(({ value }) => value === assembly.fixedTo)?.text ?? assembly.fixedTo
  return (
    <div className="inside">
      <BuildFigures layers={layers}>
        <div>
          <dt>Cost band</dt>
          <dd>
            {assembly.costBand} of 5 <small>common practice, no source</small>
          </dd>
        </div>
        <div>
          <dt>Fixed to</dt>
          <dd>{fixed}</dd>
        </div>
      </BuildFigures>
      <LayerTable caption="From the surface to the room" layers={layers} sources={layerSources} whole={source} />
      <p className="table-note">
        As a whole, {source.status}: {source.text}
      </p>
      <Cautions lines={isOwn ? allCautions(assembly) : cautions} />
    </div>
  )
}

/** Everything an existing construction is made of. */
export function ExistingInside({ existing }: { readonly existing: ExistingConstruction }) {
  const { layers, layerSources, source, notes } = existing
  return (
    <div className="inside">
      <BuildFigures layers={layers} />
      <LayerTable
        caption="From the far side to the bare face of the structure, its lining not counted"
        layers={layers}
        sources={layerSources}
        whole={source}
      />
      <p className="table-note">
        As a whole, {source.status}: {source.text}
      </p>
      <Cautions lines={notes} />
    </div>
  )
}

function Cautions({ lines }: { readonly lines: readonly string[] }) {
  if (lines.length === 0) return null
  return (
    <>
      <h3>Cautions</h3>
      <ul className="caution-lines">
        {lines.map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
    </>
  )
}
