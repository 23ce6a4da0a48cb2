import { memo } from 'react'
import { Circle, Group, Image, Layer, Line, Rect } from 'react-konva'
import { type Frame, toTarget } from '#drawing/frame.ts'
import type { Palette } from '#drawing/palette.ts'
import type { Point } from '#geometry/polygon.ts'
import type { Underlay } from '#project/project.ts'
import { PaperLabel } from '#ui/canvas/PaperLabel.tsx'
import { pictureCorners, turnHandle } from '#ui/trace/placement.ts'
import { useHasPicture, usePictureImage } from '#ui/trace/usePictureImage.ts'

interface Props {
  readonly underlays: readonly Underlay[]
  readonly frame: Frame
  readonly palette: Palette
  readonly isDark: boolean
}

/** The pictures under the plan, in their order; they are traced on screen and never printed. */
export const UnderlayLayer = memo(function UnderlayLayer({ underlays, frame, palette, isDark }: Props) {
  return (
    <Layer listening={false}>
      {underlays
        .filter(({ isShown }) => isShown)
        .map((underlay) => (
          <OnePicture key={underlay.id} {...{ underlay, frame, palette, isDark }} />
        ))}
    </Layer>
  )
})

interface OneProps extends Omit<Props, 'underlays'> {
  readonly underlay: Underlay
}

function OnePicture({ underlay, frame, palette, isDark }: OneProps) {
  const picture = usePictureImage(underlay.sha256, isDark)
  const [x, y] = toTarget(frame, [underlay.xMm, underlay.yMm])
  const scale = underlay.mmPerPx * frame.scale
  const { widthPx, heightPx } = underlay
  return (
    <Group {...{ x, y, scaleX: scale, scaleY: scale, rotation: -underlay.angleDeg }}>
      {picture.kind === 'ready' ? (
        <Image
          image={picture.image}
          x={-widthPx / 2}
          y={-heightPx / 2}
          width={widthPx}
          height={heightPx}
          opacity={underlay.opacity}
        />
      ) : (
        <Rect
          x={-widthPx / 2}
          y={-heightPx / 2}
          width={widthPx}
          height={heightPx}
          stroke={palette.hatch}
          strokeWidth={1.5}
          strokeScaleEnabled={false}
          dash={[8, 6]}
        />
      )}
    </Group>
  )
}

interface FrameProps {
  readonly underlay: Underlay
  readonly frame: Frame
  readonly palette: Palette
}

/** What is wrong with a picture, under its lower edge, above the plan's own words. */
export function UnderlaySays({ underlay, frame, palette }: FrameProps) {
  const isMissing = useHasPicture(underlay.sha256) === false
  const says = pictureSays(underlay, isMissing)
  if (says === null) return null
  const place = toTarget(frame, lowest(pictureCorners(underlay)))
  return <PaperLabel text={says} at={place} offset={[0, 6]} palette={palette} />
}

function pictureSays({ name, isCalibrated }: Underlay, isMissing: boolean): string | null {
  if (isMissing) return `"${name}" is not on this machine: load it again under Trace`
  return isCalibrated === true ? null : `"${name}": not to scale until calibrated`
}

/** Where the sentence about a picture stands: at the left of its two lower corners. */
function lowest(corners: readonly Point[]): Point {
  const byHeight = [...corners].sort((a, b) => a[1] - b[1])
  const [a, b] = byHeight
  return a && b ? (a[0] <= b[0] ? a : b) : [0, 0]
}

/** Round the selected picture, with the handle that turns it. */
export function UnderlayFrame({ underlay, frame, palette }: FrameProps) {
  const corners = pictureCorners(underlay).map((corner) => toTarget(frame, corner))
  const [x, y] = toTarget(frame, turnHandle(underlay, frame.scale))
  const [, , right, left] = corners
  const top = right && left ? [(right[0] + left[0]) / 2, (right[1] + left[1]) / 2] : []
  return (
    <Group listening={false}>
      <Line points={corners.flat()} closed stroke={palette.accent} strokeWidth={1.25} dash={[6, 4]} />
      <Line points={[...top, x, y]} stroke={palette.accent} strokeWidth={1.25} />
      <Circle x={x} y={y} radius={7} fill={palette.clear} stroke={palette.accent} strokeWidth={1.6} />
    </Group>
  )
}
