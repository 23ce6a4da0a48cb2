import { Circle, Group, Line } from 'react-konva'
import { type Frame, toTarget } from '#drawing/frame.ts'
import type { Palette } from '#drawing/palette.ts'
import { PaperLabel } from '#ui/canvas/PaperLabel.tsx'
import { GuideLines } from '#ui/canvas/SelectOverlay.tsx'
import type { AddState } from '#ui/canvas/useAddGestures.ts'
import type { Size } from '#ui/canvas/usePlanFrame.ts'
import { formatLength } from '#units/format.ts'
import type { LengthUnit } from '#units/quantity.ts'

interface Props {
  readonly state: AddState
  readonly isCut: boolean
  readonly frame: Frame
  readonly size: Size
  readonly palette: Palette
  readonly units: LengthUnit
}

/** The first of two presses, the line or the sizes to the pointer, and what holds it. */
export function AddOverlay({ state, isCut, frame, size, palette, units }: Props) {
  const { anchor, pointer } = state
  const from = anchor && toTarget(frame, anchor)
  const to = pointer && toTarget(frame, pointer.point)
  return (
    <Group listening={false}>
      {pointer && <GuideLines frame={frame} palette={palette} guides={pointer.guides} />}
      {isCut && from && to && <Line points={[...from, ...to]} stroke={palette.accent} strokeWidth={2} />}
      {from && <Circle x={from[0]} y={from[1]} radius={4} fill={palette.accent} />}
      {to && <Circle x={to[0]} y={to[1]} radius={3} fill={palette.accent} />}
      {anchor && pointer && to && (
        <PaperLabel
          text={sizeText(isCut, [pointer.point[0] - anchor[0], pointer.point[1] - anchor[1]], units)}
          at={to}
          offset={[16, 18]}
          size={size}
          palette={palette}
          strong
        />
      )}
    </Group>
  )
}

function sizeText(isCut: boolean, [dx, dy]: readonly [number, number], units: LengthUnit): string {
  if (isCut) return formatLength(Math.hypot(dx, dy), units)
  return `${formatLength(Math.abs(dx), units)} by ${formatLength(Math.abs(dy), units)}`
}
