import { useState } from 'react'
import { isOwn } from '#assemblies/ownAssembly.ts'
import { copyTitle } from '#state/commands/assemblies.ts'
import { copyDraft } from '#state/draft.ts'
import { ChoiceField } from '#ui/fields/ChoiceField.tsx'
import { wantDraft } from '#ui/panels/bench/editor/useBuilding.ts'
import { AssemblyInside, ExistingInside } from '#ui/panels/bench/inspect/Inside.tsx'
import type { BenchState } from '#ui/panels/bench/useBench.ts'
import { useCatalogue, useSession } from '#ui/session.ts'
import { useShell } from '#ui/shell.ts'

const EXISTING = 'existing'

/** What the selected surface, and everything it could be, is made of. */
export function InsideView({ bench }: { readonly bench: BenchState }) {
  const session = useSession()
  const shell = useShell()
  const catalogue = useCatalogue()
  const [chosen, setChosen] = useState<string | null>(null)
  const existing = catalogue.existing.get(bench.first.facts.existing)
  const id = chosen ?? bench.present.assembly?.id ?? EXISTING
  const assembly = catalogue.assemblies.get(id)
  return (
    <div className="inside-view">
      <div className="bench-controls">
        <ChoiceField
          name="inside"
          label="Look inside"
          value={assembly ? assembly.id : EXISTING}
          options={[
            { value: EXISTING, text: `As it stands: ${existing?.name ?? bench.first.facts.existing}` },
            ...bench.candidates.flatMap((candidate) =>
              candidate.assembly ? [{ value: candidate.id, text: candidate.name }] : [],
            ),
          ]}
          onChoose={setChosen}
        />
        {assembly && (
          <button
            type="button"
            onClick={() => {
              const name = copyTitle(session.document.store.getState().project, assembly)
              wantDraft(session, copyDraft(assembly, name))
            }}
          >
            Duplicate and edit
          </button>
        )}
        <button type="button" onClick={() => shell.state.setState({ drawer: 'materials' })}>
          Materials
        </button>
      </div>
      {assembly ? (
        <AssemblyInside assembly={assembly} isOwn={isOwn(catalogue, assembly.id)} />
      ) : (
        existing && <ExistingInside existing={existing} />
      )}
    </div>
  )
}
