import { OCTAVES_HZ, octaveList } from '#acoustics/bands.ts'
import type { ReceiverAnswer } from '#analysis/paths/answer.ts'
import { pathEnergy } from '#analysis/paths/energies.ts'
import { type Arriving, arriving } from '#analysis/paths/levels.ts'
import type { Measured } from '#analysis/target.ts'
import type { Decibels, Hertz } from '#units/quantity.ts'

export interface MeasuredOctave {
  readonly hz: Hertz
  readonly predictedDb: Decibels | null
  readonly measuredDb: Decibels | null
  /** null: one of the two is missing. */
  readonly measuredLessPredictedDb: Decibels | null
  /** Whether the measured difference lies in the likely range of the predicted one. */
  readonly isWithin: boolean | null
}

/** A measured set octave by octave beside what an answer predicts. */
export function measuredOctaves(measured: Measured, answer: ReceiverAnswer): readonly MeasuredOctave[] {
  const predicted = octaveList(answer.differenceDb)
  const { middle, high, low } = arrivingOf(answer)
  return octaveList(measured.differenceDb).map((measuredDb, octave) => {
    const hz = OCTAVES_HZ[octave]!
    const predictedDb = predicted[octave] ?? null
    if (measuredDb === null || predictedDb === null) {
      return { hz, predictedDb, measuredDb, measuredLessPredictedDb: null, isWithin: null }
    }
    const off = measuredDb - predictedDb
    // Without the source's own uncertainty, which a level difference does not know.
    const lessDb = 10 * Math.log10(high[octave]! / middle[octave]!)
    const moreDb = 10 * Math.log10(middle[octave]! / low[octave]!)
    return { hz, predictedDb, measuredDb, measuredLessPredictedDb: off, isWithin: off >= -lessDb && off <= moreDb }
  })
}

/**
 * What all paths bring, in the measure they share: where a receiver stands and how it absorbs moves the middle and both
 * ends alike, so it does not matter to how far the ends are off.
 */
function arrivingOf({ paths }: ReceiverAnswer): Arriving {
  return arriving(
    paths.map(({ path }) => {
      const isOutdoors = path.distanceMm !== null
      return pathEnergy(path, isOutdoors ? { kind: 'outdoors', reflectedDb: 0 } : { kind: 'room', absorptionM2: 1 })
    }),
  )
}
