import type { Adding } from '#state/view.ts'
import type { Session } from '#ui/session.ts'

/** Takes a new thing into the hand; the selected wall stays selected, it may be the one meant. null: lets it go. */
export function takeUpAdding({ document, view }: Session, adding: Adding | null): void {
  document.cancelPreview()
  view.setState({ tool: adding ? 'add' : 'select', adding, cornerId: null, thing: null, showsSheet: false })
}

/** Takes the line that cuts the room into the hand, or lets it go. */
export function takeUpCut({ document, view }: Session, takes: boolean): void {
  document.cancelPreview()
  view.setState({ tool: takes ? 'cut' : 'select', adding: null, cornerId: null, thing: null, showsSheet: false })
}

/** Lets go of a new thing or a cut that is not made; true when there was one. */
export function leaveAdding(session: Session): boolean {
  const { tool } = session.view.getState()
  if (tool !== 'add' && tool !== 'cut') return false
  takeUpAdding(session, null)
  return true
}
