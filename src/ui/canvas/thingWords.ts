import type { Room } from '#analysis/room.ts'
import type { Project } from '#project/project.ts'
import type { Thing } from '#state/view.ts'
import { boxesOf, type PlanRoom } from '#ui/canvas/planRoom.ts'
import { heightPoint } from '#ui/canvas/thingShapes.ts'
import { formatLength } from '#units/format.ts'
import type { LengthUnit } from '#units/quantity.ts'

/** What a thing of the room is called in sentences: its own name, or what it is. */
export function thingLabel(room: PlanRoom, { kind, id }: Thing): string {
  const named = <Named extends { readonly id: string; readonly name: string }>(list: readonly Named[]) =>
    list.find((candidate) => candidate.id === id)?.name
  switch (kind) {
    case 'opening':
      return named(room.openings) ?? 'The opening'
    case 'obstacle':
      return named(room.obstacles) ?? 'The obstacle'
    case 'drop':
      return named(room.drops) ?? 'The drop'
    case 'ceiling-part':
      return named(room.ceilingParts) ?? 'The ceiling part'
    case 'furniture':
      return named(room.furniture) ?? 'The piece'
    case 'box':
      return named(boxesOf(room)) ?? 'The silencer box'
    case 'height':
      return 'The height point'
    case 'partition':
      return 'The partition'
    default:
      return 'The picture'
  }
}

/** The same for what belongs to the whole project. */
export function projectThingLabel(project: Project, room: PlanRoom, thing: Thing): string {
  if (thing.kind === 'partition') {
    return project.partitions.find(({ id }) => id === thing.id)?.name ?? 'The partition'
  }
  if (thing.kind === 'underlay') {
    const name = project.underlays.find(({ id }) => id === thing.id)?.name
    return name === undefined ? 'The picture' : `The picture ${name}`
  }
  return thingLabel(room, thing)
}

/** What a keyboard reader hears of a selected thing. */
export function thingSpoken(project: Project, room: PlanRoom, thing: Thing): string {
  const label = projectThingLabel(project, room, thing)
  return `${label}${detail(room, thing, project.units)}, selected. ${howItMoves(thing)}`
}

function detail(room: Room, thing: Thing, units: LengthUnit): string {
  if (thing.kind === 'height') {
    const point = heightPoint(room, thing.id)
    return point ? `, ${formatLength(point.heightMm, units)} high` : ''
  }
  if (thing.kind !== 'opening') return ''
  const opening = room.openings.find(({ id }) => id === thing.id)
  if (!opening) return ''
  const wall = room.walls.findIndex(({ id }) => id === opening.wall) + 1
  const from = formatLength(opening.fromMm, units)
  return `, ${formatLength(opening.widthMm, units)} wide, ${from} along Wall ${wall}`
}

function howItMoves({ kind }: Thing): string {
  if (kind === 'partition') return 'Arrow keys move it across its line. Delete joins its two rooms.'
  if (kind === 'opening') return 'Arrow keys move it along its wall.'
  return `Arrow keys move it${kind === 'furniture' || kind === 'box' ? ', R turns it' : ''}.`
}

/** Whether a mouse moves it at once; what hangs over the whole room is selected first. */
export function isTakenUp({ kind }: Thing): boolean {
  return kind === 'opening' || kind === 'obstacle' || kind === 'height' || kind === 'furniture' || kind === 'box'
}

const WORDS: Readonly<Record<Thing['kind'], string>> = {
  opening: 'opening',
  obstacle: 'obstacle',
  drop: 'drop',
  height: 'height',
  'ceiling-part': 'ceiling part',
  furniture: 'piece',
  box: 'silencer box',
  partition: 'partition',
  underlay: 'picture',
}

/** What kind of thing it is, in a verb: Delete opening. */
export function thingWord({ kind }: Thing): string {
  return WORDS[kind]
}
