import { useEffect, useMemo } from 'react'
import { followAtEase } from '#state/shown.ts'
import { PlanView } from '#ui/canvas/PlanView.tsx'
import { ErrorScreen } from '#ui/dialogs/ErrorScreen.tsx'
import { ToldPlace, useTold } from '#ui/dialogs/ToldPlace.tsx'
import { saveFile } from '#ui/files.ts'
import { Header } from '#ui/header/Header.tsx'
import { Bench } from '#ui/panels/Bench.tsx'
import { Ledger } from '#ui/panels/Ledger.tsx'
import { SheetView } from '#ui/panels/SheetView.tsx'
import { type Session, SessionContext, useDocument, useSession, useView } from '#ui/session.ts'
import { type Shell, ShellContext } from '#ui/shell.ts'
import { useFileDrop } from '#ui/useFileDrop.ts'
import { usePageKeys } from '#ui/usePageKeys.ts'
import { useUnloadGuard } from '#ui/useUnloadGuard.ts'
import { CAUTION_LINE } from '#ui/words.ts'

interface Props {
  readonly session: Session
  readonly shell: Shell
}

/** One page, four places. */
export function App({ session, shell }: Props) {
  return (
    <ErrorScreen download={() => void saveFile(session, shell)}>
      <SessionContext value={session}>
        <ShellContext value={shell}>
          <Page />
        </ShellContext>
      </SessionContext>
    </ErrorScreen>
  )
}

function Page() {
  const session = useSession()
  const atEase = useMemo(() => ({ ...session, shown: followAtEase(session.document.store) }), [session])
  const showsSheet = useView((view) => view.showsSheet)
  const isDropping = useFileDrop()
  usePageKeys()
  useUnloadGuard()
  usePageTitle()
  return (
    <div className="page" data-shows={showsSheet ? 'sheet' : 'plan'} data-dropping={isDropping}>
      <Header />
      <div className="place-plan">{showsSheet ? <SheetPlace /> : <PlanView />}</div>
      <SessionContext value={atEase}>
        <div className="place-ledger">
          <Ledger />
        </div>
        {!showsSheet && (
          <div className="place-bench">
            <Bench />
          </div>
        )}
      </SessionContext>
      <footer className="page-caution quiet">{CAUTION_LINE}</footer>
    </div>
  )
}

function SheetPlace() {
  const told = useTold()
  return (
    <main className="sheet-place">
      <div className="sheet-scroll">
        <SheetView />
      </div>
      <ToldPlace told={told} />
    </main>
  )
}

function usePageTitle(): void {
  const name = useDocument((state) => state.project.name)
  useEffect(() => {
    document.title = `${name} · Leafgap`
  }, [name])
}
