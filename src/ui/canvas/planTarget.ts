import type { SchemeResult } from '#analysis/results.ts'
import type { Frame } from '#drawing/frame.ts'
import type { Mark } from '#drawing/model.ts'
import type { Project } from '#project/project.ts'
import type { Thing } from '#state/view.ts'
import { type HandlePlace, handleAt, otherRoomAt, partitionAt, thingAt, underlayAt } from '#ui/canvas/hitThings.ts'
import { cornerPoints, isInside, type Target, targetAt } from '#ui/canvas/nearest.ts'
import type { PlanRoom } from '#ui/canvas/planRoom.ts'
import type { Press } from '#ui/canvas/pointer.ts'
import { isSameThing } from '#ui/canvas/thingShapes.ts'

/** Everything a press can meet. */
export interface Touchable {
  readonly project: Project
  readonly room: PlanRoom
  readonly frame: Frame
  readonly result: SchemeResult | null
  readonly marks: readonly Mark[]
  /** Corners of the outline that show a handle. */
  readonly handles: ReadonlySet<string>
  /** The selected thing and its handles. */
  readonly thing: Thing | null
  readonly thingHandles: readonly HandlePlace[]
}

/** How near is near enough, px. A finger has 44 px across. */
const REACH = {
  mouse: { corner: 11, wall: 9, thing: 9 },
  touch: { corner: 24, wall: 20, thing: 22 },
}

/** What a press touches: handles, then a wall's tag, then things from small to large, walls, and last what lies around. */
export function planTarget(input: Touchable, press: Press): Target {
  const { room, frame, thing } = input
  const { at } = press
  const reach = press.isTouch ? REACH.touch : REACH.mouse
  const mm = (px: number) => px / frame.scale
  const handle = thing && handleAt(input.thingHandles, at, mm(reach.corner))
  if (thing && handle) return { kind: 'handle', thing, handle }
  const near = { corner: mm(reach.corner), wall: mm(reach.wall) }
  const onLine = targetAt(room, at, near, input.handles, [])
  if (onLine.kind === 'corner') return onLine
  const small = tagAt(input.marks, press) ?? smallThing(input, press, mm(reach.thing), onLine)
  if (small) return small
  // Between two rooms a press means the partition itself; from inside a room it means the wall the partition shows it.
  const partition = isInside(cornerPoints(room), at) ? null : partitionAt(input.project, at)
  if (partition) return { kind: 'thing', thing: partition }
  if (onLine.kind === 'wall') return onLine
  const depths = input.result?.surfaces.map((surface) => surface.netDepthMm) ?? []
  const target = targetAt(room, at, near, NO_HANDLES, depths)
  return target.kind === 'wall' ? target : around(input, press, target)
}

const NO_HANDLES: ReadonlySet<string> = new Set()

/** A thing under the hand; one that hangs over the room gives way to the line of a wall. */
function smallThing({ room }: Touchable, press: Press, reach: number, onLine: Target): Target | null {
  const thing = thingAt(room, press.at, reach)
  if (!thing) return null
  const hangs = thing.kind === 'drop' || thing.kind === 'ceiling-part'
  return hangs && onLine.kind === 'wall' ? null : { kind: 'thing', thing }
}

/** Inside or outside the room: a picture in the hand, another room, or the paper itself. */
function around({ project, room, thing }: Touchable, { at }: Press, target: Target): Target {
  const picture = underlayAt(project.underlays, at)
  if (picture && isSameThing(picture, thing)) return { kind: 'thing', thing: picture }
  if (target.kind === 'inside') return target
  const other = otherRoomAt(project.rooms, room.id, at)
  if (other !== null) return { kind: 'room', id: other }
  return picture ? { kind: 'thing', thing: picture } : target
}

/** A wall's tag stands for the wall. */
function tagAt(marks: readonly Mark[], { place, isTouch }: Press): Target | null {
  for (const mark of marks) {
    if (mark.kind !== 'circle' || mark.role !== 'tag' || mark.surfaceId === undefined) continue
    const away = Math.hypot(place[0] - mark.x, place[1] - mark.y)
    if (away <= mark.radius + (isTouch ? 8 : 0)) return { kind: 'wall', id: mark.surfaceId }
  }
  return null
}
