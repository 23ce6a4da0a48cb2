import { createStore } from 'zustand/vanilla'
import type { Point } from '#geometry/polygon.ts'

/** A point being set: either of its two plan coordinates may still be missing, mm. */
export type LoosePoint = readonly [x: number | null, y: number | null]

/** Two points on a picture, and what the tape says between them; not part of the document until it is carried out. */
export interface Calibrating {
  readonly underlayId: string
  readonly points: readonly [LoosePoint, LoosePoint]
  readonly distance: string
  /** Turn the picture so that the two points lie level or plumb. */
  readonly squares: boolean
  /** Why it could not be carried out; what was pressed and typed stays. */
  readonly refusal: string | null
}

/** A PDF that waits to be told which page. */
export interface WaitingPdf {
  readonly file: File
  readonly pages: number
  /** Loaded again into this place; null: a new underlay. */
  readonly replaces: string | null
}

export interface TraceState {
  readonly isOpen: boolean
  /** What is being read; null: nothing. */
  readonly busy: string | null
  readonly pdf: WaitingPdf | null
  readonly calibrating: Calibrating | null
}

const NO_POINT: LoosePoint = [null, null]

/** The tracing panel: nothing in it is saved or undone. */
export function createTraceStore() {
  const store = createStore<TraceState>(() => ({ isOpen: false, busy: null, pdf: null, calibrating: null }))
  const change = (patch: Partial<Calibrating>) =>
    store.setState(({ calibrating }) => ({
      calibrating: calibrating && { ...calibrating, refusal: null, ...patch },
    }))
  const setPoint = (index: 0 | 1, point: LoosePoint) => {
    const points = store.getState().calibrating?.points
    if (points) change({ points: index === 0 ? [point, points[1]] : [points[0], point] })
  }
  return {
    store,
    change,
    setPoint,
    begin: (underlayId: string) =>
      store.setState({
        calibrating: { underlayId, points: [NO_POINT, NO_POINT], distance: '', squares: false, refusal: null },
      }),
    startAgain: () => change({ points: [NO_POINT, NO_POINT] }),
    end: () => store.setState({ calibrating: null }),
  }
}

export type TraceStore = ReturnType<typeof createTraceStore>

/** A point whose both coordinates are there. */
export function wholePoint([x, y]: LoosePoint): Point | null {
  return x === null || y === null ? null : [x, y]
}
