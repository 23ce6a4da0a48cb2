import { useEffect } from 'react'
import { leaveAdding } from '#ui/canvas/toolSwitch.ts'
import { leaveDrawing } from '#ui/canvas/useOutlineDrawing.ts'
import { saveFile } from '#ui/files.ts'
import { type Session, useSession } from '#ui/session.ts'
import { type Shell, useShell } from '#ui/shell.ts'
import { runShortcut, type ShortcutHandlers } from '#ui/shortcuts.ts'

/** Keys that work wherever the focus is; a text being typed keeps its own. */
export function usePageKeys(): void {
  const session = useSession()
  const shell = useShell()
  useEffect(() => {
    const ended = new AbortController()
    const { signal } = ended
    const typed = new WeakSet<EventTarget>()
    const handlers = pageHandlers(session, shell)
    const listen = (event: KeyboardEvent) => {
      const { target } = event
      if (!isTextField(target) || event.key === 'Escape') runShortcut(event, ['anywhere'], handlers)
      else if (event.ctrlKey || event.metaKey) {
        // A half-typed text has its own undo; one that was carried out belongs to the document.
        const ownsUndo = typed.has(target) && !isEmptied(target, session)
        runShortcut(event, ['anywhere'], ownsUndo ? { save: handlers.save } : handlers)
      }
    }
    const mark = (event: Event) => {
      if (event.target) typed.add(event.target)
    }
    const clear = (event: Event) => {
      if (event.target) typed.delete(event.target)
    }
    window.addEventListener('keydown', listen, { signal })
    window.addEventListener('input', mark, { signal, capture: true })
    window.addEventListener('change', clear, { signal, capture: true })
    window.addEventListener('focusin', clear, { signal, capture: true })
    return () => ended.abort()
  }, [session, shell])
}

function isTextField(target: EventTarget | null): target is HTMLElement {
  return target instanceof HTMLElement && target.matches('input:not([type=checkbox], [type=radio]), textarea')
}

/** While an outline is drawn, a field its corner was just taken from holds nothing to undo. */
function isEmptied(target: HTMLElement, session: Session): boolean {
  return isDrawing(session) && target instanceof HTMLInputElement && target.value === ''
}

function pageHandlers(session: Session, shell: Shell) {
  return {
    undo: () => (isDrawing(session) ? shell.draw.takeBack() : session.document.undo()),
    redo: () => (isDrawing(session) ? undefined : session.document.redo()),
    save: () => void saveFile(session, shell),
    keys: () => shell.state.setState(({ drawer }) => ({ drawer: drawer === 'keys' ? null : 'keys' })),
    leave: () => leave(session, shell),
  } satisfies ShortcutHandlers
}

/** An outline in hand is not yet part of the document: its steps are its corners. */
function isDrawing(session: Session): boolean {
  return session.view.getState().tool === 'draw'
}

/** One step back: an open drawer, an outline being drawn, the sheet, a corner, a selection. */
function leave(session: Session, shell: Shell): void {
  const view = session.view.getState()
  if (shell.state.getState().drawer !== null) shell.state.setState({ drawer: null })
  else if (isDrawing(session)) leaveDrawing(session, shell)
  else if (leaveAdding(session)) return
  else if (view.showsSheet) session.view.setState({ showsSheet: false })
  else if (view.pointedAssembly !== null) {
    session.view.setState({ pointedAssembly: null })
    session.document.cancelPreview()
  } else if (view.cornerId !== null) session.view.setState({ cornerId: null })
  else session.view.setState({ surfaceIds: [], thing: null })
}
