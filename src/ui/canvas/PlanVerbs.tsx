import { deleteCorner, insertCorner } from '#state/commands/outline.ts'
import type { OutlineDrawing } from '#ui/canvas/useOutlineDrawing.ts'
import type { PlanFrame } from '#ui/canvas/usePlanFrame.ts'
import { useRoom, useSession, useView } from '#ui/session.ts'
import { TraceVerbs } from '#ui/trace/TraceVerbs.tsx'
import { wallLength } from '#ui/words.ts'

interface Props {
  readonly outline: OutlineDrawing
  readonly view: PlanFrame
}

/** What can be done on the plan, written out; at the far end the two surfaces that no wall line stands for. */
export function PlanVerbs({ outline, view }: Props) {
  const tool = useView((state) => state.tool)
  return (
    <div className="plan-verbs">
      <fieldset className="verbs">
        <legend className="visually-hidden">On the plan</legend>
        <button type="button" className="verb" aria-pressed={tool === 'select'} onClick={outline.leave}>
          Select
        </button>
        <button type="button" className="verb" aria-pressed={tool === 'draw'} onClick={outline.begin}>
          Draw room
        </button>
        <TraceVerbs />
        {tool === 'select' && <CornerVerbs />}
      </fieldset>
      <fieldset className="verbs">
        <legend className="visually-hidden">Surfaces without a line on the plan</legend>
        <FlatSurface which="ceiling" label="Ceiling" />
        <FlatSurface which="floor" label="Floor" />
        <button type="button" className="verb" onClick={view.fit}>
          Fit
        </button>
      </fieldset>
    </div>
  )
}

/** What can be done with the selected wall or corner. */
function CornerVerbs() {
  const { document } = useSession()
  const room = useRoom()
  const cornerId = useView((view) => view.cornerId)
  const surfaceIds = useView((view) => view.surfaceIds)
  const [wallId] = surfaceIds
  const length = wallId === undefined || surfaceIds.length > 1 ? null : wallLength(room, wallId)
  if (cornerId !== null) {
    return (
      <button type="button" className="verb" onClick={() => document.run(deleteCorner(room.id, cornerId))}>
        Delete corner
      </button>
    )
  }
  if (wallId === undefined || length === null) return null
  return (
    <button type="button" className="verb" onClick={() => document.run(insertCorner(room.id, wallId, length / 2))}>
      Insert corner
    </button>
  )
}

function FlatSurface({ which, label }: { readonly which: 'ceiling' | 'floor'; readonly label: string }) {
  const { view } = useSession()
  const room = useRoom()
  const surfaceIds = useView((state) => state.surfaceIds)
  const { id } = room[which]
  const choose = (adds: boolean) => {
    const others = adds ? surfaceIds.filter((other) => other !== id) : []
    const takesOut = surfaceIds.includes(id) && (adds || surfaceIds.length === 1)
    view.setState({ surfaceIds: takesOut ? others : [...others, id], cornerId: null, tool: 'select' })
  }
  return (
    <button
      type="button"
      className="verb"
      aria-pressed={surfaceIds.includes(id)}
      onClick={(event) => choose(event.shiftKey || event.ctrlKey || event.metaKey)}
    >
      {label}
    </button>
  )
}
