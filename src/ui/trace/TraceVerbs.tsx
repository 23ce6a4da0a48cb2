import { leaveCalibrating } from '#ui/canvas/useCalibrate.ts'
import { useSession } from '#ui/session.ts'
import { useShell, useTrace } from '#ui/shell.ts'

/** Opens and shuts the tracing panel: pictures under the plan. */
export function TraceVerbs() {
  const session = useSession()
  const shell = useShell()
  const isOpen = useTrace((state) => state.isOpen)
  const toggle = () => {
    if (isOpen) leaveCalibrating(session, shell)
    shell.trace.store.setState({ isOpen: !isOpen, pdf: null })
  }
  return (
    <button type="button" className="verb" aria-expanded={isOpen} onClick={toggle}>
      Trace
    </button>
  )
}
