import { useState } from 'react'
import type { Assembly, ExistingConstruction } from '#assemblies/assembly.ts'
import { isOwn } from '#assemblies/ownAssembly.ts'
import { copyTitle } from '#state/commands/assemblies.ts'
import { copyDraft } from '#state/draft.ts'
import { Drawer } from '#ui/dialogs/Drawer.tsx'
import { ChoiceField } from '#ui/fields/ChoiceField.tsx'
import { wantDraft } from '#ui/panels/bench/editor/useBuilding.ts'
import { AssemblyInside, ExistingInside } from '#ui/panels/bench/inspect/Inside.tsx'
import { MaterialsTable } from '#ui/panels/bench/inspect/MaterialsTable.tsx'
import { Tabs } from '#ui/panels/bench/Tabs.tsx'
import { capital } from '#ui/panels/words.ts'
import { useCatalogue, useRoom, useSession } from '#ui/session.ts'
import { useShell } from '#ui/shell.ts'

type View = 'materials' | 'assemblies' | 'existing'

const VIEWS: readonly { id: View; text: string }[] = [
  { id: 'materials', text: 'Materials' },
  { id: 'assemblies', text: 'Assemblies' },
  { id: 'existing', text: 'Existing constructions' },
]

/** What the calculation is fed with: materials, assemblies and existing constructions, each number with its source. */
export function MaterialsDrawer() {
  const [view, setView] = useState<View>('materials')
  return (
    <Drawer name="materials" title="What everything is made of">
      <div className="bench materials-place">
        <div data-first="" tabIndex={-1}>
          <Tabs label="What to look at" views={VIEWS} current={view} onChoose={setView} />
        </div>
        {view === 'materials' && <MaterialsTable />}
        {view === 'assemblies' && <Assemblies />}
        {view === 'existing' && <Existing />}
      </div>
    </Drawer>
  )
}

function Assemblies() {
  const catalogue = useCatalogue()
  const listed = [...catalogue.assemblies.values()]
  const [id, setId] = useState(listed[0]?.id ?? '')
  const chosen = catalogue.assemblies.get(id) ?? listed[0]
  const duplicate = useDuplicate()
  if (!chosen) return null
  const own = (assembly: Assembly) => isOwn(catalogue, assembly.id)
  return (
    <>
      <div className="bench-controls">
        <ChoiceField
          name="inside-assembly"
          label="Assembly"
          value={chosen.id}
          options={listed.map((assembly) => ({
            value: assembly.id,
            text: `${capital(assembly.surface)}: ${assembly.name}${own(assembly) ? ' · own' : ''}`,
          }))}
          onChoose={setId}
        />
        <button type="button" onClick={() => duplicate(chosen)}>
          Duplicate and edit
        </button>
      </div>
      <AssemblyInside assembly={chosen} isOwn={own(chosen)} />
    </>
  )
}

function Existing() {
  const catalogue = useCatalogue()
  const listed = [...catalogue.existing.values()]
  const [id, setId] = useState(listed[0]?.id ?? '')
  const chosen: ExistingConstruction | undefined = catalogue.existing.get(id) ?? listed[0]
  if (!chosen) return null
  return (
    <>
      <div className="bench-controls">
        <ChoiceField
          name="inside-existing"
          label="Existing construction"
          value={chosen.id}
          options={listed.map(({ id: value, surface, name }) => ({ value, text: `${capital(surface)}: ${name}` }))}
          onChoose={setId}
        />
      </div>
      <ExistingInside existing={chosen} />
    </>
  )
}

/** Opens a copy in the bench, on a surface of its kind. */
function useDuplicate(): (assembly: Assembly) => void {
  const session = useSession()
  const shell = useShell()
  const room = useRoom()
  return (assembly) => {
    const surfaceId = assembly.surface === 'wall' ? room.walls[0]?.id : room[assembly.surface].id
    const { surfaceIds } = session.view.getState()
    const walls = new Set(room.walls.map(({ id }) => id))
    const fits = surfaceIds.some((id) => (assembly.surface === 'wall' ? walls.has(id) : id === surfaceId))
    if (!fits && surfaceId !== undefined) session.view.setState({ surfaceIds: [surfaceId], cornerId: null })
    session.view.setState({ showsSheet: false })
    const name = copyTitle(session.document.store.getState().project, assembly)
    wantDraft(session, copyDraft(assembly, name))
    shell.state.setState({ drawer: null })
  }
}
