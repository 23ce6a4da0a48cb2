import { useStore } from 'zustand'
import { ToldPlace, useTold } from '#ui/dialogs/ToldPlace.tsx'
import { useRoom, useSession, useView } from '#ui/session.ts'
import { CAUTION_LINE, selectionSpoken } from '#ui/words.ts'

interface Props {
  /** What a press will do. */
  readonly hint: string
  /** The hand is asking for something impossible: said before anything else, on a phone too. */
  readonly warns: boolean
  /** What the shares on the plan are of, read aloud where the plan itself says it; null: there are none. */
  readonly shares: { readonly text: string; readonly isDrawn: boolean } | null
}

/** Under the plan: what a press will do, or why something was refused; it never covers the drawing. */
export function PlanStatus({ hint, warns, shares }: Props) {
  const told = useTold()
  return (
    <div className="plan-foot">
      <ToldPlace told={warns ? null : told} />
      <p id="plan-status" className={told && !warns ? 'plan-hint visually-hidden' : 'plan-hint'} data-warns={warns}>
        {warns && <span className="warn-sign" aria-hidden="true" />}
        {hint}
      </p>
      {shares && <p className={shares.isDrawn ? 'visually-hidden' : 'plan-shares'}>{shares.text}</p>}
      <p className="plan-caution">{CAUTION_LINE}</p>
      <SpokenSelection />
    </div>
  )
}

/** Read aloud when the selection changes; the pointer's own sentence is not, it would never stop. */
function SpokenSelection() {
  const { document } = useSession()
  const room = useRoom()
  const project = useStore(document.store, (state) => state.project)
  const surfaceIds = useView((view) => view.surfaceIds)
  const cornerId = useView((view) => view.cornerId)
  const thing = useView((view) => view.thing)
  return (
    <p role="status" className="visually-hidden">
      {selectionSpoken(project, room, { surfaceIds, cornerId, thing })}
    </p>
  )
}
