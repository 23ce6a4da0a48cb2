import type { Path, UnknownPath } from '#analysis/paths/answer.ts'
import type { AnswerInput } from '#analysis/paths/answerReceivers.ts'
import type { Note, SurfaceResult } from '#analysis/results.ts'
import type { Opening } from '#analysis/room.ts'
import type { Receiver, Through } from '#analysis/target.ts'
import type { Decibels, Millimetres, SquareMetres } from '#units/quantity.ts'

/** What one kind of path adds to a receiver. */
export interface Found {
  readonly paths: readonly Path[]
  readonly unknown: readonly UnknownPath[]
  /** Full sentences on what was left out or taken for granted. */
  readonly notes: readonly Note[]
}

export const NOTHING: Found = { paths: [], unknown: [], notes: [] }

/** Several kinds together, in order. */
export function joined(found: readonly Found[]): Found {
  return {
    paths: found.flatMap(({ paths }) => paths),
    unknown: found.flatMap(({ unknown }) => unknown),
    notes: found.flatMap(({ notes }) => notes),
  }
}

/** A surface that sound goes through, as it is in the scheme. */
export interface Crossed {
  readonly through: Through
  readonly surface: SurfaceResult
  /** Of a wall those in it. */
  readonly openings: readonly Opening[]
  /** The surface with its openings. */
  readonly grossM2: SquareMetres
  /** All round it, for the gap at its edges. */
  readonly perimeterMm: Millimetres
}

/** Everything the paths of one receiver are made from. */
export interface PathSetting {
  readonly input: AnswerInput
  readonly receiver: Receiver
  readonly crossed: readonly Crossed[]
}

/** Where a path ends, for a receiver in the open. */
export function endsAt(
  receiver: Receiver,
  through: Through | undefined,
): { distanceMm: Millimetres | null; screenedDb: Decibels } {
  if (receiver.place.kind !== 'outdoors') return { distanceMm: null, screenedDb: 0 }
  const own = through?.distanceMm ?? 0
  return { distanceMm: own > 0 ? own : receiver.place.distanceMm, screenedDb: through?.screenedDb ?? 0 }
}
