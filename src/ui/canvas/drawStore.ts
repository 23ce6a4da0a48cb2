import { createStore } from 'zustand/vanilla'
import type { Point } from '#geometry/polygon.ts'
import type { Project } from '#project/project.ts'
import type { ClosingWay } from '#ui/canvas/closing.ts'

/** What an outline becomes when it is closed. */
export type DrawTarget =
  | { readonly kind: 'new-project'; readonly project: Project }
  | { readonly kind: 'replace'; readonly roomId: string }
  | { readonly kind: 'another-room' }

/** An outline being drawn, corner by corner; not part of the document until it is closed, kept when it is left. */
export interface DrawState {
  readonly points: readonly Point[]
  readonly target: DrawTarget
  /** The last wall nearly came back to the first corner, and the user is asked how to close; null: not asked. */
  readonly closing: ClosingWay | null
  /** Why the outline could not be closed; the points stay for mending. */
  readonly refusal: string | null
}

const NOTHING: DrawState = { points: [], target: { kind: 'another-room' }, closing: null, refusal: null }

export function createDrawStore() {
  const store = createStore<DrawState>(() => NOTHING)
  return {
    store,
    begin: (target: DrawTarget) => store.setState({ ...NOTHING, target }),
    aim: (target: DrawTarget) => store.setState({ target, refusal: null }),
    /** Where the first corner stands, chosen before any wall; null: left open. */
    startAt: (point: Point | null) => store.setState({ points: point ? [point] : [], closing: null, refusal: null }),
    add: (point: Point) =>
      store.setState((state) => ({ points: [...state.points, point], closing: null, refusal: null })),
    /** One step back: from the question how to close to the corners, else by a corner. */
    takeBack: () =>
      store.setState((state) => ({
        points: state.closing === null ? state.points.slice(0, -1) : state.points,
        closing: null,
        refusal: null,
      })),
    /** Asks how to close, with this way shown; null goes back to the corners. */
    askToClose: (closing: ClosingWay | null) => store.setState({ closing, refusal: null }),
    refuse: (refusal: string) => store.setState({ refusal }),
    clear: () => store.setState(NOTHING),
  }
}

export type DrawStore = ReturnType<typeof createDrawStore>

/** The project an outline is drawn for, where it starts one of its own. */
export function newProjectOf({ target }: Pick<DrawState, 'target'>): Project | null {
  return target.kind === 'new-project' ? target.project : null
}
