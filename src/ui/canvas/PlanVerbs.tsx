import { type RefObject, useState } from 'react'
import { deleteCorner, insertCorner } from '#state/commands/outline.ts'
import { AddRow } from '#ui/canvas/AddRow.tsx'
import { takenAway } from '#ui/canvas/planRoom.ts'
import { SharesVerb } from '#ui/canvas/SharesVerb.tsx'
import { NOTHING_SELECTED } from '#ui/canvas/selecting.ts'
import { thingWord } from '#ui/canvas/thingWords.ts'
import { leaveAdding, takeUpAdding } from '#ui/canvas/toolSwitch.ts'
import { useCoarsePointer } from '#ui/canvas/useCoarsePointer.ts'
import type { OutlineDrawing } from '#ui/canvas/useOutlineDrawing.ts'
import type { PlanFrame } from '#ui/canvas/usePlanFrame.ts'
import { usePlanRoom } from '#ui/canvas/usePlanRoom.ts'
import { useSelectedThing } from '#ui/canvas/useSelectedThing.ts'
import { useDocument, useRoom, useSession, useView } from '#ui/session.ts'
import { TraceVerbs } from '#ui/trace/TraceVerbs.tsx'
import { wallLength } from '#ui/words.ts'

interface Props {
  readonly outline: OutlineDrawing
  readonly view: PlanFrame
  readonly host: RefObject<HTMLElement | null>
}

/** What can be done on the plan, written out; at the far end the two surfaces that no wall line stands for. */
export function PlanVerbs({ outline, view, host }: Props) {
  const session = useSession()
  const tool = useView((state) => state.tool)
  const [isUnfolded, setUnfolded] = useState(false)
  const isAdding = tool === 'add' || tool === 'cut'
  // Under a finger the row gives its place back to the plan once a verb is chosen.
  const isTouch = useCoarsePointer()
  const showsRow = (isUnfolded || (isAdding && !isTouch)) && tool !== 'draw'
  const fold = () => {
    setUnfolded(!showsRow)
    if (showsRow) leaveAdding(session)
  }
  const select = () => {
    setUnfolded(false)
    leaveAdding(session)
    outline.leave()
  }
  return (
    <>
      <div className="plan-verbs">
        <fieldset className="verbs">
          <legend className="visually-hidden">On the plan</legend>
          <button type="button" className="verb" aria-pressed={tool === 'select' && !showsRow} onClick={select}>
            Select
          </button>
          <button type="button" className="verb" aria-pressed={tool === 'draw'} onClick={outline.begin}>
            Draw room
          </button>
          <button type="button" className="verb" aria-expanded={showsRow} data-taken={isAdding} onClick={fold}>
            Add
          </button>
          <TraceVerbs />
          {tool === 'select' && <PickedVerbs />}
        </fieldset>
        <fieldset className="verbs">
          <legend className="visually-hidden">Surfaces without a line on the plan, and what it shows</legend>
          <FlatSurface which="ceiling" label="Ceiling" />
          <FlatSurface which="floor" label="Floor" />
          <SharesVerb size={view.size} />
          <button type="button" className="verb" onClick={view.fit}>
            Fit
          </button>
        </fieldset>
      </div>
      {showsRow && <AddRow host={host} onChosen={() => setUnfolded(!isTouch)} />}
    </>
  )
}

/** What can be done with the selected wall, corner or thing. */
function PickedVerbs() {
  const session = useSession()
  const { document } = session
  const project = useDocument((state) => state.project)
  const room = usePlanRoom()
  const cornerId = useView((view) => view.cornerId)
  const surfaceIds = useView((view) => view.surfaceIds)
  const thing = useSelectedThing(project, room)
  const [wallId] = surfaceIds
  const length = wallId === undefined || surfaceIds.length > 1 ? null : wallLength(room, wallId)
  const takeOut = () => {
    if (thing && document.run(takenAway(room, thing)).ok) session.view.setState(NOTHING_SELECTED)
  }
  if (thing !== null) return <Verb label={`Delete ${thingWord(thing)}`} onPress={takeOut} />
  if (cornerId !== null) {
    return <Verb label="Delete corner" onPress={() => document.run(deleteCorner(room.id, cornerId))} />
  }
  if (wallId === undefined || length === null) return null
  return <Verb label="Insert corner" onPress={() => document.run(insertCorner(room.id, wallId, length / 2))} />
}

function Verb({ label, onPress }: { readonly label: string; onPress(): void }) {
  return (
    <button type="button" className="verb picked-verb" onClick={onPress}>
      {label}
    </button>
  )
}

function FlatSurface({ which, label }: { readonly which: 'ceiling' | 'floor'; readonly label: string }) {
  const session = useSession()
  const { view } = session
  const room = useRoom()
  const surfaceIds = useView((state) => state.surfaceIds)
  const { id } = room[which]
  const choose = (adds: boolean) => {
    const others = adds ? surfaceIds.filter((other) => other !== id) : []
    const takesOut = surfaceIds.includes(id) && (adds || surfaceIds.length === 1)
    takeUpAdding(session, null)
    view.setState({ ...NOTHING_SELECTED, surfaceIds: takesOut ? others : [...others, id] })
  }
  return (
    <button
      type="button"
      className="verb flat-verb"
      aria-pressed={surfaceIds.includes(id)}
      onClick={(event) => choose(event.shiftKey || event.ctrlKey || event.metaKey)}
    >
      {label}
    </button>
  )
}
