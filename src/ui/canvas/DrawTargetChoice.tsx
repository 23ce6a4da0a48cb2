import { drawOutline } from '#state/commands/outline.ts'
import type { DrawTarget } from '#ui/canvas/drawStore.ts'
import { replacingWords } from '#ui/canvas/replacedWords.ts'
import { useDocument, useRoom } from '#ui/session.ts'
import { useDraw, useShell } from '#ui/shell.ts'

/** What the outline becomes in a project that has a room: that room drawn anew, or a further one; nothing to ask in a new project. */
export function DrawTargetChoice() {
  const { draw } = useShell()
  const room = useRoom()
  const target = useDraw((state) => state.target)
  const says = useTargetWords(target)
  if (target.kind === 'new-project') return null
  return (
    <div className="draw-target">
      <fieldset className="verbs">
        <legend className="visually-hidden">The outline becomes</legend>
        <button
          type="button"
          className="verb"
          aria-pressed={target.kind === 'replace'}
          onClick={() => draw.aim({ kind: 'replace', roomId: room.id })}
        >
          This room anew
        </button>
        <button
          type="button"
          className="verb"
          aria-pressed={target.kind === 'another-room'}
          onClick={() => draw.aim({ kind: 'another-room' })}
        >
          A further room
        </button>
      </fieldset>
      <p className="quiet">{says}</p>
    </div>
  )
}

/** Told from the step itself: the room's own outline drawn over it shows what would be gone. */
function useTargetWords(target: DrawTarget): string {
  const project = useDocument((state) => state.project)
  if (target.kind !== 'replace') return 'It stands beside the others; press a corner of theirs to share it.'
  const room = project.rooms.find(({ id }) => id === target.roomId)
  if (!room) return ''
  const again = room.corners.map(({ xMm, yMm }) => [xMm, yMm] as const)
  const outcome = drawOutline(room.id, again).apply(project)
  const after = outcome.ok ? outcome.value.rooms.find(({ id }) => id === room.id) : undefined
  return after ? replacingWords(room, after, project.schemes) : ''
}
