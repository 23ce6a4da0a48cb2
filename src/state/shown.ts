import { createStore, type StoreApi } from 'zustand/vanilla'
import type { Project } from '#project/project.ts'
import type { DocumentState } from '#state/history.ts'

/** The project as a part of the page shows it: what the hand is trying, else what is recorded. */
export interface Shown {
  readonly project: Project
}

/** Follows the document at every step. */
export function followClosely(document: StoreApi<DocumentState>): StoreApi<Shown> {
  const store = createStore<Shown>(() => ({ project: shownBy(document.getState()) }))
  document.subscribe((state) => store.setState({ project: shownBy(state) }))
  return store
}

/** From this many walls and openings on, numbers and tables rest while a hand moves. */
const MANY = 100
/** They follow once the hand rests this long, ms. */
const PAUSE_MS = 100

/**
 * The same for numbers and tables. In a plan of very many walls they wait until the hand rests, so that the drawing under
 * it is never late; whatever is recorded they show at once.
 */
export function followAtEase(document: StoreApi<DocumentState>): StoreApi<Shown> {
  const store = createStore<Shown>(() => ({ project: shownBy(document.getState()) }))
  let timer: ReturnType<typeof setTimeout> | null = null
  const show = () => {
    timer = null
    store.setState({ project: shownBy(document.getState()) })
  }
  document.subscribe((state) => {
    if (timer !== null) clearTimeout(timer)
    if (state.preview !== null && isLarge(state.preview)) timer = setTimeout(show, PAUSE_MS)
    else show()
  })
  return store
}

function shownBy({ preview, project }: DocumentState): Project {
  return preview ?? project
}

function isLarge({ rooms }: Project): boolean {
  return rooms.reduce((sum, { walls, openings }) => sum + walls.length + openings.length, 0) > MANY
}
