import { Label, Tag, Text } from 'react-konva'
import type { Place } from '#drawing/model.ts'
import type { Palette } from '#drawing/palette.ts'
import { FONT_FAMILY, textWidth } from '#drawing/text.ts'
import type { Size } from '#ui/canvas/usePlanFrame.ts'

interface Props {
  readonly text: string
  readonly at: Place
  readonly offset: Place
  readonly palette: Palette
  /** Where given, the label stays inside. */
  readonly size?: Size | undefined
  readonly strong?: boolean | undefined
}

const FONT_SIZE = 13
const PADDING = 4

/** A few words on a slip of paper beside a place on the plan. */
export function PaperLabel({ text, at, offset, palette, size, strong = false }: Props) {
  const weight = strong ? 600 : 400
  const width = textWidth(text, FONT_SIZE, weight) + 2 * PADDING
  const height = FONT_SIZE + 2 * PADDING
  const x = size && at[0] + offset[0] + width > size.width ? at[0] - offset[0] - width : at[0] + offset[0]
  const y = size && at[1] + offset[1] + height > size.height ? at[1] - offset[1] - height : at[1] + offset[1]
  return (
    <Label x={x} y={y} listening={false}>
      <Tag fill={palette.sheet} stroke={strong ? palette.accent : palette.line} strokeWidth={1} />
      <Text
        text={text}
        fontFamily={FONT_FAMILY}
        fontSize={FONT_SIZE}
        fontStyle={String(weight)}
        fill={palette.ink}
        padding={PADDING}
      />
    </Label>
  )
}
