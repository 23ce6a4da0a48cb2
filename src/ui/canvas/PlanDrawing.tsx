import type { Context } from 'konva/lib/Context'
import { memo, useMemo } from 'react'
import { Layer, Shape } from 'react-konva'
import type { SchemeResult } from '#analysis/results.ts'
import type { Room } from '#analysis/room.ts'
import type { Frame } from '#drawing/frame.ts'
import type { Mark } from '#drawing/model.ts'
import type { Palette } from '#drawing/palette.ts'
import type { PlanShares } from '#drawing/plan/shares.ts'
import { planMarks } from '#drawing/plan.ts'
import { SCREEN_STYLE } from '#drawing/style.ts'
import { paintMarks } from '#ui/canvas/paintMarks.ts'
import { ROOM_FOR_SCALE_BAR, type Size } from '#ui/canvas/usePlanFrame.ts'
import { ROOM_FOR_SHARE_KEY } from '#ui/canvas/usePlanShares.ts'
import type { LengthUnit } from '#units/quantity.ts'

export interface PlanPicture {
  /** The project's other rooms. */
  readonly others: readonly Room[]
  readonly room: Room
  readonly result: SchemeResult | null
  readonly frame: Frame
  readonly size: Size
  readonly units: LengthUnit
  readonly selection: readonly string[]
  /** null: none are shown. */
  readonly shares: PlanShares | null
  /** Something is in the hand. */
  readonly isHeld: boolean
}

/** Rooms with more walls show neither words nor hatches while one of them is in the hand, so that it follows the hand. */
const MOST_WORDED = 100

/** The plan's marks for the screen. */
export function usePlanMarks({
  others,
  room,
  result,
  frame,
  size,
  units,
  selection,
  shares,
  isHeld,
}: PlanPicture): readonly Mark[] {
  return useMemo(() => {
    if (size.width === 0 || room.corners.length < 3) return []
    const view = { x: 0, y: 0, width: size.width, height: size.height }
    const words = !isHeld || room.walls.length <= MOST_WORDED
    const shareKey = size.width >= ROOM_FOR_SHARE_KEY
    const show = { scaleBar: size.height >= ROOM_FOR_SCALE_BAR, words, hatches: words, shareKey }
    const input = { room, others, result, frame, style: SCREEN_STYLE, units, selection, view, show }
    return planMarks(shares ? { ...input, shares } : input)
  }, [room, others, result, frame, size, units, selection, shares, isHeld])
}

/** The drafting grid behind it. */
export function useGridMarks({
  room,
  frame,
  size,
  units,
}: Omit<PlanPicture, 'others' | 'isHeld' | 'result' | 'selection' | 'shares'>): readonly Mark[] {
  return useMemo(() => {
    const view = { x: 0, y: 0, width: size.width, height: size.height }
    const empty: Room = { ...room, corners: [], walls: [], openings: [], obstacles: [], drops: [] }
    return planMarks({ room: empty, result: null, frame, style: SCREEN_STYLE, units, view, show: GRID_ONLY })
  }, [room, frame, size, units])
}

const GRID_ONLY = {
  grid: true,
  tags: false,
  openings: false,
  dimensions: false,
  clearDimensions: false,
  roomLabel: false,
  scaleBar: false,
}

interface Props {
  readonly grid: readonly Mark[]

  readonly marks: readonly Mark[]
  readonly palette: Palette
  /** Faint while a new outline is drawn over it. */
  readonly opacity: number
}

/** The whole passive drawing as one shape: nothing in it is touched, everything is hit in millimetres elsewhere. */
export const PlanDrawing = memo(function PlanDrawing({ grid, marks, palette, opacity }: Props) {
  const scene = useMemo(() => (context: Context) => paintMarks(context._context, marks, palette), [marks, palette])
  const ground = useMemo(() => (context: Context) => paintMarks(context._context, grid, palette), [grid, palette])
  return (
    <>
      <Layer listening={false}>
        <Shape sceneFunc={ground} perfectDrawEnabled={false} />
      </Layer>
      <Layer listening={false}>
        <Shape sceneFunc={scene} opacity={opacity} perfectDrawEnabled={false} />
      </Layer>
    </>
  )
})
