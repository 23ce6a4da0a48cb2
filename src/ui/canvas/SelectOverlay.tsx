import { Group, Line, Rect } from 'react-konva'
import type { Room } from '#analysis/room.ts'
import { type Frame, toTarget } from '#drawing/frame.ts'
import type { Palette } from '#drawing/palette.ts'
import type { Point } from '#geometry/polygon.ts'
import type { SelectState } from '#ui/canvas/useSelectGestures.ts'

interface Props {
  readonly room: Room
  readonly frame: Frame
  readonly palette: Palette
  readonly state: SelectState
  readonly handles: ReadonlySet<string>
  readonly cornerId: string | null
}

const HANDLE = 10

/** What the Select tool adds to the drawing: the wall under the pointer, handles on what is selected, guides. */
export function SelectOverlay({ room, frame, palette, state, handles, cornerId }: Props) {
  const { hovered } = state
  const hoveredWall = hovered?.kind === 'wall' ? room.walls.findIndex((wall) => wall.id === hovered.id) : -1
  const from = room.corners[hoveredWall]
  const to = room.corners[(hoveredWall + 1) % room.corners.length]
  return (
    <Group listening={false}>
      {from && to && (
        <Line
          points={flat(frame, [
            [from.xMm, from.yMm],
            [to.xMm, to.yMm],
          ])}
          stroke={palette.accent}
          strokeWidth={3}
        />
      )}
      <GuideLines frame={frame} palette={palette} guides={state.guides} />
      {room.corners
        .filter((corner) => handles.has(corner.id))
        .map((corner) => {
          const [x, y] = toTarget(frame, [corner.xMm, corner.yMm])
          const isHeld = corner.id === cornerId || (hovered?.kind === 'corner' && hovered.id === corner.id)
          return (
            <Rect
              key={corner.id}
              x={x - HANDLE / 2}
              y={y - HANDLE / 2}
              width={HANDLE}
              height={HANDLE}
              fill={isHeld ? palette.accent : palette.clear}
              stroke={palette.accent}
              strokeWidth={1.6}
            />
          )
        })}
    </Group>
  )
}

interface GuideProps {
  readonly frame: Frame
  readonly palette: Palette
  readonly guides: readonly (readonly [Point, Point])[]
}

/** Dashed lines that say what holds a corner. */
export function GuideLines({ frame, palette, guides }: GuideProps) {
  return (
    <>
      {guides.map((guide) => (
        <Line
          key={guide.flat().join()}
          points={flat(frame, guide)}
          stroke={palette.accent}
          strokeWidth={1}
          dash={[5, 4]}
        />
      ))}
    </>
  )
}

function flat(frame: Frame, points: readonly Point[]): number[] {
  return points.flatMap((point) => [...toTarget(frame, point)])
}
