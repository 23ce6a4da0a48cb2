import { Group, Line, Rect } from 'react-konva'
import { type Frame, toTarget } from '#drawing/frame.ts'
import type { Palette } from '#drawing/palette.ts'
import type { Point } from '#geometry/polygon.ts'
import type { Project } from '#project/project.ts'
import type { Thing } from '#state/view.ts'
import type { HandlePlace } from '#ui/canvas/hitThings.ts'
import { cornerPoints, type Target } from '#ui/canvas/nearest.ts'
import type { PlanRoom } from '#ui/canvas/planRoom.ts'
import { Measures, ShapeOutline, ThingHandles } from '#ui/canvas/ThingOverlay.tsx'
import { frontMiddle, partitionRing, type ThingShape, thingShape, turnable, wallRun } from '#ui/canvas/thingShapes.ts'
import type { Size } from '#ui/canvas/usePlanFrame.ts'
import type { SelectState } from '#ui/canvas/useSelectGestures.ts'
import type { LengthUnit } from '#units/quantity.ts'

interface Props {
  readonly project: Project
  readonly room: PlanRoom
  readonly frame: Frame
  readonly size: Size
  readonly units: LengthUnit
  readonly palette: Palette
  readonly state: SelectState
  readonly handles: ReadonlySet<string>
  readonly cornerId: string | null
  readonly thing: Thing | null
  readonly thingHandles: readonly HandlePlace[]
}

const HANDLE = 10

/** What the Select tool adds to the drawing: what lies under the pointer, handles on what is selected, guides, distances. */
export function SelectOverlay(props: Props) {
  const { room, frame, palette, state, handles, cornerId, thing, thingHandles } = props
  const { hovered } = state
  const piece = thing && turnable(room, thing)
  return (
    <Group listening={false}>
      <Hovered {...props} />
      <GuideLines frame={frame} palette={palette} guides={state.guides} />
      <ThingHandles handles={thingHandles} front={piece ? frontMiddle(piece) : null} frame={frame} palette={palette} />
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
      <Measures {...props} measures={state.measures} />
    </Group>
  )
}

/** The line, thing or room a press would pick. */
function Hovered({ project, room, frame, palette, state }: Props) {
  const { hovered } = state
  const shape = hovered && hoveredShape(project, room, hovered)
  if (!hovered || !shape) return null
  if (hovered.kind !== 'wall' || shape.kind !== 'run')
    return <ShapeOutline shape={shape} frame={frame} palette={palette} />
  return <Line points={flat(frame, shape.ends)} stroke={palette.accent} strokeWidth={3} />
}

function hoveredShape(project: Project, room: PlanRoom, hovered: Target): ThingShape | null {
  switch (hovered.kind) {
    case 'wall': {
      const run = wallRun(room, hovered.id)
      return run && { kind: 'run', ends: [run.from, run.to] }
    }
    case 'room': {
      const other = project.rooms.find(({ id }) => id === hovered.id)
      return other ? { kind: 'ring', ring: cornerPoints(other) } : null
    }
    case 'thing': {
      const partition =
        hovered.thing.kind === 'partition' && project.partitions.find(({ id }) => id === hovered.thing.id)
      const ring = partition ? partitionRing(partition, project.rooms) : null
      return ring ? { kind: 'ring', ring } : thingShape(room, hovered.thing)
    }
    default:
      return null
  }
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
