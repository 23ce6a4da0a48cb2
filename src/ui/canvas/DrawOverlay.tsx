import { Circle, Group, Line } from 'react-konva'
import { type Frame, toTarget } from '#drawing/frame.ts'
import type { Palette } from '#drawing/palette.ts'
import type { Point } from '#geometry/polygon.ts'
import { type ClosingWay, closedOutline } from '#ui/canvas/closing.ts'
import { runningText } from '#ui/canvas/drawWords.ts'
import { PaperLabel } from '#ui/canvas/PaperLabel.tsx'
import { GuideLines } from '#ui/canvas/SelectOverlay.tsx'
import type { DrawPointer } from '#ui/canvas/useDrawGestures.ts'
import type { Size } from '#ui/canvas/usePlanFrame.ts'
import { formatLength } from '#units/format.ts'
import type { LengthUnit } from '#units/quantity.ts'

interface Props {
  readonly points: readonly Point[]
  /** The page asks how to close: the outline as it would then stand is shown over the one measured. */
  readonly closing: ClosingWay | null
  readonly pointer: DrawPointer | null
  readonly frame: Frame
  readonly size: Size
  readonly palette: Palette
  readonly units: LengthUnit
}

/** The outline so far, the next wall at the pointer with its length and angle, and what holds it. */
export function DrawOverlay({ points, closing, pointer, frame, size, palette, units }: Props) {
  const places = points.map((point) => toTarget(frame, point))
  const next = pointer && toTarget(frame, pointer.point)
  const last = places.at(-1)
  return (
    <Group listening={false}>
      <Line points={places.flatMap((place) => [...place])} stroke={palette.wall} strokeWidth={3} lineJoin="miter" />
      {closing && (
        <Line
          points={closedOutline(points, closing).flatMap((point) => [...toTarget(frame, point)])}
          closed
          stroke={palette.accent}
          strokeWidth={1.6}
          lineJoin="miter"
        />
      )}
      {pointer && <GuideLines frame={frame} palette={palette} guides={pointer.guides} />}
      {last && next && <Line points={[...last, ...next]} stroke={palette.accent} strokeWidth={2} />}
      {closing === null && <SideLengths points={points} frame={frame} palette={palette} units={units} />}
      {places.map(([x, y], index) => (
        <Circle
          // A corner has no name of its own before the outline is closed; its place in the row is its name.
          // biome-ignore lint/suspicious/noArrayIndexKey: see above
          key={index}
          x={x}
          y={y}
          radius={index === 0 ? 7 : 4}
          fill={index === 0 && pointer?.closes ? palette.accent : palette.clear}
          stroke={palette.accent}
          strokeWidth={1.6}
        />
      ))}
      {next && !pointer.closes && <Circle x={next[0]} y={next[1]} radius={4} fill={palette.accent} />}
      {pointer && next && (
        <PaperLabel
          text={runningText(points, pointer, units)}
          at={next}
          size={size}
          palette={palette}
          offset={[16, 18]}
          strong
        />
      )}
    </Group>
  )
}

type SideProps = Pick<Props, 'points' | 'frame' | 'palette' | 'units'>

/** The length of every wall drawn so far, at its middle. */
function SideLengths({ points, frame, palette, units }: SideProps) {
  return (
    <>
      {points.slice(1).map((to, index) => {
        const from = points[index] ?? to
        const middle = toTarget(frame, [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2])
        const length = Math.hypot(to[0] - from[0], to[1] - from[1])
        return (
          <PaperLabel
            // biome-ignore lint/suspicious/noArrayIndexKey: a wall not yet closed is named by its place in the row
            key={index}
            text={formatLength(length, units)}
            at={middle}
            palette={palette}
            offset={[8, -24]}
          />
        )
      })}
    </>
  )
}
