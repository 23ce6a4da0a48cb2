import { BANDS_HZ, type BandCurve, OCTAVE_KEYS, octaveValues } from '#acoustics/bands.ts'
import type { PathShare, ReceiverAnswer } from '#analysis/paths/answer.ts'
import { limitWords } from '#analysis/paths/answerWords.ts'
import { BEAT_DB } from '#analysis/paths/limits.ts'
import type { MeasuredComparison } from '#analysis/paths/measuredAgainst.ts'
import type { NextStep } from '#analysis/paths/nextSteps.ts'
import type { Note } from '#analysis/results.ts'
import type { Heard } from '#reports/heard.ts'
import type { Decibels } from '#units/quantity.ts'

/** A receiver as the command line's JSON says it; unknown numbers are null and a note says why. Never rounded. */
export function receiverReport(heard: Heard) {
  const { receiver, source, answer } = heard
  return {
    id: answer.receiverId,
    name: answer.name,
    marginDb: answer.marginDb,
    marginLow95Db: answer.marginLow95Db,
    marginHigh95Db: answer.marginHigh95Db,
    worstBandHz: answer.worstBandHz,
    dominantBandHz: answer.dominantBandHz,
    nic: answer.nic,
    levelsDb: octaveValues(answer.levelsDb),
    levelsLow95Db: octaveValues(answer.levelsLow95Db),
    levelsHigh95Db: octaveValues(answer.levelsHigh95Db),
    limitDb: limitReport(answer),
    limit: receiver.limit,
    hasBeat: receiver.hasBeat,
    levelA: answer.levelA,
    levelC: answer.levelC,
    verdict: answer.verdictWords,
    sentence: answer.sentence,
    place: receiver.place,
    source: source && { id: source.id, name: source.name, basis: source.basis, sdDb: source.sdDb },
    sourceDb: octaveValues(answer.sourceDb),
    noiseReductionDb: answer.noiseReductionDb && byBand(answer.noiseReductionDb),
    differenceDb: answer.differenceDb,
    laboratoryStc: answer.siteLoss?.laboratoryStc ?? null,
    expectedStc: answer.siteLoss?.expectedStc ?? null,
    lowestResonanceHz: answer.lowestResonanceHz,
    paths: answer.paths.map(pathReport),
    unknown: answer.unknown.map(({ id, kind, label, why }) => ({ id, kind, label, why })),
    measured: (heard.measured ?? []).map(measuredReport),
    nextSteps: heard.nextSteps?.map(stepReport) ?? null,
    notes: receiverNotes(heard),
  }
}

/** By octave, beat taken off; of a weighted limit its one number by its letter: {"A": 45}. */
function limitReport({ limit, limitDb, limitOverallDb }: ReceiverAnswer): Readonly<Record<string, Decibels | null>> {
  if (limitDb) return Object.fromEntries(OCTAVE_KEYS.map((key, i) => [key, limitDb[i] ?? null]))
  return { [limit.kind === 'dBC' ? 'C' : 'A']: limitOverallDb }
}

function byBand(curve: BandCurve): Readonly<Record<string, Decibels>> {
  return Object.fromEntries(BANDS_HZ.map((hz, i) => [String(hz), curve[i] ?? 0]))
}

function pathReport({ path, share, shareAtWorstBand, gainIfClosedDb }: PathShare) {
  return {
    id: path.id,
    kind: path.kind,
    label: path.label,
    element: path.element,
    areaM2: path.areaM2,
    share,
    shareAtWorstBand,
    gainIfClosedDb,
    basis: path.basis,
    distanceMm: path.distanceMm,
    screenedDb: path.screenedDb,
  }
}

function measuredReport({ measured, against, octaves, fits, sentences }: MeasuredComparison) {
  return { ...measured, against, octaves, fits, sentences }
}

function stepReport(step: NextStep) {
  const { pathId, label, gainDb, gainLow95Db, areaLostM2, heightLostMm, addedMassKg, cautions } = step
  return {
    path: pathId,
    label,
    gainDb,
    gainLow95Db,
    areaLostM2,
    heightLostMm,
    addedMassKg,
    cautions,
    change: step.change,
  }
}

/** The answer's own, what the limit is after beat, and why a number is null. */
export function receiverNotes({ receiver, answer }: Heard): readonly Note[] {
  const beat = `The limit is ${limitWords(receiver.limit)} less ${BEAT_DB} dB for beat or tone.`
  return [
    ...(answer.marginDb === null ? [{ code: 'not-known', text: answer.sentence }] : []),
    ...(receiver.hasBeat ? [{ code: 'beat', text: beat }] : []),
    ...answer.notes,
  ]
}
