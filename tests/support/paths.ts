import { type BandCurve, OCTAVE_KEYS, octaveValues } from '#acoustics/bands.ts'
import { flatCurve } from '#acoustics/curve.ts'
import { thirdsOfOctaves } from '#acoustics/octaves.ts'
import type { Path, ReceiverAnswer } from '#analysis/paths/answer.ts'
import { type AnswerInput, answerReceivers } from '#analysis/paths/answerReceivers.ts'
import type { SchemeResult, SurfaceResult } from '#analysis/results.ts'
import type { Room } from '#analysis/room.ts'
import type { Scheme } from '#analysis/scheme.ts'
import type { Receiver, Source } from '#analysis/target.ts'
import { aRoom, aScheme, box, resultsOf } from './rooms.ts'
import { CATALOGUE } from './samples.ts'

/** A curve over all bands from 7 octaves, or the same everywhere. */
export function aCurve(of: number | readonly number[]): BandCurve {
  return typeof of === 'number' ? flatCurve(of) : thirdsOfOctaves(of)
}

/** A path of 10 m2 with 40 dB in all bands, known exactly. */
export function aPath(change: Partial<Path> = {}): Path {
  return {
    id: 'wall-1',
    kind: 'surface',
    label: 'Wall 1',
    element: 'wall-1',
    areaM2: 10,
    lossDb: flatCurve(40),
    sdDb: flatCurve(0),
    basis: 'calculated',
    distanceMm: null,
    screenedDb: 0,
    notes: [],
    ...change,
  }
}

/** 100 dB in every octave, known exactly. */
export function aSource(change: Partial<Source> = {}): Source {
  return {
    id: 'source-1',
    name: 'Kit',
    preset: null,
    levelsDb: octaveValues(OCTAVE_KEYS.map(() => 100)),
    place: 'room-average',
    basis: 'measured',
    sdDb: 0,
    shakes: false,
    ...change,
  }
}

/** A bedroom behind the first wall that absorbs 10 m2, with nothing counted round the junction, held to NC-25. */
export function aReceiver(change: Partial<Receiver> = {}): Receiver {
  return {
    id: 'receiver-1',
    name: 'Bedroom',
    room: 'room-1',
    source: 'source-1',
    place: { kind: 'room', volumeM3: 30, furnishing: 'typed', absorptionM2: 10 },
    through: [{ surface: 'wall-1' }],
    limit: { kind: 'NC', index: 25 },
    limitPreset: null,
    hasBeat: false,
    backgroundNc: 20,
    junction: 'none',
    linedBeyond: 'none',
    measured: [],
    ...change,
  }
}

/** What a surface is given in a test in place of what its layers would give. */
export interface Given {
  readonly lossDb: BandCurve
  readonly sdDb?: BandCurve
  readonly areaM2?: number
}

/** The results with these surfaces' curves and areas; the rest as it is. */
export function withCurves(result: SchemeResult, given: Readonly<Record<string, Given>>): SchemeResult {
  return { ...result, surfaces: result.surfaces.map((surface) => withCurve(surface, given[surface.id])) }
}

function withCurve(surface: SurfaceResult, given: Given | undefined): SurfaceResult {
  const { rating } = surface
  if (!given || !rating) return surface
  const prediction = { ...rating.prediction, lossDb: given.lossDb, spreadBandDb: given.sdDb ?? flatCurve(0) }
  return { ...surface, soundAreaM2: given.areaM2 ?? surface.soundAreaM2, rating: { ...rating, prediction } }
}

/** Everything sealed, so that a test adds the leaks it means. */
export const SEALED: Partial<Scheme> = { airtightness: 'sealed' }

export interface Asked {
  readonly room?: Room
  readonly scheme?: Scheme
  readonly given?: Readonly<Record<string, Given>>
  readonly source?: Partial<Source>
  readonly receiver?: Partial<Receiver>
  readonly catalogue?: AnswerInput['catalogue']
}

/** 5 m by 4 m, 2.4 m high, four walls and a ceiling to the outside. */
export const HALL = aRoom(box(0, 0, 5000, 4000))

/** What there is to answer about one receiver of a room; sealed, and with the curves given. */
export function anInput(asked: Asked = {}): AnswerInput {
  const room = asked.room ?? HALL
  const scheme = asked.scheme ?? aScheme({}, SEALED)
  return {
    room,
    scheme,
    result: withCurves(resultsOf(room, scheme), asked.given ?? {}),
    sources: [aSource(asked.source)],
    receivers: [aReceiver({ room: room.id, ...asked.receiver })],
    catalogue: asked.catalogue ?? CATALOGUE,
  }
}

/** What that receiver hears. */
export function answerTo(asked: Asked = {}): ReceiverAnswer {
  const [answer] = answerReceivers(anInput(asked))
  if (!answer) throw new Error('no receiver of this room')
  return answer
}

/** Levels of an answer in whole tenths, for comparing with a table. */
export function tenths(values: readonly (number | null)[]): readonly (number | null)[] {
  return values.map((value) => value && Math.round(value * 10) / 10)
}
