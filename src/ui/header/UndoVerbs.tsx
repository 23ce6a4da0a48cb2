import { useDocument, useSession } from '#ui/session.ts'

/** Undo and redo, each naming what it takes back or does again. */
export function UndoVerbs() {
  const { document } = useSession()
  const undo = useDocument((state) => state.past.at(-1)?.label)
  const redo = useDocument((state) => state.future.at(-1)?.label)
  return (
    <fieldset className="verbs undo-verbs">
      <legend className="visually-hidden">Steps</legend>
      <button type="button" className="verb" disabled={undo === undefined} onClick={document.undo} title={undo}>
        {undo === undefined ? 'Undo' : `Undo: ${undo}`}
      </button>
      <button type="button" className="verb" disabled={redo === undefined} onClick={document.redo} title={redo}>
        {redo === undefined ? 'Redo' : `Redo: ${redo}`}
      </button>
    </fieldset>
  )
}
