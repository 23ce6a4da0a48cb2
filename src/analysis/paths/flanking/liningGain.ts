import type { BandCurve } from '#acoustics/bands.ts'
import { capForDisplay, flatCurve } from '#acoustics/curve.ts'
import table from '#analysis/data/junctions.json' with { type: 'json' }
import type { AnswerInput } from '#analysis/paths/answerReceivers.ts'
import type { Note, SurfaceResult } from '#analysis/results.ts'
import type { Room, SurfaceFacts } from '#analysis/room.ts'
import { type Choice, choiceFor } from '#analysis/scheme.ts'
import { describeSurface } from '#analysis/surfaces.ts'
import { AS_IS } from '#assemblies/assembly.ts'
import type { Decibels } from '#units/quantity.ts'

/** What a lining takes off the sound that runs along a surface, and what could not be told. */
export interface LiningGain {
  readonly gainDb: BandCurve
  readonly notes: readonly Note[]
}

const NO_GAIN: LiningGain = { gainDb: flatCurve(0), notes: [] }
const AS_IT_STANDS: Choice = { assembly: AS_IS, removeLining: false }
const MOST_DB: Decibels = table.linedHere.mostDb

/**
 * Gain of a lined surface over the same one as it stands, dB over BANDS_HZ, from 0 to `linedHere.mostDb`.
 * @source data/junctions.json, own choice
 */
export function liningGain(input: AnswerInput, surface: SurfaceResult): LiningGain {
  const facts = factsOf(input.room, surface.id)
  if (!facts || (surface.assembly === AS_IS && !surface.removeLining)) return NO_GAIN
  const lined = curveUnder(input, surface, facts, choiceFor(input.scheme, surface.id))
  const asItStands = curveUnder(input, surface, facts, AS_IT_STANDS)
  if (!lined || !asItStands) {
    const text = `${surface.label}: what is built there has no figure, so nothing is counted for it in what goes round.`
    return { gainDb: NO_GAIN.gainDb, notes: [{ code: 'flanking-lining-unknown', text }] }
  }
  return { gainDb: gainOver(asItStands, lined), notes: [] }
}

function gainOver(asItStands: BandCurve, lined: BandCurve): BandCurve {
  return lined.map((loss, band) => Math.min(MOST_DB, Math.max(0, loss - asItStands[band]!)))
}

function curveUnder(
  { catalogue }: AnswerInput,
  { kind, label }: SurfaceResult,
  facts: SurfaceFacts,
  choice: Choice,
): BandCurve | null {
  const { rating } = describeSurface({ facts: onAir(facts), kind, label, choice, catalogue, quality: 'drag' })
  return rating && capForDisplay(rating.prediction.lossDb)
}

const liftedOff = new WeakMap<SurfaceFacts, SurfaceFacts>()

/** A slab on soil carries sound along as any slab does: asked for its gain, it is taken as if there were air under it. */
function onAir(facts: SurfaceFacts): SurfaceFacts {
  if (facts.farSide !== 'soil') return facts
  const lifted = liftedOff.get(facts) ?? { ...facts, farSide: 'nothing' }
  liftedOff.set(facts, lifted)
  return lifted
}

function factsOf(room: Room, id: string): SurfaceFacts | undefined {
  return [...room.walls, room.ceiling, room.floor].find((facts) => facts.id === id)
}
