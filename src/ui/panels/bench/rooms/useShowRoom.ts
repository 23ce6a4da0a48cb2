import { useSession } from '#ui/session.ts'
import { requestFit, useShell } from '#ui/shell.ts'

/** Puts another room on the page; what was selected in the former one is let go. */
export function useShowRoom(): (roomId: string) => void {
  const { view } = useSession()
  const shell = useShell()
  return (roomId) => {
    if (view.getState().roomId === roomId) return
    view.setState({ roomId, surfaceIds: [], cornerId: null, thing: null })
    requestFit(shell)
  }
}
