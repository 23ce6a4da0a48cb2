import { drawOutline } from '#state/commands/outline.ts'
import { standingCorners } from '#ui/canvas/drawStart.ts'
import type { DrawTarget } from '#ui/canvas/drawStore.ts'
import { replacingWords } from '#ui/canvas/replacedWords.ts'
import { ChoiceField } from '#ui/fields/ChoiceField.tsx'
import { useDocument, useRoom } from '#ui/session.ts'
import { useDraw, useShell } from '#ui/shell.ts'

/** What the outline becomes in a project that has a room: that room drawn anew, or a further one; nothing to ask in a new project. */
export function DrawTargetChoice() {
  const { draw } = useShell()
  const room = useRoom()
  const target = useDraw((state) => state.target)
  const isBegun = useDraw((state) => state.points.length > 0)
  const says = useTargetWords(target)
  if (target.kind === 'new-project') return null
  return (
    <div className="draw-target" data-begun={isBegun}>
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
      {target.kind === 'another-room' && <FirstCorner />}
      <p className="quiet">{says}</p>
    </div>
  )
}

/** The first corner on one of a room that stands, without a pointer; gone once a wall is drawn. */
function FirstCorner() {
  const { draw } = useShell()
  const rooms = useDocument((state) => state.project.rooms)
  const points = useDraw((state) => state.points)
  if (points.length > 1) return null
  const corners = standingCorners(rooms)
  const [first] = points
  const chosen = corners.find(({ at: [x, y] }) => first?.[0] === x && first[1] === y)
  const beside = { value: BESIDE, text: 'First corner: beside the others' }
  return (
    <ChoiceField
      label="First corner"
      name="draw-first-corner"
      quiet
      value={chosen?.id ?? BESIDE}
      options={[beside, ...corners.map(({ id, name }) => ({ value: id, text: `First corner: ${name}` }))]}
      onChoose={(id) => draw.startAt(corners.find((corner) => corner.id === id)?.at ?? null)}
    />
  )
}

const BESIDE = 'beside'

/** Told from the step itself: the room's own outline drawn over it shows what would be gone. */
function useTargetWords(target: DrawTarget): string {
  const project = useDocument((state) => state.project)
  if (target.kind !== 'replace') return 'It is drawn beside the others; corners and walls of theirs hold the pointer.'
  const room = project.rooms.find(({ id }) => id === target.roomId)
  if (!room) return ''
  const again = room.corners.map(({ xMm, yMm }) => [xMm, yMm] as const)
  const outcome = drawOutline(room.id, again).apply(project)
  const after = outcome.ok ? outcome.value.rooms.find(({ id }) => id === room.id) : undefined
  return after ? replacingWords(room, after, project.schemes) : ''
}
