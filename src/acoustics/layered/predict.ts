import { type Anchor, anchorOf } from '#acoustics/anchor/anchor.ts'
import type { BandCurve } from '#acoustics/bands.ts'
import { shiftCurve } from '#acoustics/curve.ts'
import { joinTouchingLeaves } from '#acoustics/layered/compile.ts'
import { guardFloatingFloor } from '#acoustics/layered/floatingFloor.ts'
import { lossCurve } from '#acoustics/layered/lossCurve.ts'
import { METHOD, type Quality } from '#acoustics/layered/method.ts'
import { type Resonance, resonancesOf } from '#acoustics/layered/namedResonances.ts'
import { notesOn, type PredictionNote } from '#acoustics/layered/notes.ts'
import { type Guarded, guardShallowGaps } from '#acoustics/layered/shallowGapGuard.ts'
import { bandSpread, type Family, familyOf, OUTSIDE_RANGE_DB } from '#acoustics/layered/spread.ts'
import type { LayeredSystem } from '#acoustics/layered/system.ts'
import type { Decibels, SquareMetres } from '#units/quantity.ts'
import { invariant } from '#units/result.ts'

/** What is expected of a construction, and how sure that is. */
export interface Prediction {
  /** dB over BANDS_HZ, anchored to print, not capped: shown values end at SHOWN_LOSS_CAP_DB */
  readonly lossDb: BandCurve
  /** dB over BANDS_HZ: the calculation alone, before the shift towards published measurements */
  readonly physicsLossDb: BandCurve
  /** Its shift is the one between the two curves: where a wall limits this one, that wall's shift is in it. */
  readonly anchor: Anchor
  /** Rising in frequency. */
  readonly resonances: readonly Resonance[]
  readonly notes: readonly PredictionNote[]
  /** Kind of construction the spread belongs to. */
  readonly family: Family
  /** One standard deviation of STC; never below 2.0. */
  readonly spreadStcDb: Decibels
  /** One standard deviation by band, dB. */
  readonly spreadBandDb: BandCurve
}

export interface PredictOptions {
  readonly quality: Quality
  /** Area of the specimen; absent: LABORATORY_AREA_M2. */
  readonly areaM2?: SquareMetres | undefined
}

/** Usual area of a test wall, m2: predictions compare with laboratory values. @source ISO 10140-5, memory */
export const LABORATORY_AREA_M2: SquareMetres = 10

/**
 * Airborne transmission loss of leaves and cavities, 50-5000 Hz, with its resonances, doubts and spread.
 * @param system  checked by `checkSystem`: at least one leaf, one cavity less, depths and masses > 0
 * @source nodal form of the transfer-matrix method; parts and their sources in leaf, cavity, link, integrate and data/
 */
export function predictLoss(system: LayeredSystem, options: PredictOptions): Prediction {
  invariant(system.leaves.length > 0, 'a construction has a leaf')
  invariant(system.cavities.length === system.leaves.length - 1, 'a cavity lies between every two leaves')
  const joined = joinTouchingLeaves(system)
  const area = options.areaM2 ?? LABORATORY_AREA_M2
  const anchor = anchorOf(joined)
  const own = lossCurve(joined, area, options.quality, METHOD)
  const physics = (part: LayeredSystem) => (part === joined ? own : lossCurve(part, area, options.quality, METHOD))
  // A wall that limits another is itself anchored: held and limit must be told in the same measure.
  const anchored = (part: LayeredSystem) =>
    shiftCurve(physics(part), (part === joined ? anchor : anchorOf(part)).shiftDb)
  const physicsLossDb = guardCurve(joined, physics).lossDb
  const { lossDb, notes: guardNotes } = guardCurve(joined, anchored)
  const notes = [...guardNotes, ...notesOn(joined)]
  const isOutside = notes.some((note) => note.code === 'outside-range')
  const spreadStcDb = isOutside ? Math.hypot(anchor.sdDb, OUTSIDE_RANGE_DB) : anchor.sdDb
  return {
    lossDb,
    physicsLossDb,
    anchor: { ...anchor, shiftDb: lossDb[0]! - physicsLossDb[0]! },
    resonances: resonancesOf(joined),
    notes,
    family: familyOf(joined),
    spreadStcDb,
    spreadBandDb: bandSpread(spreadStcDb),
  }
}

/** The calculation held to what is known where it is known to say too much. */
function guardCurve(system: LayeredSystem, curve: (part: LayeredSystem) => BandCurve): Guarded {
  const gaps = guardShallowGaps(system, curve(system), curve)
  const floor = guardFloatingFloor(system, gaps.lossDb, curve)
  return { lossDb: floor.lossDb, notes: [...gaps.notes, ...floor.notes] }
}
