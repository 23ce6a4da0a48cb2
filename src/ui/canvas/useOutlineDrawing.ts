import type { Room } from '#analysis/room.ts'
import type { Point } from '#geometry/polygon.ts'
import { nearlyCloses } from '#geometry/survey.ts'
import type { Project } from '#project/project.ts'
import type { Command } from '#state/command.ts'
import { drawOutline } from '#state/commands/outline.ts'
import { freeRoomName } from '#state/commands/roomNames.ts'
import { addRoom } from '#state/commands/rooms.ts'
import { closedOutline } from '#ui/canvas/closing.ts'
import type { DrawTarget } from '#ui/canvas/drawStore.ts'
import { keptWords } from '#ui/canvas/drawWords.ts'
import { replacedWords } from '#ui/canvas/replacedWords.ts'
import { openProject } from '#ui/files.ts'
import { type Session, useRoom, useSession } from '#ui/session.ts'
import { type Notice, requestFit, type Shell, useShell } from '#ui/shell.ts'
import { unreachable } from '#units/result.ts'

export interface OutlineDrawing {
  /** Goes on with an outline that was left, or starts one over the open room. */
  begin(): void
  /**
   * Closes the outline, or asks first how to, where its last wall nearly came back to the first corner; refused with a
   * sentence where it crosses itself or holds nothing, the corners then stay.
   */
  close(): void
  /** Leaves without a change; the corners are kept for the next time. */
  leave(): void
}

/** Begins, closes and leaves an outline, whatever becomes of it. */
export function useOutlineDrawing(): OutlineDrawing {
  const session = useSession()
  const shell = useShell()
  const room = useRoom()
  return {
    leave: () => leaveDrawing(session, shell),
    begin: () => {
      const { points, target } = shell.draw.store.getState()
      if (points.length === 0) shell.draw.begin({ kind: 'replace', roomId: room.id })
      else shell.draw.aim(stillThere(target, session, room))
      openDrawing(session, shell)
    },
    close: () => {
      const { points, closing } = shell.draw.store.getState()
      if (closing === null && nearlyCloses(points)) shell.draw.askToClose('spread')
      else finish(session, shell, closedOutline(points, closing))
    },
  }
}

/** Puts the drawing tool in the hand. */
export function openDrawing(session: Session, shell: Shell): void {
  shell.state.setState({ drawer: null, notice: null, showsProjectVerbs: false })
  session.view.setState({ tool: 'draw', surfaceIds: [], cornerId: null, thing: null, showsSheet: false })
}

/** Lets go of the drawing tool; corners that stand are kept, and the page says so. */
export function leaveDrawing(session: Session, shell: Shell): void {
  const wasDrawing = session.view.getState().tool === 'draw'
  const { points } = shell.draw.store.getState()
  session.view.setState({ tool: 'select' })
  if (!wasDrawing) return
  requestFit(shell)
  if (points.length === 0) shell.draw.clear()
  else shell.state.setState({ notice: { kind: 'told', text: keptWords(points.length), details: [] } })
}

/** A drawing that was to replace a room goes on over the open one: the other may be gone by now. */
function stillThere(target: DrawTarget, session: Session, room: Room): DrawTarget {
  if (target.kind !== 'replace') return target
  const { rooms } = session.document.store.getState().project
  return rooms.some(({ id }) => id === target.roomId) ? target : { kind: 'replace', roomId: room.id }
}

function finish(session: Session, shell: Shell, outline: readonly Point[]): void {
  const { target } = shell.draw.store.getState()
  const project = target.kind === 'new-project' ? target.project : session.document.store.getState().project
  const command = commandFor(target, project, outline)
  const outcome = command.apply(project)
  if (!outcome.ok) {
    shell.draw.refuse(outcome.error.message)
    return
  }
  shell.draw.clear()
  leaveDrawing(session, shell)
  if (target.kind === 'new-project') openProject(session, shell, outcome.value, 'start a new room')
  else session.document.run(command)
  if (target.kind === 'another-room') showRoom(session, outcome.value.rooms.at(-1))
  if (target.kind === 'replace') tellReplaced(session, shell, target.roomId, [project, outcome.value])
}

function commandFor(target: DrawTarget, project: Project, outline: readonly Point[]): Command {
  switch (target.kind) {
    case 'new-project':
      return drawOutline(project.rooms[0]?.id ?? '', outline)
    case 'replace':
      return drawOutline(target.roomId, outline)
    case 'another-room':
      return addRoom(freeRoomName(project, 'Room'), outline)
    default:
      return unreachable(target)
  }
}

function showRoom({ view }: Session, room: Room | undefined): void {
  if (room) view.setState({ roomId: room.id })
}

function tellReplaced(
  session: Session,
  shell: Shell,
  roomId: string,
  [before, after]: readonly [Project, Project],
): void {
  const [former, now] = [before, after].map(({ rooms }) => rooms.find(({ id }) => id === roomId))
  tellUntilNextStep(session, shell, former && now ? replacedWords(former, now, before.schemes) : null)
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
