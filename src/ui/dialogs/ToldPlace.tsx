import { useStore } from 'zustand'
import { useDocument, useSession } from '#ui/session.ts'
import { type Notice, useDraw, useShell, useShellState } from '#ui/shell.ts'

export interface ToldProps {
  readonly notice: Notice
  /** Absent: it stands until its cause is gone. */
  readonly dismiss?: () => void
}

/** The sentence that matters most now, and what lets it go. */
export function useTold(): ToldProps | null {
  const { document } = useSession()
  const shell = useShell()
  const refusal = useDocument((state) => state.refusal)
  const notice = useShellState((state) => state.notice)
  const saved = useStore(shell.autosave.store)
  const drawRefusal = useDraw((state) => state.refusal)
  if (drawRefusal !== null) {
    const text = `${drawRefusal} The corners stay as drawn: take some back, or leave.`
    return { notice: refused(text), dismiss: () => shell.draw.store.setState({ refusal: null }) }
  }
  if (refusal) return { notice: refused(refusal.message), dismiss: () => document.dismissRefusal() }
  if (notice) return { notice, dismiss: () => shell.state.setState({ notice: null }) }
  return saved.kind === 'failed' ? { notice: refused(notSaved(saved.reason)) } : null
}

function notSaved(reason: string): string {
  return `The last change is not kept on this machine: ${reason.replace(/\.$/, '')}. Undo it, or download a copy above.`
}

function refused(text: string): Notice {
  return { kind: 'refused', text, details: [] }
}

function Told({ notice, dismiss }: ToldProps) {
  return (
    <div className="told" data-kind={notice.kind}>
      <p>
        {notice.kind === 'refused' && <span className="warn-sign" aria-hidden="true" />}
        {notice.text}
      </p>
      {notice.details.length > 0 && (
        <ul>
          {notice.details.map((line) => (
            <li key={line}>{line}</li>
          ))}
        </ul>
      )}
      {dismiss && (
        <button type="button" className="verb" onClick={dismiss}>
          Dismiss
        </button>
      )}
    </div>
  )
}

/** Where refusals and notices are read out and shown: always on the page, so that its filling is announced. */
export function ToldPlace({ told }: { readonly told: ToldProps | null }) {
  return (
    <div role="alert" className="told-place">
      {told && <Told {...told} />}
    </div>
  )
}
