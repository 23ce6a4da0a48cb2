import { levelSd, limitPreset, type SourcePreset, sourcePreset } from '#analysis/presets.ts'
import type { FarSide, Room } from '#analysis/room.ts'
import type { Receiver, ReceiverPlace, Source, Through } from '#analysis/target.ts'
import type { Project } from '#project/project.ts'
import usual from '#state/data/usual-targets.json' with { type: 'json' }
import { invariant, unreachable } from '#units/result.ts'

/** A preset as a source of the project. */
export function sourceOf({ key, name, levelsDb, place, basis, shakes }: SourcePreset): Omit<Source, 'id'> {
  return { name, preset: key, levelsDb, place, basis, sdDb: levelSd(basis), shakes }
}

/** A source whose levels are to be typed. */
export function typedSource(name: string): Omit<Source, 'id'> {
  const levelsDb = { 63: null, 125: null, 250: null, 500: null, 1000: null, 2000: null, 4000: null }
  const rest = { preset: null, place: 'room-average', basis: 'measured', shakes: false } as const
  return { name, levelsDb, ...rest, sdDb: levelSd('measured') }
}

/**
 * A receiver as it is offered first: a room next door behind the surfaces a neighbour or the own house is behind, a point
 * in the open, or this room with what comes in from outside. Its source is the project's first that fits, if there is one.
 */
export function usualReceiver(
  kind: ReceiverPlace['kind'],
  room: Room,
  project: Pick<Project, 'sources'>,
): Omit<Receiver, 'id'> {
  const { name, place, through, junction } = placed(kind, room)
  const { limit: key, backgroundNc } = usual[kind]
  const preset = limitPreset(key)
  invariant(preset, 'the usual limit is a preset')
  return {
    name,
    room: room.id,
    source: usualSource(kind, project),
    place,
    through,
    limit: preset.limit,
    limitPreset: preset.key,
    hasBeat: false,
    backgroundNc,
    junction,
    linedBeyond: 'none',
    measured: [],
  }
}

/** What a receiver of this kind hears where the project has nothing that fits: traffic for this room, null for the others. */
export function usualSourceOf(kind: ReceiverPlace['kind']): Omit<Source, 'id'> | null {
  if (kind !== 'this-room') return null
  const preset = sourcePreset(usual['this-room'].source)
  invariant(preset, 'the usual source is a preset')
  return sourceOf(preset)
}

/** The first source that can be heard there: what comes in is loud at the wall outside, what goes out in the room. */
function usualSource(kind: ReceiverPlace['kind'], { sources }: Pick<Project, 'sources'>): string | null {
  const comesIn = kind === 'this-room'
  return sources.find(({ place }) => (place === 'facade') === comesIn)?.id ?? null
}

type Placed = Pick<Receiver, 'name' | 'place' | 'through' | 'junction'>

function placed(kind: ReceiverPlace['kind'], room: Room): Placed {
  switch (kind) {
    case 'room': {
      const { volumeM3 } = usual.room
      const next = behind(room, 'neighbour')
      return {
        name: 'Room next door',
        place: { kind, volumeM3, furnishing: 'furnished', absorptionM2: null },
        through: next.length > 0 ? next : behind(room, 'own-house'),
        // What goes round is never nothing, so nothing is not offered.
        junction: 'careful',
      }
    }
    case 'outdoors': {
      const { distanceMm } = usual.outdoors
      const place = { kind, distanceMm, atFacade: false } as const
      return { name: 'Point outdoors', place, through: behind(room, 'outdoors'), junction: 'none' }
    }
    case 'this-room':
      return { name: 'This room', place: { kind }, through: behind(room, 'outdoors'), junction: 'none' }
    default:
      return unreachable(kind)
  }
}

function behind({ walls, ceiling, floor }: Room, farSide: FarSide): readonly Through[] {
  return [...walls, ceiling, floor].filter((facts) => facts.farSide === farSide).map(({ id }) => ({ surface: id }))
}
