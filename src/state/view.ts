import { createStore } from 'zustand/vanilla'
import type { AssemblyDraft, Building } from '#state/draft.ts'

/** What the pointer does on the plan. */
export type Tool = 'select' | 'draw'

/** What the bench shows of the selected surfaces. */
export type BenchView = 'choose' | 'section' | 'curve' | 'inside' | 'build' | 'stands'

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
  readonly benchView: BenchView
  /** The assembly being built in the bench; it waits there whatever else is looked at. */
  readonly building: Building | null
  /** Asked for while another is not saved yet: begun once that is settled. */
  readonly wantedDraft: AssemblyDraft | null
}

export function createViewStore(first: Pick<ViewState, 'roomId' | 'schemeId'>) {
  return createStore<ViewState>(() => ({
    ...first,
    surfaceIds: [],
    cornerId: null,
    tool: 'select',
    pointedAssembly: null,
    showsSheet: false,
    benchView: 'choose',
    building: null,
    wantedDraft: null,
  }))
}
