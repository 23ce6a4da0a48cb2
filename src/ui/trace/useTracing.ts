import { useMemo } from 'react'
import type { Frame } from '#drawing/frame.ts'
import type { Mark } from '#drawing/model.ts'
import type { Point } from '#geometry/polygon.ts'
import type { Project, Underlay } from '#project/project.ts'
import { newProjectOf } from '#ui/canvas/drawStore.ts'
import type { Gestures } from '#ui/canvas/pointer.ts'
import { useCalibrate } from '#ui/canvas/useCalibrate.ts'
import { useShownProject, useView } from '#ui/session.ts'
import { useDraw, useTrace } from '#ui/shell.ts'
import { pictureCorners } from '#ui/trace/placement.ts'
import { useTurnPicture } from '#ui/trace/useTurnPicture.ts'

export interface Tracing {
  /** What the plan's pointer does: calibrates, turns a picture, or what the other tool does. */
  readonly gestures: Gestures
  readonly isCalibrating: boolean
  /** What a press will do while calibrating; null: another tool says it. */
  readonly hint: string | null
  /** Pictures under the plan. */
  readonly underlays: readonly Underlay[]
}

/** Pictures under the plan, and the hand's dealings with them; everything else goes to the tool in use. */
export function useTracing(frame: Frame, others: Gestures): Tracing {
  const isCalibrating = useView((view) => view.tool === 'calibrate')
  const { underlays } = useShownProject()
  // A room that begins a project of its own is drawn on empty paper: these pictures belong to the one before.
  const isNew = useDraw((draw) => newProjectOf(draw) !== null) && !isCalibrating
  const calibration = useCalibrate(frame)
  const turning = useTurnPicture(frame, others)
  return {
    gestures: isCalibrating ? calibration.gestures : turning,
    isCalibrating,
    hint: isCalibrating ? calibration.hint : null,
    underlays: isNew ? NO_UNDERLAYS : underlays,
  }
}

const NO_UNDERLAYS: readonly Underlay[] = []
const NO_POINTS: readonly Point[] = []

/** The corners of the pictures shown, for the view to be fitted to while they are worked with. */
export function useTracedPoints({ underlays }: Project): readonly Point[] {
  const isOpen = useTrace((state) => state.isOpen)
  return useMemo(() => {
    const shown = isOpen ? underlays.filter(({ isShown }) => isShown) : NO_UNDERLAYS
    return shown.length === 0 ? NO_POINTS : shown.flatMap(pictureCorners)
  }, [underlays, isOpen])
}

/** The plan's marks as they are traced over a picture: floors and strips lose their ground, lines and hatches stay. */
export function useSeeThrough(marks: readonly Mark[], underlays: readonly Underlay[]): readonly Mark[] {
  const isOver = underlays.some(({ isShown }) => isShown)
  return useMemo(() => (isOver ? marks.map(withoutGround) : marks), [marks, isOver])
}

function withoutGround(mark: Mark): Mark {
  const isGround = mark.kind === 'polygon' && (mark.role === 'clear' || mark.role === 'strip')
  return isGround ? { ...mark, fill: null } : mark
}
