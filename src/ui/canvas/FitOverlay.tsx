import { useMemo } from 'react'
import { Circle, Group, Line } from 'react-konva'
import { type Frame, toTarget } from '#drawing/frame.ts'
import type { Palette } from '#drawing/palette.ts'
import { narrowestWidth } from '#geometry/narrowest.ts'
import { largestCircle } from '#geometry/outline.ts'
import type { Polygon } from '#geometry/polygon.ts'
import { useView } from '#ui/session.ts'

interface Props {
  readonly frame: Frame
  readonly palette: Palette
  /** Clear room, largest part first. */
  readonly clear: readonly Polygon[]
}

/** On request: the largest circle that fits on the clear floor, dashed, and the narrowest width as a line across it. */
export function FitOverlay({ frame, palette, clear }: Props) {
  const shows = useView((view) => view.showsFit)
  const [largest] = clear
  return shows && largest ? <Fit frame={frame} palette={palette} part={largest} /> : null
}

function Fit({ frame, palette, part }: Pick<Props, 'frame' | 'palette'> & { readonly part: Polygon }) {
  const circle = useMemo(() => largestCircle(part), [part])
  const narrowest = useMemo(() => narrowestWidth(part), [part])
  const [x, y] = toTarget(frame, circle.centre)
  return (
    <Group listening={false}>
      <Circle
        x={x}
        y={y}
        radius={circle.radiusMm * frame.scale}
        stroke={palette.accent}
        strokeWidth={1.4}
        dash={[6, 4]}
      />
      {narrowest && (
        <>
          <Line
            points={[...toTarget(frame, narrowest.from), ...toTarget(frame, narrowest.to)]}
            stroke={palette.accent}
            strokeWidth={1.4}
          />
          {[narrowest.from, narrowest.to].map((end) => {
            const [endX, endY] = toTarget(frame, end)
            return <Circle key={end.join()} x={endX} y={endY} radius={3} fill={palette.accent} />
          })}
        </>
      )}
    </Group>
  )
}
