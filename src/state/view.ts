import { createStore } from 'zustand/vanilla'

/** What the pointer does on the plan. */
export type Tool = 'select' | 'draw'

/** What the page looks at: never saved, never undone. */
export interface ViewState {
  readonly roomId: string
  readonly schemeId: string
  /** Selected walls, ceiling or floor, by id; several while a key is held. */
  readonly surfaceIds: readonly string[]
  readonly cornerId: string | null
  readonly tool: Tool
  /** Assembly pointed at in the bench: previewed, not chosen. */
  readonly pointedAssembly: string | null
  readonly showsSheet: boolean
}

export function createViewStore(first: Pick<ViewState, 'roomId' | 'schemeId'>) {
  return createStore<ViewState>(() => ({
    ...first,
    surfaceIds: [],
    cornerId: null,
    tool: 'select',
    pointedAssembly: null,
    showsSheet: false,
  }))
}
