import { createContext, useContext } from 'react'
import { useStore } from 'zustand'
import { createStore } from 'zustand/vanilla'
import type { Autosave } from '#state/autosave.ts'
import type { PictureStore } from '#state/pictures.ts'
import { createDrawStore, type DrawState, type DrawStore } from '#ui/canvas/drawStore.ts'
import type { Theme } from '#ui/theme.ts'
import { createTraceStore, type TraceState, type TraceStore } from '#ui/trace/traceStore.ts'
import { invariant } from '#units/result.ts'

/** What opens downward under the header, one at a time. */
export type Drawer = 'new-room' | 'samples' | 'scheme' | 'keys' | 'materials'

/** A sentence that is not a refused command: a file that could not be opened, what was put right in one. */
export interface Notice {
  readonly kind: 'refused' | 'told'
  readonly text: string
  /** One line each, such as the problems of a file. */
  readonly details: readonly string[]
}

export interface ShellState {
  readonly drawer: Drawer | null
  readonly notice: Notice | null
  /** On a narrow screen: the project's verbs are unfolded. */
  readonly showsProjectVerbs: boolean
  /** The plan shows everything again when this number grows. */
  readonly fitRequests: number
}

/** What the page's frame works on besides the session: nothing here is saved or undone. */
export interface Shell {
  readonly state: ReturnType<typeof createShellStore>
  readonly theme: Theme
  readonly autosave: Autosave
  readonly draw: DrawStore
  /** Pictures to trace, beside the documents that name them. */
  readonly pictures: PictureStore
  readonly trace: TraceStore
}

export function createShellStore() {
  return createStore<ShellState>(() => ({ drawer: null, notice: null, showsProjectVerbs: false, fitRequests: 0 }))
}

export function createShell(theme: Theme, autosave: Autosave, pictures: PictureStore): Shell {
  return { state: createShellStore(), theme, autosave, draw: createDrawStore(), pictures, trace: createTraceStore() }
}

export const ShellContext = createContext<Shell | null>(null)

export function useShell(): Shell {
  const shell = useContext(ShellContext)
  invariant(shell, 'every part of the page stands inside the shell')
  return shell
}

export function useShellState<Part>(select: (state: ShellState) => Part): Part {
  return useStore(useShell().state, select)
}

export function useDraw<Part>(select: (state: DrawState) => Part): Part {
  return useStore(useShell().draw.store, select)
}

export function useTrace<Part>(select: (state: TraceState) => Part): Part {
  return useStore(useShell().trace.store, select)
}

/** Asks the plan to show everything again. */
export function requestFit(shell: Shell): void {
  shell.state.setState((state) => ({ fitRequests: state.fitRequests + 1 }))
}
