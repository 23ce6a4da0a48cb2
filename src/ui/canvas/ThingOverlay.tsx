import { Circle, Group, Line, Rect } from 'react-konva'
import { type Frame, toTarget } from '#drawing/frame.ts'
import type { Palette } from '#drawing/palette.ts'
import type { Point } from '#geometry/polygon.ts'
import type { HandlePlace } from '#ui/canvas/hitThings.ts'
import type { Measure } from '#ui/canvas/measures.ts'
import { PaperLabel } from '#ui/canvas/PaperLabel.tsx'
import type { ThingShape } from '#ui/canvas/thingShapes.ts'
import type { Size } from '#ui/canvas/usePlanFrame.ts'
import { formatLength } from '#units/format.ts'
import type { LengthUnit } from '#units/quantity.ts'

interface OnPaper {
  readonly frame: Frame
  readonly palette: Palette
}

/** Square handles, a round one to turn by. */
const HANDLE = 10

/** The outline of a thing under the pointer. */
export function ShapeOutline({ shape, frame, palette }: OnPaper & { readonly shape: ThingShape }) {
  if (shape.kind === 'place') {
    const [x, y] = toTarget(frame, shape.at)
    return <Circle x={x} y={y} radius={9} stroke={palette.accent} strokeWidth={2} />
  }
  const points = shape.kind === 'run' ? shape.ends : shape.ring
  return <Line points={flat(frame, points)} closed={shape.kind === 'ring'} stroke={palette.accent} strokeWidth={2.4} />
}

/** Handles of the selected thing. */
export function ThingHandles({
  handles,
  front,
  frame,
  palette,
}: OnPaper & { readonly handles: readonly HandlePlace[]; readonly front: Point | null }) {
  return (
    <>
      {handles.map(({ handle, at }) => {
        const [x, y] = toTarget(frame, at)
        if (handle.kind !== 'turn') return <Square key={JSON.stringify(handle)} x={x} y={y} palette={palette} />
        return (
          <Group key="turn">
            {front && <Line points={flat(frame, [front, at])} stroke={palette.accent} strokeWidth={1} />}
            <Circle x={x} y={y} radius={7} fill={palette.clear} stroke={palette.accent} strokeWidth={1.6} />
          </Group>
        )
      })}
    </>
  )
}

function Square({ x, y, palette }: { readonly x: number; readonly y: number; readonly palette: Palette }) {
  return (
    <Rect
      x={x - HANDLE / 2}
      y={y - HANDLE / 2}
      width={HANDLE}
      height={HANDLE}
      fill={palette.clear}
      stroke={palette.accent}
      strokeWidth={1.6}
    />
  )
}

interface MeasureProps extends OnPaper {
  readonly measures: readonly Measure[]
  readonly size: Size
  readonly units: LengthUnit
}

/** Distances to what is near, while a thing is in the hand. */
export function Measures({ measures, frame, palette, size, units }: MeasureProps) {
  return (
    <>
      {measures
        .filter(({ lengthMm }) => lengthMm * frame.scale > 1 && Number.isFinite(lengthMm))
        .map(({ from, to, lengthMm }) => {
          const [a, b] = [toTarget(frame, from), toTarget(frame, to)]
          const isLevel = Math.abs(a[0] - b[0]) > Math.abs(a[1] - b[1])
          return (
            <Group key={[...from, ...to].join()}>
              <Line points={[...a, ...b]} stroke={palette.accent} strokeWidth={1.2} />
              <PaperLabel
                text={formatLength(lengthMm, units)}
                at={[(a[0] + b[0]) / 2, (a[1] + b[1]) / 2]}
                offset={isLevel ? [-24, 8] : [8, -10]}
                palette={palette}
                size={size}
              />
            </Group>
          )
        })}
    </>
  )
}

function flat(frame: Frame, points: readonly Point[]): number[] {
  return points.flatMap((point) => [...toTarget(frame, point)])
}
