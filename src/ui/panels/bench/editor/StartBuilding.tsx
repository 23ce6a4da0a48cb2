import { useRef, useState } from 'react'
import { copyTitle, freeTitle } from '#state/commands/assemblies.ts'
import { copyDraft, emptyDraft } from '#state/draft.ts'
import { ChoiceField } from '#ui/fields/ChoiceField.tsx'
import { openFile } from '#ui/openFile.ts'
import { surfaceWords } from '#ui/panels/bench/editor/editorWords.ts'
import { OwnList } from '#ui/panels/bench/editor/OwnList.tsx'
import { wantDraft } from '#ui/panels/bench/editor/useBuilding.ts'
import { useLostFocus } from '#ui/panels/bench/editor/useLostFocus.ts'
import type { BenchState } from '#ui/panels/bench/useBench.ts'
import { useCatalogue, useSession, useShownProject } from '#ui/session.ts'
import { useShell } from '#ui/shell.ts'

/** Where building begins: from nothing, from a copy, from a file, or with one the project already has. */
export function StartBuilding({ bench }: { readonly bench: BenchState }) {
  const session = useSession()
  const shell = useShell()
  const catalogue = useCatalogue()
  const project = useShownProject()
  const start = useLostFocus<HTMLDivElement>()
  const picker = useRef<HTMLInputElement>(null)
  const { kind, facts } = bench.first
  const structure = catalogue.existing.get(facts.existing)?.structure ?? 'wood-frame'
  return (
    <div className="build-start" ref={start} tabIndex={-1}>
      <div className="build-starts">
        <button
          type="button"
          className="boxed"
          onClick={() => wantDraft(session, emptyDraft(kind, structure, freeTitle(project, `New ${kind} assembly`)))}
        >
          Start from nothing
        </button>
        <CopyField bench={bench} />
        <button type="button" className="boxed" onClick={() => picker.current?.click()}>
          Open a shared assembly
        </button>
        <input
          ref={picker}
          type="file"
          accept=".json,application/json"
          aria-label="Open an assembly file"
          tabIndex={-1}
          hidden
          onChange={(event) => {
            const file = event.target.files?.[0]
            event.target.value = ''
            if (file) void openFile(session, shell, file, 'assembly')
          }}
        />
      </div>
      <OwnList bench={bench} />
      <p className="table-note">
        Built for {surfaceWords(kind)}, kept in this project's file, and rated by the same calculation as the built-in
        ones.
      </p>
    </div>
  )
}

/** A copy of any assembly for this kind of surface, to be changed. */
function CopyField({ bench }: { readonly bench: BenchState }) {
  const session = useSession()
  const catalogue = useCatalogue()
  const { kind } = bench.first
  const [id, setId] = useState(bench.present.assembly?.id ?? null)
  const listed = [...catalogue.assemblies.values()].filter(({ surface }) => surface === kind)
  const chosen = listed.find((assembly) => assembly.id === id) ?? listed[0]
  if (!chosen) return null
  return (
    <div className="build-copy">
      <ChoiceField
        name="copy-from"
        label="or from a copy of"
        value={chosen.id}
        options={listed.map((assembly) => ({ value: assembly.id, text: assembly.name }))}
        onChoose={setId}
      />
      <button
        type="button"
        className="boxed"
        onClick={() => {
          const name = copyTitle(session.document.store.getState().project, chosen)
          wantDraft(session, copyDraft(chosen, name))
        }}
      >
        Duplicate and edit
      </button>
    </div>
  )
}
