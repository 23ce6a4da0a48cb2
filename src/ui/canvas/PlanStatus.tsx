import { useStore } from 'zustand'
import { useDocument, useRoom, useSession, useView } from '#ui/session.ts'
import { type Notice, useDraw, useShell, useShellState } from '#ui/shell.ts'
import { CAUTION_LINE, selectionSpoken } from '#ui/words.ts'

interface Props {
  /** What a press will do. */
  readonly hint: string
}

/** Under the plan: what a press will do, or why something was refused; it never covers the drawing. */
export function PlanStatus({ hint }: Props) {
  const told = useTold()
  return (
    <div className="plan-foot">
      <div role="alert" className="plan-alert">
        {told && <Told {...told} />}
      </div>
      <p id="plan-status" className={told ? 'plan-hint visually-hidden' : 'plan-hint'}>
        {hint}
      </p>
      <p className="plan-caution">{CAUTION_LINE}</p>
      <SpokenSelection />
    </div>
  )
}

interface ToldProps {
  readonly notice: Notice
  /** Absent: it stands until its cause is gone. */
  readonly dismiss?: () => void
}

/** The sentence that matters most now, and what lets it go. */
function useTold(): ToldProps | null {
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

/** Read aloud when the selection changes; the pointer's own sentence is not, it would never stop. */
function SpokenSelection() {
  const { document } = useSession()
  const room = useRoom()
  const units = useStore(document.store, (state) => state.project.units)
  const surfaceIds = useView((view) => view.surfaceIds)
  const cornerId = useView((view) => view.cornerId)
  return (
    <p role="status" className="visually-hidden">
      {selectionSpoken(room, surfaceIds, cornerId, units)}
    </p>
  )
}
