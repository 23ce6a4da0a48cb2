import { createStore, type StoreApi } from 'zustand/vanilla'
import type { Project } from '#project/project.ts'
import type { Command, Refusal } from '#state/command.ts'
import { fail, ok, type Result } from '#units/result.ts'

interface Step {
  readonly label: string
  readonly project: Project
}

/** The open document with its past and future. Selection, zoom and tools live in view.ts, never here. */
export interface DocumentState {
  readonly project: Project
  /** What the page shows while a hand still drags; null when nothing is being tried. */
  readonly preview: Project | null
  readonly past: readonly Step[]
  readonly future: readonly Step[]
  /** How many projects were opened: a new one must never be kept in place of the one before it. */
  readonly opened: number
  /** Why the last command was refused; null after any that was not. */
  readonly refusal: Refusal | null
}

/** More steps than a day's work; the oldest fall off. */
const LONGEST_HISTORY = 500

/** The open document: every change is a named command, and a command is one undo step. */
export interface DocumentStore {
  readonly store: StoreApi<DocumentState>
  /** Tries a command without recording it; a refusal leaves the last good preview standing. */
  show(command: Command): Result<Project, Refusal>
  cancelPreview(): void
  /** Carries a command out on the recorded document and records one undo step. */
  run(command: Command): Result<Project, Refusal>
  undo(): void
  redo(): void
  /** Replaces the whole document; one undo step brings the former one back. */
  open(project: Project, label: string): void
  dismissRefusal(): void
}

export function createDocumentStore(first: Project): DocumentStore {
  const store = createStore<DocumentState>(() => ({
    project: first,
    preview: null,
    past: [],
    future: [],
    opened: 0,
    refusal: null,
  }))
  return {
    store,
    show: (command) => show(store, command),
    cancelPreview: () => store.setState({ preview: null }),
    run: (command) => run(store, command),
    undo: () => undo(store),
    redo: () => redo(store),
    open: (project, label) => {
      store.setState((state) => ({ opened: state.opened + 1 }))
      record(store, label, project)
    },
    dismissRefusal: () => store.setState({ refusal: null }),
  }
}

function show(store: StoreApi<DocumentState>, command: Command): Result<Project, Refusal> {
  const outcome = command.apply(store.getState().project)
  if (!outcome.ok) return fail(outcome.error)
  store.setState({ preview: outcome.value })
  return ok(outcome.value)
}

function run(store: StoreApi<DocumentState>, command: Command): Result<Project, Refusal> {
  const { project } = store.getState()
  const outcome = command.apply(project)
  if (!outcome.ok) {
    store.setState({ preview: null, refusal: outcome.error })
    return outcome
  }
  if (outcome.value === project) store.setState({ preview: null, refusal: null })
  else record(store, command.label, outcome.value)
  return outcome
}

function record(store: StoreApi<DocumentState>, label: string, project: Project): void {
  store.setState((state) => ({
    project,
    preview: null,
    refusal: null,
    past: [...state.past, { label, project: state.project }].slice(-LONGEST_HISTORY),
    future: [],
  }))
}

function undo(store: StoreApi<DocumentState>): void {
  store.setState((state) => {
    const step = state.past.at(-1)
    if (!step) return { preview: null }
    return {
      project: step.project,
      preview: null,
      refusal: null,
      past: state.past.slice(0, -1),
      future: [...state.future, { label: step.label, project: state.project }],
    }
  })
}

function redo(store: StoreApi<DocumentState>): void {
  store.setState((state) => {
    const step = state.future.at(-1)
    if (!step) return { preview: null }
    return {
      project: step.project,
      preview: null,
      refusal: null,
      past: [...state.past, { label: step.label, project: state.project }],
      future: state.future.slice(0, -1),
    }
  })
}
