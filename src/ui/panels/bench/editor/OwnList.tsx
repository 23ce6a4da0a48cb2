import { useState } from 'react'
import type { Assembly } from '#assemblies/assembly.ts'
import { layersDepth } from '#assemblies/layer.ts'
import { layersMass } from '#assemblies/predict.ts'
import { countUses, deleteAssembly, duplicateAssembly, renameAssembly } from '#state/commands/assemblies.ts'
import { draftOf } from '#state/draft.ts'
import { saveAssemblyFile } from '#ui/assemblyFiles.ts'
import { TextField } from '#ui/fields/TextField.tsx'
import { wantDraft } from '#ui/panels/bench/editor/useBuilding.ts'
import type { BenchState } from '#ui/panels/bench/useBench.ts'
import { useDocument, useSession, useShownProject } from '#ui/session.ts'
import { useShell } from '#ui/shell.ts'
import { formatSurfaceMass, formatThickness } from '#units/format.ts'

/** The project's own assemblies for this kind of surface. */
export function OwnList({ bench }: { readonly bench: BenchState }) {
  const own = useDocument((state) => state.project.assemblies).filter(({ surface }) => surface === bench.first.kind)
  if (own.length === 0) {
    return <p className="bench-said">This project has no {bench.first.kind} assembly of its own yet.</p>
  }
  return (
    <div className="table-place">
      <table className="figures cards own-list">
        <caption>Own assemblies of this project</caption>
        <thead>
          <tr>
            <th scope="col">Name</th>
            <th scope="col">Depth</th>
            <th scope="col">Weight</th>
            <th scope="col">Used by</th>
            <th scope="col">
              <span className="visually-hidden">What can be done</span>
            </th>
          </tr>
        </thead>
        <tbody>
          {own.map((assembly) => (
            <OwnRow key={assembly.id} assembly={assembly} bench={bench} />
          ))}
        </tbody>
      </table>
    </div>
  )
}

function OwnRow({ assembly, bench }: { readonly assembly: Assembly; readonly bench: BenchState }) {
  const session = useSession()
  const project = useShownProject()
  const { surfaces, schemes } = countUses(project, assembly.id)
  const { state } = useShell()
  const remove = () => {
    const refusal = bench.run(deleteAssembly(project, assembly.id))
    if (refusal !== null || surfaces === 0) return
    const back = surfaces === 1 ? '1 surface goes' : `${surfaces} surfaces go`
    const text = `"${assembly.name}" was deleted: ${back} back to as it stands, in ${schemeWords(schemes)}. Undo brings it back.`
    state.setState({ notice: { kind: 'told', text, details: [] } })
  }
  return (
    <tr>
      <th scope="row">
        <OwnName assembly={assembly} bench={bench} />
      </th>
      <td className="number" data-label="Depth">
        {formatThickness(layersDepth(assembly.layers), project.units)}
      </td>
      <td className="number" data-label="Weight">
        {formatSurfaceMass(layersMass(assembly.layers), project.units)}
      </td>
      <td data-label="Used by">{usesWords(surfaces, schemes)}</td>
      <td className="own-verbs">
        <button type="button" onClick={() => wantDraft(session, draftOf(assembly))}>
          Edit<span className="visually-hidden"> {assembly.name}</span>
        </button>
        <button type="button" onClick={() => bench.run(duplicateAssembly(assembly))}>
          Duplicate<span className="visually-hidden"> {assembly.name}</span>
        </button>
        <button type="button" onClick={() => saveAssemblyFile(assembly)}>
          Share<span className="visually-hidden"> {assembly.name}</span>
        </button>
        <button type="button" onClick={remove}>
          Delete<span className="visually-hidden"> {assembly.name}</span>
        </button>
      </td>
    </tr>
  )
}

/** Its name, changed on the spot. */
function OwnName({ assembly, bench }: { readonly assembly: Assembly; readonly bench: BenchState }) {
  const [renames, setRenames] = useState(false)
  if (!renames) {
    return (
      <>
        {assembly.name}{' '}
        <button type="button" onClick={() => setRenames(true)}>
          Rename<span className="visually-hidden"> {assembly.name}</span>
        </button>
      </>
    )
  }
  const { id, name, shortName } = assembly
  return (
    <div className="name-fields">
      <TextField
        name="own-name"
        label="Name"
        value={name}
        onCommit={(text) => bench.run(renameAssembly(id, { name: text, shortName }))}
      />
      <TextField
        name="own-short-name"
        label="Short name"
        value={shortName}
        onCommit={(text) => bench.run(renameAssembly(id, { name, shortName: text }))}
      />
      <button type="button" onClick={() => setRenames(false)}>
        Done
      </button>
    </div>
  )
}

function usesWords(surfaces: number, schemes: number): string {
  if (surfaces === 0) return 'nothing yet'
  return `${surfaces} ${surfaces === 1 ? 'surface' : 'surfaces'} in ${schemeWords(schemes)}`
}

function schemeWords(schemes: number): string {
  return schemes === 1 ? 'one scheme' : `${schemes} schemes`
}
