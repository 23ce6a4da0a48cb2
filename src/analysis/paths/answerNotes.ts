import { OCTAVES_HZ } from '#acoustics/bands.ts'
import type { Path } from '#analysis/paths/answer.ts'
import { limitNotes } from '#analysis/paths/limits.ts'
import type { Played } from '#analysis/paths/sourceLevels.ts'
import type { Note, SchemeResult } from '#analysis/results.ts'
import type { Receiver, Source } from '#analysis/target.ts'
import type { Hertz } from '#units/quantity.ts'

/** Said beside every margin for what also shakes the building; word for word. */
export const STRUCTURE_BORNE = 'Structure-borne sound and bass below 50 Hz are not in this figure'

/** Presets that shake the building, whatever a copy of them says: drums, bass, bands, cinemas. */
const SHAKING = /drum|kit|bass|band|cinema|foot/

/** Lowest frequency at which one of the build-ups swings on its air or its springs, Hz; null: none is known. */
export function lowestResonanceOf(paths: readonly Path[], { surfaces }: SchemeResult): Hertz | null {
  const crossed = surfaces.filter(({ id }) => paths.some((path) => path.kind === 'surface' && path.id === id))
  const swings = crossed.flatMap(({ rating }) =>
    (rating?.prediction.resonances ?? []).filter(({ kind }) => kind !== 'coincidence').map(({ hz }) => hz),
  )
  return swings.length === 0 ? null : Math.min(...swings)
}

/** What must be said beside the sum itself, before what its paths say. */
export function answerNotes(receiver: Receiver, played: Played | null, lowestHz: Hertz | null): readonly Note[] {
  if (played === null) return limitNotes(receiver)
  return [
    ...structureBorne(played.source, lowestHz),
    ...silentNotes(played, receiver),
    ...placeNotes(played.source),
    ...limitNotes(receiver),
    ...nicNotes(receiver, played.source),
  ]
}

function structureBorne({ shakes, preset }: Source, lowestHz: Hertz | null): readonly Note[] {
  if (!shakes && !SHAKING.test(preset ?? '')) return []
  const lowest = lowestHz === null ? 'none known' : `${Math.round(lowestHz)} Hz`
  const text = `${STRUCTURE_BORNE}; lowest resonance of the build-ups: ${lowest}.`
  return [{ code: 'structure-borne', text }]
}

/** What is not stated counts as nothing in a weighted sum, which is then no more than a least value. */
function silentNotes({ source, levelsDb }: Played, { limit }: Receiver): readonly Note[] {
  const silent = OCTAVES_HZ.filter((_, octave) => levelsDb[octave] === null)
  if (silent.length === 0) return []
  const at = `${source.name} has no level at ${silent.join(', ')} Hz`
  const text =
    'levelDb' in limit
      ? `${at}, so the ${limit.kind} value is without them: the level is at least this, and the margin at most.`
      : `${at}, so nothing is judged there.`
  return [{ code: 'no-level', text }]
}

function placeNotes({ name, place }: Source): readonly Note[] {
  if (place !== 'one-metre') return []
  const text = `${name}: its levels are one metre from a talker; in the room they are taken as the diffuse level of the same power.`
  return [{ code: 'one-metre', text }]
}

/** A difference between two rooms: not defined in the open, nor for what comes in from it. */
export function isBetweenRooms({ place }: Receiver, source: Source | null): boolean {
  return place.kind === 'room' || (place.kind === 'this-room' && source !== null && source.place !== 'facade')
}

function nicNotes(receiver: Receiver, source: Source): readonly Note[] {
  if (isBetweenRooms(receiver, source)) return []
  const text = 'NIC is a figure between two rooms, so there is none here.'
  return [{ code: 'no-nic', text }]
}

/** Each sentence once, in order. */
export function eachOnce(notes: readonly Note[]): readonly Note[] {
  return notes.filter(({ text }, at) => notes.findIndex((note) => note.text === text) === at)
}
