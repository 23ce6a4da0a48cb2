import type { ReactNode } from 'react'
import { Layer, Stage } from 'react-konva'
import type { Mark } from '#drawing/model.ts'
import { PALETTES, type Palette } from '#drawing/palette.ts'
import type { Underlay } from '#project/project.ts'
import { DrawOverlay } from '#ui/canvas/DrawOverlay.tsx'
import { newProjectOf } from '#ui/canvas/drawStore.ts'
import { PlanDrawing } from '#ui/canvas/PlanDrawing.tsx'
import { UnderlayLayer } from '#ui/canvas/UnderlayLayer.tsx'
import type { DrawPointer } from '#ui/canvas/useDrawGestures.ts'
import type { PlanFrame } from '#ui/canvas/usePlanFrame.ts'
import { useDocument, useView } from '#ui/session.ts'
import { useDraw } from '#ui/shell.ts'
import { TraceOverlay } from '#ui/trace/TraceOverlay.tsx'

interface Props {
  readonly view: PlanFrame
  readonly palette: Palette
  readonly underlays: readonly Underlay[]
  readonly grid: readonly Mark[]
  readonly marks: readonly Mark[]
  readonly outlinePointer: DrawPointer | null
  /** What the tool in the hand adds, unless an outline is drawn. */
  readonly children: ReactNode
}

const NO_MARKS: readonly never[] = []

/** From below: pictures, the drawing, and what the hand adds. Nothing here listens: all is hit in millimetres. */
export function PlanStage({ view, palette, underlays, grid, marks, outlinePointer, children }: Props) {
  const { frame, size } = view
  const units = useDocument((state) => state.project.units)
  const isDrawing = useView((state) => state.tool === 'draw')
  const isFaint = useView((state) => state.tool === 'draw' || state.tool === 'calibrate')
  const draw = useDraw((state) => state)
  const isNew = isDrawing && newProjectOf(draw) !== null
  return (
    <Stage width={size.width} height={size.height} listening={false}>
      <UnderlayLayer {...{ underlays, frame, palette, isDark: palette === PALETTES.dark }} />
      <PlanDrawing grid={grid} marks={isNew ? NO_MARKS : marks} palette={palette} opacity={isFaint ? 0.3 : 1} />
      <Layer listening={false}>
        {isDrawing ? <DrawOverlay {...{ ...draw, frame, size, palette, units, pointer: outlinePointer }} /> : children}
        <TraceOverlay {...{ underlays, frame, palette }} />
      </Layer>
    </Stage>
  )
}
