import type { BandCurve } from '#acoustics/bands.ts'
import { capForDisplay } from '#acoustics/curve.ts'
import type { Prediction } from '#acoustics/layered/predict.ts'
import { isFarEnough } from '#acoustics/levels.ts'
import { type Crossed, endsAt, type Found, joined, NOTHING, type PathSetting } from '#analysis/paths/setting.ts'
import type { Note, SurfaceResult } from '#analysis/results.ts'
import type { Receiver } from '#analysis/target.ts'

/** The ways straight through the surfaces a receiver is behind. */
export function surfacePaths({ receiver, crossed }: PathSetting): Found {
  return joined(crossed.map((one) => surfacePath(receiver, one)))
}

function surfacePath(receiver: Receiver, one: Crossed): Found {
  const { surface, through } = one
  const { id, label, rating, soundAreaM2 } = surface
  const known = { id, kind: 'surface', label, element: id } as const
  const soil = soilNote(surface)
  if (soil) return { ...NOTHING, notes: [soil] }
  if (!rating) return { ...NOTHING, unknown: [{ ...known, why: whyUnrated(surface) }] }
  if (!(soundAreaM2 > 0)) {
    if (one.openings.length === 0) return NOTHING
    const why = `${label}: the openings in it are together larger than the wall. Check their sizes and the wall's.`
    return { ...NOTHING, unknown: [{ ...known, why }] }
  }
  const ends = endsAt(receiver, through)
  const path = {
    ...known,
    areaM2: soundAreaM2,
    lossDb: cappedLoss(rating.prediction),
    sdDb: rating.prediction.spreadBandDb,
    basis: 'calculated' as const,
    ...ends,
    notes: nearNotes(one, ends.distanceMm),
  }
  return { ...NOTHING, paths: [path] }
}

const capped = new WeakMap<Prediction, BandCurve>()

/** A surface's curve as it is shown and summed; the same object for as long as the prediction is. */
export function cappedLoss(prediction: Prediction): BandCurve {
  const curve = capped.get(prediction) ?? capForDisplay(prediction.lossDb)
  capped.set(prediction, curve)
  return curve
}

function soilNote({ label, notes }: SurfaceResult): Note | null {
  const isSoil = notes.some(({ code }) => code === 'soil')
  return isSoil ? { code: 'soil', text: `${label}: there is soil behind it, so no sound goes that way.` } : null
}

/** What a surface without a figure says about itself. */
function whyUnrated({ label, notes }: SurfaceResult): string {
  const said = notes.find(({ code }) => code === 'floating-floor' || code === 'not-predicted')
  return said?.text ?? `${label}: nothing is predicted for what is built there. Choose another build-up.`
}

function nearNotes({ surface, grossM2 }: Crossed, distanceMm: number | null): readonly Note[] {
  if (distanceMm === null || isFarEnough(grossM2, distanceMm)) return []
  const least = Math.ceil(15 * Math.sqrt(grossM2)) / 10
  const text = `${surface.label} is large for how near the receiver stands: the formula holds from about ${least} m on, and nearer it says too much.`
  return [{ code: 'too-near', text }]
}
