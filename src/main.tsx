import { createRoot } from 'react-dom/client'
import { FONT_FAMILY } from '#drawing/text.ts'
import { App } from '#ui/App.tsx'
import { createShell } from '#ui/shell.ts'
import { startSession } from '#ui/startSession.ts'
import { createThemeStore } from '#ui/theme.ts'
import { invariant } from '#units/result.ts'
import '#ui/theme.css'
import '#ui/layout.css'
import '#ui/header.css'
import '#ui/plan.css'
import '#ui/draw.css'
import '#ui/panels.css'
import '#ui/panels/tables.css'
import '#ui/panels/bench/air/air.css'
import '#ui/panels/bench/openings/made/made.css'
import '#ui/panels/bench/targets/targets.css'
import '#ui/trace.css'
import '#ui/build.css'
import '#ui/how.css'
import '#ui/charts/levels.css'
import '#ui/panels/ledger/ledger.css'
import '#ui/panels/bench/paths/paths.css'
import '#ui/hear/hear.css'

/** The drawing measures its text in the bundled font: it is there before the first line is drawn. */
async function loadFonts(): Promise<void> {
  const weights = ['400', '600'].map((weight) => document.fonts.load(`${weight} 13px "${FONT_FAMILY}"`))
  await Promise.allSettled(weights)
}

async function main(): Promise<void> {
  const host = document.getElementById('page')
  invariant(host, 'index.html has a place for the page')
  const theme = createThemeStore()
  const [started] = await Promise.all([startSession(), loadFonts()])
  const shell = createShell(theme, started.autosave, started.pictures)
  shell.state.setState({ notice: started.notice })
  started.autosave.follow(started.session.document.store)
  window.addEventListener('pagehide', () => void started.autosave.flush())
  document.addEventListener('visibilitychange', () => {
    if (document.visibilityState === 'hidden') void started.autosave.flush()
  })
  createRoot(host).render(<App session={started.session} shell={shell} />)
}

void main()
