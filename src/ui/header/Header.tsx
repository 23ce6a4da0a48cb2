import { Drawers } from '#ui/dialogs/Drawers.tsx'
import { FileVerbs } from '#ui/header/FileVerbs.tsx'
import { ProjectName } from '#ui/header/ProjectName.tsx'
import { QuietPlace } from '#ui/header/QuietPlace.tsx'
import { RoomPicker } from '#ui/header/RoomPicker.tsx'
import { SchemeRow } from '#ui/header/SchemeRow.tsx'
import { UndoVerbs } from '#ui/header/UndoVerbs.tsx'
import { useSession, useView } from '#ui/session.ts'
import { useShell, useShellState } from '#ui/shell.ts'

/** What is open, what was done last, and what can be done with the whole of it. */
export function Header() {
  const { state } = useShell()
  const isOpen = useShellState((shell) => shell.showsProjectVerbs)
  return (
    <header className="header" data-more={isOpen ? 'open' : 'shut'}>
      <div className="header-row">
        <ProjectName />
        <UndoVerbs />
        <button
          type="button"
          className="verb header-toggle"
          aria-expanded={isOpen}
          aria-controls="header-more"
          onClick={() => state.setState({ showsProjectVerbs: !isOpen })}
        >
          Project
        </button>
        <div className="header-more" id="header-more">
          <FileVerbs />
        </div>
        <HandOver />
      </div>
      <div className="header-row header-schemes">
        <RoomPicker />
        <SchemeRow />
        <QuietPlace />
      </div>
      <Drawers />
    </header>
  )
}

function HandOver() {
  const { view } = useSession()
  const showsSheet = useView((state) => state.showsSheet)
  return (
    <button
      type="button"
      className="action"
      aria-pressed={showsSheet}
      onClick={() => view.setState({ showsSheet: !showsSheet, tool: 'select' })}
    >
      {showsSheet ? 'Back to the plan' : 'Hand over'}
    </button>
  )
}
