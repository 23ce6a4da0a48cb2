import { useMemo, useRef } from 'react'
import { Layer, Stage, useStrictMode as strictly } from 'react-konva'
import { useStore } from 'zustand'
import type { Room } from '#analysis/room.ts'
import { PALETTES } from '#drawing/palette.ts'
import { DrawEntry } from '#ui/canvas/DrawEntry.tsx'
import { DrawOverlay } from '#ui/canvas/DrawOverlay.tsx'
import { newProjectOf } from '#ui/canvas/drawStore.ts'
import { cornerPoints } from '#ui/canvas/nearest.ts'
import { PlanDrawing, useGridMarks, usePlanMarks } from '#ui/canvas/PlanDrawing.tsx'
import { PlanStatus } from '#ui/canvas/PlanStatus.tsx'
import { PlanVerbs } from '#ui/canvas/PlanVerbs.tsx'
import { SelectOverlay } from '#ui/canvas/SelectOverlay.tsx'
import { UnderlayLayer } from '#ui/canvas/UnderlayLayer.tsx'
import { useCoarsePointer } from '#ui/canvas/useCoarsePointer.ts'
import { useDrawGestures } from '#ui/canvas/useDrawGestures.ts'
import { useOutlineDrawing } from '#ui/canvas/useOutlineDrawing.ts'
import { usePlanFrame } from '#ui/canvas/usePlanFrame.ts'
import { usePlanKeys } from '#ui/canvas/usePlanKeys.ts'
import { usePointer } from '#ui/canvas/usePointer.ts'
import { useSelectGestures } from '#ui/canvas/useSelectGestures.ts'
import { useAnalysis, useDocument, useRoom, useView } from '#ui/session.ts'
import { useDraw, useShell, useShellState } from '#ui/shell.ts'
import { TraceOverlay } from '#ui/trace/TraceOverlay.tsx'
import { TracePanel } from '#ui/trace/TracePanel.tsx'
import { useSeeThrough, useTracing } from '#ui/trace/useTracing.ts'
import { drawHint, selectHint } from '#ui/words.ts'

/** Nodes always follow what React says, also where konva moved them itself. Not a hook, whatever its name. */
strictly(true)

/** The plan: verbs in words, the drawing, and a sentence that says what a press will do. */
export function PlanView() {
  const host = useRef<HTMLDivElement>(null)
  const shell = useShell()
  const palette = PALETTES[useStore(shell.theme.store, (theme) => theme.shown)]
  const room = useRoom()
  const recorded = useRecordedRoom(room)
  const analysis = useAnalysis()
  const units = useDocument((state) => state.project.units)
  const selection = useView((view) => view.surfaceIds)
  const cornerId = useView((view) => view.cornerId)
  const isDrawing = useView((view) => view.tool === 'draw')
  const draw = useDraw((state) => state)
  const newProject = newProjectOf(draw)
  const outline = useOutlineDrawing()
  const isTouch = useCoarsePointer()
  const fitted = useFittedPoints(recorded, isDrawing && newProject !== null)
  const view = usePlanFrame(
    host,
    fitted,
    useShellState((state) => state.fitRequests),
  )
  const { frame, size } = view

  const result = analysis.ok ? analysis.value : null
  const picture = { room, result, frame, size, units, selection }
  const marks = usePlanMarks(picture)
  const grid = useGridMarks(picture)
  const handles = useHandles(room, selection, cornerId)
  const select = useSelectGestures(recorded, { frame, result, marks, handles })
  const drawing = useDrawGestures(frame, newProject?.units ?? units, outline.close)
  const tracing = useTracing(frame, isDrawing ? drawing.gestures : select.gestures)
  usePointer(host, view, tracing.gestures)
  const seen = useSeeThrough(marks, tracing.underlays)
  const keys = usePlanKeys(recorded, view, outline)

  const hint = isDrawing
    ? drawHint(draw.points.length, drawing.pointer?.closes ?? false, isTouch)
    : (tracing.hint ?? select.state.dragged ?? selectHint(room, select.state.hovered, selection, cornerId))
  return (
    <main className="plan" data-tool={isDrawing ? 'draw' : 'select'}>
      <PlanVerbs outline={outline} view={view} />
      {isDrawing && <DrawEntry outline={outline} view={view} />}
      <TracePanel />
      <div
        ref={host}
        className="plan-paper"
        role="application"
        aria-label={`Plan of ${room.name}`}
        aria-describedby="plan-status"
        // biome-ignore lint/a11y/noNoninteractiveTabindex: the plan takes keys, listed under Keys
        tabIndex={0}
        data-frame={`${frame.scale} ${frame.x} ${frame.y}`}
        data-cursor={isDrawing || tracing.isCalibrating ? 'draw' : cursorOver(select.state.hovered, selection)}
        onKeyDown={keys}
      >
        <Stage width={size.width} height={size.height} listening={false}>
          <UnderlayLayer {...{ underlays: tracing.underlays, frame, palette, isDark: palette === PALETTES.dark }} />
          <PlanDrawing
            grid={grid}
            marks={isDrawing && newProject ? NO_MARKS : seen}
            palette={palette}
            opacity={isDrawing ? 0.3 : 1}
          />
          <Layer listening={false}>
            {isDrawing ? (
              <DrawOverlay {...{ ...draw, ...view, palette, units, pointer: drawing.pointer }} />
            ) : (
              <SelectOverlay {...{ room, frame, palette, handles, cornerId, state: select.state }} />
            )}
            <TraceOverlay frame={frame} palette={palette} />
          </Layer>
        </Stage>
      </div>
      <PlanStatus hint={hint} warns={!isDrawing && select.state.isRefused} />
    </main>
  )
}

const NO_MARKS: readonly never[] = []
/** What a new room is drawn on before its first corner: 8 by 6 metres. */
const EMPTY_PAPER: ReturnType<typeof cornerPoints> = [
  [0, 0],
  [8000, 6000],
]

/** The room without what a hand is trying: what drags start from, and what the view is fitted to. */
function useRecordedRoom(shown: Room): Room {
  return useDocument((state) => state.project.rooms.find((room) => room.id === shown.id) ?? shown)
}

function useFittedPoints(recorded: Room, isNew: boolean) {
  return useMemo(() => (isNew ? EMPTY_PAPER : cornerPoints(recorded)), [recorded, isNew])
}

/** Corners at the ends of selected walls, and a corner that is selected itself. */
function useHandles(room: Room, selection: readonly string[], cornerId: string | null): ReadonlySet<string> {
  return useMemo(() => {
    const ends = room.walls.filter((wall) => selection.includes(wall.id)).flatMap((wall) => [wall.from, wall.to])
    return new Set(cornerId === null ? ends : [...ends, cornerId])
  }, [room, selection, cornerId])
}

function cursorOver(
  hovered: ReturnType<typeof useSelectGestures>['state']['hovered'],
  selection: readonly string[],
): string {
  if (hovered === null) return 'rest'
  if (hovered.kind === 'wall') return selection.includes(hovered.id) ? 'move' : 'pick'
  return hovered.kind
}
