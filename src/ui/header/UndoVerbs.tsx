import { useDocument, useSession, useView } from '#ui/session.ts'
import { useDraw, useShell } from '#ui/shell.ts'

/** Undo and redo, each naming what it takes back or does again; while an outline is drawn, its last corner. */
export function UndoVerbs() {
  const { document } = useSession()
  const { draw } = useShell()
  const isDrawing = useView((view) => view.tool === 'draw')
  const hasCorner = useDraw((state) => state.points.length > 0)
  const done = useDocument((state) => state.past.at(-1)?.label)
  const undone = useDocument((state) => state.future.at(-1)?.label)
  const corner = hasCorner ? 'corner' : undefined
  const undo = isDrawing ? corner : done
  const redo = isDrawing ? undefined : undone
  return (
    <fieldset className="verbs undo-verbs">
      <legend className="visually-hidden">Steps</legend>
      <button
        type="button"
        className="verb"
        disabled={undo === undefined}
        onClick={isDrawing ? draw.takeBack : document.undo}
        title={undo}
      >
        {undo === undefined ? 'Undo' : `Undo: ${undo}`}
      </button>
      <button type="button" className="verb" disabled={redo === undefined} onClick={document.redo} title={redo}>
        {redo === undefined ? 'Redo' : `Redo: ${redo}`}
      </button>
    </fieldset>
  )
}
