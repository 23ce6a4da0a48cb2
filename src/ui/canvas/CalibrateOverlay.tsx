import { Circle, Group, Line } from 'react-konva'
import { type Frame, toTarget } from '#drawing/frame.ts'
import type { Palette } from '#drawing/palette.ts'
import { PaperLabel } from '#ui/canvas/PaperLabel.tsx'
import { type Calibrating, wholePoint } from '#ui/trace/traceStore.ts'

interface Props {
  readonly calibrating: Calibrating
  readonly frame: Frame
  readonly palette: Palette
}

const ARM = 14

/** The two points of a calibration: open in the middle, so that what they stand on is seen. */
export function CalibrateOverlay({ calibrating, frame, palette }: Props) {
  const places = calibrating.points.map((point) => {
    const whole = wholePoint(point)
    return whole && toTarget(frame, whole)
  })
  const [from, to] = places
  const line = { stroke: palette.accent, strokeWidth: 1.5 }
  return (
    <Group listening={false}>
      {from && to && <Line points={[...from, ...to]} {...line} dash={[6, 4]} />}
      {places.map(
        (place, index) =>
          place && (
            <Group key={index === 0 ? 'first' : 'second'} x={place[0]} y={place[1]}>
              <Circle radius={8} {...line} />
              <Line points={[-ARM, 0, -3, 0]} {...line} />
              <Line points={[3, 0, ARM, 0]} {...line} />
              <Line points={[0, -ARM, 0, -3]} {...line} />
              <Line points={[0, 3, 0, ARM]} {...line} />
            </Group>
          ),
      )}
      {places.map(
        (place, index) =>
          place && (
            <PaperLabel
              key={index === 0 ? 'first' : 'second'}
              text={index === 0 ? 'first' : 'second'}
              at={place}
              offset={[12, 10]}
              palette={palette}
            />
          ),
      )}
    </Group>
  )
}
