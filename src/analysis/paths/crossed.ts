import { openingArea } from '#analysis/openings/sound.ts'
import { wallFrames } from '#analysis/openings/wallFrame.ts'
import type { UnknownPath } from '#analysis/paths/answer.ts'
import type { AnswerInput } from '#analysis/paths/answerReceivers.ts'
import type { Crossed } from '#analysis/paths/setting.ts'
import type { SurfaceResult } from '#analysis/results.ts'
import type { Room } from '#analysis/room.ts'
import type { Receiver, Through } from '#analysis/target.ts'
import type { Millimetres, SquareMetres } from '#units/quantity.ts'

/** The surfaces a receiver names, each once; one that is gone is a way of which nothing is known. */
export function crossedBy(
  input: AnswerInput,
  receiver: Receiver,
): { readonly crossed: readonly Crossed[]; readonly gone: readonly UnknownPath[] } {
  const crossed: Crossed[] = []
  const gone: UnknownPath[] = []
  for (const through of eachOnce(receiver.through)) {
    const surface = input.result.surfaces.find(({ id }) => id === through.surface)
    if (surface) crossed.push({ through, ...crossing(input.room, surface) })
    else gone.push(goneSurface(receiver, through.surface))
  }
  return { crossed, gone }
}

function eachOnce(all: readonly Through[]): readonly Through[] {
  return all.filter((through, at) => all.findIndex(({ surface }) => surface === through.surface) === at)
}

function goneSurface({ name }: Receiver, id: string): UnknownPath {
  const why = `${name}: it is heard through a surface that is no longer in the room. Choose its surfaces again under Targets.`
  return { id, kind: 'surface', label: 'A surface that is gone', element: id, why }
}

/** A surface as sound meets it: with the openings in it, all of its area, and the joint round it. */
export function crossing(room: Room, surface: SurfaceResult): Omit<Crossed, 'through'> {
  const openings = surface.kind === 'wall' ? room.openings.filter(({ wall }) => wall === surface.id) : []
  const grossM2 = openings.reduce((sum, opening) => sum + openingArea(opening), surface.soundAreaM2)
  return { surface, openings, grossM2, perimeterMm: perimeterOf(framesOf(room), surface, grossM2) }
}

type Frames = ReturnType<typeof wallFrames>

const known = new WeakMap<Room, Frames>()

function framesOf(room: Room): Frames {
  const frames = known.get(room) ?? wallFrames(room)
  known.set(room, frames)
  return frames
}

/** Round a wall from its length and its mean height; round ceiling and floor the outline. */
function perimeterOf(frames: Frames, surface: SurfaceResult, grossM2: SquareMetres): Millimetres {
  if (surface.kind !== 'wall') return [...frames.values()].reduce((sum, { lengthMm }) => sum + lengthMm, 0)
  const lengthMm = frames.get(surface.id)?.lengthMm ?? 0
  return lengthMm > 0 ? 2 * (lengthMm + (grossM2 * 1e6) / lengthMm) : 0
}
