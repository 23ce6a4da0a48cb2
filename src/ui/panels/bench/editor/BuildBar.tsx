import { useId, useState } from 'react'
import type { Command } from '#state/command.ts'
import { copyTitle, freeAssemblyId, saveAndBuild, saveAssembly } from '#state/commands/assemblies.ts'
import { assemblyOf, draftProblems, savedAs, unreadProblems } from '#state/draft.ts'
import { saveAssemblyFile } from '#ui/assemblyFiles.ts'
import { useBuilding } from '#ui/panels/bench/editor/useBuilding.ts'
import type { BenchState } from '#ui/panels/bench/useBench.ts'
import { listOf } from '#ui/panels/words.ts'
import { useDocument, useSession } from '#ui/session.ts'

/** What can be done with the assembly in the making. */
export function BuildBar({ bench }: { readonly bench: BenchState }) {
  const hand = useBuilding()
  const { building, isKept, takeBack } = hand
  const { save, saveCopy, use } = useSaving(bench)
  const [said, setSaid] = useState<string | null>(null)
  const [asks, setAsks] = useState(false)
  const own = useDocument((state) => state.project.assemblies)
  const id = useId()
  const isSaved = own.some((assembly) => assembly.id === building.draft.replaces)
  const labels = listOf(bench.surfaces.map(({ label }) => label))
  return (
    <div className="build-bar">
      <fieldset className="verbs" aria-describedby={id}>
        <legend className="visually-hidden">The assembly in hand</legend>
        <button type="button" onClick={() => setSaid(isSaved && isKept ? null : save())}>
          Save to this project
        </button>
        <button type="button" onClick={() => setSaid(saveCopy())}>
          Save as a copy
        </button>
        <button type="button" className="strong" onClick={() => setSaid(use())}>
          Use it on {labels}
        </button>
        <button
          type="button"
          onClick={() => {
            const problem = firstProblem(building)
            setSaid(problem)
            if (problem === null) saveAssemblyFile(assemblyOf(building.draft, building.draft.replaces ?? 'own-1'))
          }}
        >
          Share as a file
        </button>
        <button type="button" disabled={building.former.length === 0} onClick={takeBack}>
          Take back a step
        </button>
        <button type="button" onClick={() => (isKept ? hand.discard() : setAsks(true))}>
          {isKept ? 'Close' : 'Discard'}
        </button>
      </fieldset>
      {asks && !isKept && <AskDiscard onKeep={() => setAsks(false)} onDiscard={hand.discard} />}
      <p id={id} className={said === null ? 'bench-said' : 'field-error'} role="status">
        {said !== null && <span className="warn-sign" aria-hidden="true" />}
        {said ?? standing(isSaved, isKept)}
      </p>
    </div>
  )
}

function standing(isSaved: boolean, isKept: boolean): string {
  if (isSaved) return isKept ? 'Saved in this project.' : 'Changed since it was saved.'
  return isKept ? 'Nothing changed yet.' : 'Not saved yet.'
}

function AskDiscard({ onKeep, onDiscard }: { readonly onKeep: () => void; readonly onDiscard: () => void }) {
  return (
    <fieldset className="verbs build-ask">
      <legend className="visually-hidden">Discard what is not saved?</legend>
      <span>What is not saved would be lost. Discard it?</span>
      <button type="button" onClick={onKeep}>
        Keep building
      </button>
      <button type="button" onClick={onDiscard}>
        Discard it
      </button>
    </fieldset>
  )
}

/** Why it cannot be saved as it is typed; null: it can. */
function firstProblem(building: Parameters<typeof unreadProblems>[0]): string | null {
  const problem = unreadProblems(building)[0] ?? draftProblems(building.draft)[0]
  return problem ? `It was not saved. ${problem.message}` : null
}

/** The saving verbs; each answers with the sentence of its refusal, or null. */
export function useSaving(bench: BenchState) {
  const { document, view } = useSession()
  const { building, change, isKept } = useBuilding()
  const project = () => document.store.getState().project
  const carryOut = (id: string, command: Command, name: string): string | null => {
    const refusal = firstProblem(building) ?? bench.run(command)
    if (refusal !== null) return refusal
    change((former) => savedAs(former, id, name))
    view.setState({ pointedAssembly: null })
    return null
  }
  const { draft } = building
  const ownId = () => (project().assemblies.some(({ id }) => id === draft.replaces) ? draft.replaces : null)
  return {
    save: () => {
      const id = ownId() ?? freeAssemblyId(project())
      return carryOut(id, saveAssembly(assemblyOf(draft, id)), draft.name)
    },
    saveCopy: () => {
      const id = freeAssemblyId(project())
      const isTaken = project().assemblies.some(({ name }) => name === draft.name.trim())
      const name = isTaken ? copyTitle(project(), draft) : draft.name
      return carryOut(id, saveAssembly({ ...assemblyOf(draft, id), name }), name)
    },
    use: () => {
      const isBuilt = draft.replaces !== null && bench.chosenId === draft.replaces && isKept
      if (isBuilt) return null
      const id = ownId() ?? freeAssemblyId(project())
      const ids = bench.surfaces.map(({ facts }) => facts.id)
      return carryOut(id, saveAndBuild(assemblyOf(draft, id), bench.scheme.id, ids), draft.name)
    },
  }
}
