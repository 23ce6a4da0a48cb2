import { useMemo, useRef } from 'react'
import { useStrictMode as strictly } from 'react-konva'
import { useStore } from 'zustand'
import type { Room } from '#analysis/room.ts'
import { PALETTES } from '#drawing/palette.ts'
import type { Point } from '#geometry/polygon.ts'
import type { Project } from '#project/project.ts'
import type { Thing } from '#state/view.ts'
import { DrawEntry } from '#ui/canvas/DrawEntry.tsx'
import { newProjectOf } from '#ui/canvas/drawStore.ts'
import { FitOverlay } from '#ui/canvas/FitOverlay.tsx'
import { HandOverlay } from '#ui/canvas/HandOverlay.tsx'
import { handlesOf } from '#ui/canvas/hitThings.ts'
import type { cornerPoints } from '#ui/canvas/nearest.ts'
import { useGridMarks, usePlanMarks } from '#ui/canvas/PlanDrawing.tsx'
import { PlanMenu } from '#ui/canvas/PlanMenu.tsx'
import { PlanStage } from '#ui/canvas/PlanStage.tsx'
import { PlanStatus } from '#ui/canvas/PlanStatus.tsx'
import { PlanVerbs } from '#ui/canvas/PlanVerbs.tsx'
import { type PlanRoom, planRoom } from '#ui/canvas/planRoom.ts'
import type { Touchable } from '#ui/canvas/planTarget.ts'
import { roomReach } from '#ui/canvas/roomReach.ts'
import { useCoarsePointer } from '#ui/canvas/useCoarsePointer.ts'
import { useDrawGestures } from '#ui/canvas/useDrawGestures.ts'
import { useOutlineDrawing } from '#ui/canvas/useOutlineDrawing.ts'
import { usePlanFrame } from '#ui/canvas/usePlanFrame.ts'
import { usePlanKeys } from '#ui/canvas/usePlanKeys.ts'
import { usePlanMenu } from '#ui/canvas/usePlanMenu.ts'
import { usePlanRoom } from '#ui/canvas/usePlanRoom.ts'
import { sharesSaid, usePlanShares } from '#ui/canvas/usePlanShares.ts'
import { useAdding, usePlanTools } from '#ui/canvas/usePlanTools.ts'
import { usePointer } from '#ui/canvas/usePointer.ts'
import { useSelectedThing } from '#ui/canvas/useSelectedThing.ts'
import { useAnalysis, useDocument, useScheme, useShownProject, useView } from '#ui/session.ts'
import { useDraw, useShell, useShellState } from '#ui/shell.ts'
import { TracePanel } from '#ui/trace/TracePanel.tsx'
import { useSeeThrough, useTracedPoints, useTracing } from '#ui/trace/useTracing.ts'
import { drawHint } from '#ui/words.ts'

/** Nodes always follow what React says, also where konva moved them itself. Not a hook, whatever its name. */
strictly(true)

/** The plan: verbs in words, the drawing, and a sentence that says what a press will do. */
export function PlanView() {
  const host = useRef<HTMLDivElement>(null)
  const shell = useShell()
  const palette = PALETTES[useStore(shell.theme.store, (theme) => theme.shown)]
  const { project, room, recorded, result } = useOnPlan()
  const { units } = project
  const tool = useView((view) => view.tool)
  const isDrawing = tool === 'draw'
  const draw = useDraw((state) => state)
  const newProject = newProjectOf(draw)
  const outline = useOutlineDrawing()
  const isTouch = useCoarsePointer()
  const isHeld = useDocument((state) => state.preview !== null)
  // How a survey closes is asked over the plan: what is left of it shows the survey whole, wherever the paper lay before.
  const surveyed = draw.closing === null ? null : draw.points
  const view = usePlanFrame(
    host,
    useFittedPoints(project.rooms, isDrawing && newProject !== null, useTracedPoints(project), surveyed),
    `${useShellState((state) => state.fitRequests)}${surveyed ? ' survey' : ''}`,
    isHeld,
  )
  const { frame, size } = view
  const shares = usePlanShares(room, size)
  const held = useHeld(project, room, frame.scale)
  const base: Touchable = { project, room: recorded, frame, result, marks: NO_MARKS, ...held }
  const adding = useAdding(base, isTouch)
  const selection = useMarked(held.thing, adding?.state.ghost ?? null)
  const shown = useShownProject()
  const picture = { room, frame, size, units }
  const marks = usePlanMarks({ ...picture, others: useOthers(shown, room), result, selection, shares, isHeld })
  const grid = useGridMarks(picture)
  const touchable: Touchable = { ...base, marks }
  const menu = usePlanMenu(host, view, outline)
  const hand = usePlanTools(touchable, room, adding, (target, press) => menu.open(touchable, target, press))
  const drawing = useDrawGestures(frame, newProject?.units ?? units, outline.close)
  const tracing = useTracing(frame, isDrawing ? drawing.gestures : hand.gestures)
  usePointer(host, view, tracing.gestures)
  const seen = useSeeThrough(marks, tracing.underlays)
  const keys = usePlanKeys({
    room: recorded,
    view,
    outline,
    putInMiddle: hand.putInMiddle,
    openMenu: () => menu.openForSelection(touchable),
  })
  const hint = isDrawing ? drawHint(draw, drawing.pointer?.closes ?? false, isTouch) : (tracing.hint ?? hand.hint)
  return (
    <main className="plan" data-tool={tool}>
      <PlanVerbs outline={outline} view={view} host={host} />
      {isDrawing && <DrawEntry outline={outline} view={view} />}
      <TracePanel />
      <div className="plan-sheet">
        <div
          ref={host}
          className="plan-paper"
          role="application"
          aria-label={`Plan of ${room.name}`}
          aria-describedby="plan-status"
          // biome-ignore lint/a11y/noNoninteractiveTabindex: the plan takes keys, listed under Keys
          tabIndex={0}
          data-frame={`${frame.scale} ${frame.x} ${frame.y}`}
          data-cursor={isDrawing || tracing.isCalibrating ? 'draw' : hand.cursor}
          onKeyDown={keys}
        >
          <PlanStage
            {...{ view, palette, grid, marks: seen, underlays: tracing.underlays, outlinePointer: drawing.pointer }}
          >
            {result && <FitOverlay frame={frame} palette={palette} clear={result.clear} />}
            <HandOverlay
              {...{ project: shown, room, frame, size, units, palette, hand, isCut: tool === 'cut' }}
              {...held}
            />
          </PlanStage>
        </div>
        {menu.menu && <PlanMenu {...menu.menu} size={size} onChoose={menu.choose} onLeave={menu.leave} />}
      </div>
      <PlanStatus hint={hint} warns={!isDrawing && hand.warns} shares={sharesSaid({ room, shares, size, marks })} />
    </main>
  )
}

const NO_MARKS: readonly never[] = []
/** What a new room is drawn on before its first corner: 8 by 6 metres. */
const EMPTY_PAPER: ReturnType<typeof cornerPoints> = [
  [0, 0],
  [8000, 6000],
]

/** The project as recorded, what drags start from; the room as recorded and as shown, what its scheme leaves of it. */
function useOnPlan() {
  const project = useDocument((state) => state.project)
  const room = usePlanRoom()
  const scheme = useScheme()
  const analysis = useAnalysis()
  const recorded = planRoom(
    project.rooms.find(({ id }) => id === room.id) ?? room,
    project.schemes.find(({ id }) => id === scheme.id) ?? scheme,
  )
  return { project, room, recorded, result: analysis.ok ? analysis.value : null }
}

/** The project's other rooms as shown: the same list as long as they are the same rooms. */
function useOthers({ rooms }: Project, room: Room): readonly Room[] {
  const { id } = room
  return useMemo(() => rooms.filter((other) => other.id !== id), [rooms, id])
}

/** What the view is fitted to: every room of the project and what is traced, or a survey that does not meet. */
function useFittedPoints(
  rooms: readonly Room[],
  isNew: boolean,
  traced: readonly Point[],
  surveyed: readonly Point[] | null,
) {
  return useMemo(() => {
    if (surveyed) return surveyed
    return isNew ? EMPTY_PAPER : [...rooms.flatMap(roomReach), ...traced]
  }, [rooms, isNew, traced, surveyed])
}

/** What is selected and its handles: corners at the ends of selected walls, a corner that is selected, those of a thing. */
function useHeld(project: Project, room: PlanRoom, scale: number) {
  const surfaceIds = useView((view) => view.surfaceIds)
  const cornerId = useView((view) => view.cornerId)
  const thing = useSelectedThing(project, room)
  const handles = useMemo(() => {
    const ends = room.walls.filter((wall) => surfaceIds.includes(wall.id)).flatMap((wall) => [wall.from, wall.to])
    return new Set(cornerId === null ? ends : [...ends, cornerId])
  }, [room, surfaceIds, cornerId])
  const thingHandles = useMemo(() => handlesOf(room, thing, scale), [room, thing, scale])
  return useMemo(() => ({ cornerId, handles, thing, thingHandles }), [cornerId, handles, thing, thingHandles])
}

/** Ids drawn in the accent: what is selected, and what a press would put down. */
function useMarked(thing: Thing | null, ghost: Thing | null): readonly string[] {
  const surfaceIds = useView((view) => view.surfaceIds)
  const [thingId, ghostId] = [thing?.id, ghost?.id]
  return useMemo(
    () => [...surfaceIds, ...[thingId, ghostId].filter((id) => id !== undefined)],
    [surfaceIds, thingId, ghostId],
  )
}
