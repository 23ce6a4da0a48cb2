import { createStore } from 'zustand/vanilla'
import type { Point } from '#geometry/polygon.ts'
import type { Project } from '#project/project.ts'

/** An outline being drawn, corner by corner; not part of the document until it is closed. */
export interface DrawState {
  readonly points: readonly Point[]
  /** The project the outline is drawn for, where it starts one of its own; null: it replaces the open room's outline. */
  readonly newProject: Project | null
  /** Why the outline could not be closed; the points stay for mending. */
  readonly refusal: string | null
}

const NOTHING: DrawState = { points: [], newProject: null, refusal: null }

export function createDrawStore() {
  const store = createStore<DrawState>(() => NOTHING)
  return {
    store,
    begin: (newProject: Project | null) => store.setState({ ...NOTHING, newProject }),
    add: (point: Point) => store.setState((state) => ({ points: [...state.points, point], refusal: null })),
    takeBack: () => store.setState((state) => ({ points: state.points.slice(0, -1), refusal: null })),
    refuse: (refusal: string) => store.setState({ refusal }),
    clear: () => store.setState(NOTHING),
  }
}

export type DrawStore = ReturnType<typeof createDrawStore>
