import { drawOutline } from '#state/commands/outline.ts'
import { replacedWords } from '#ui/canvas/replacedWords.ts'
import { openProject } from '#ui/files.ts'
import { type Session, useRoom, useSession } from '#ui/session.ts'
import { type Notice, requestFit, type Shell, useShell } from '#ui/shell.ts'

export interface OutlineDrawing {
  /** Starts drawing over the open room. */
  begin(): void
  /** Closes the outline; refused with a sentence where it crosses itself or holds nothing, the corners then stay. */
  close(): void
  /** Leaves without a change. */
  leave(): void
}

/** Begins, closes and leaves an outline, whether it replaces the room's own or starts a project. */
export function useOutlineDrawing(): OutlineDrawing {
  const session = useSession()
  const shell = useShell()
  const room = useRoom()
  const leave = () => {
    shell.draw.clear()
    session.view.setState({ tool: 'select' })
    requestFit(shell)
  }
  return {
    leave,
    begin: () => {
      shell.draw.begin(null)
      session.view.setState({ tool: 'draw', surfaceIds: [], cornerId: null, showsSheet: false })
    },
    close: () => {
      const { points, newProject } = shell.draw.store.getState()
      const target = newProject ?? session.document.store.getState().project
      const roomId = newProject?.rooms[0]?.id ?? room.id
      const command = drawOutline(roomId, points)
      const outcome = command.apply(target)
      if (!outcome.ok) {
        shell.draw.refuse(outcome.error.message)
        return
      }
      if (newProject) openProject(session, shell, outcome.value, 'start a new room')
      else {
        session.document.run(command)
        const lost = target.rooms.find(({ id }) => id === roomId)
        tellUntilNextStep(session, shell, lost ? replacedWords(lost, target.schemes) : null)
      }
      leave()
    },
  }
}

/** Says what a step took with it, for as long as it is the last step. */
function tellUntilNextStep(session: Session, shell: Shell, text: string | null): void {
  const { store } = session.document
  const notice: Notice | null = text === null ? null : { kind: 'told', text, details: [] }
  shell.state.setState({ notice })
  if (notice === null) return
  const { project } = store.getState()
  const stop = store.subscribe((state) => {
    if (state.project === project) return
    stop()
    shell.state.setState((shown) => (shown.notice === notice ? { notice: null } : {}))
  })
}
