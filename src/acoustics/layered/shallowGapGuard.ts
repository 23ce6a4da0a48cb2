import type { BandCurve } from '#acoustics/bands.ts'
import { shiftCurve } from '#acoustics/curve.ts'
import { type PredictionNote, shallowGaps } from '#acoustics/layered/notes.ts'
import type { LayeredSystem } from '#acoustics/layered/system.ts'
import { rate, STC_IN_TENTHS } from '#acoustics/rating.ts'
import type { Decibels } from '#units/quantity.ts'

/** Most a leaf over a shallow gap may be credited with, STC. @source own rule; the physics misses this trap */
const MOST_GAIN_DB: Decibels = 3

/** A curve after the guard, and the note that tells of it. */
export interface Guarded {
  readonly lossDb: BandCurve
  readonly notes: readonly PredictionNote[]
}

/** The walls that remain when an outer leaf over a shallow gap is taken away; only walls of two leaves or more. */
function wallsWithoutAddedLeaf(system: LayeredSystem): readonly LayeredSystem[] {
  const { leaves, cavities } = system
  if (leaves.length < 3) return []
  const gaps = shallowGaps(system)
  const walls: LayeredSystem[] = []
  if (gaps.includes(0)) walls.push({ leaves: leaves.slice(1), cavities: cavities.slice(1) })
  if (gaps.includes(cavities.length - 1)) walls.push({ leaves: leaves.slice(0, -1), cavities: cavities.slice(0, -1) })
  return walls
}

/**
 * Lowers the whole curve where a board over a shallow gap would be credited with more than 3 STC over the wall it
 * covers: such walls measure 15-20 below what any calculation of this kind says.
 * @param predict  the method itself
 * @source trade report of 15-20 points below design, seen; limit of 3 our own choice
 */
export function guardShallowGaps(
  system: LayeredSystem,
  lossDb: BandCurve,
  predict: (system: LayeredSystem) => BandCurve,
): Guarded {
  const walls = wallsWithoutAddedLeaf(system)
  if (walls.length === 0) return { lossDb, notes: [] }
  const limits = walls.map((wall) => rate(predict(wall), STC_IN_TENTHS).value + MOST_GAIN_DB)
  const calculated = rate(lossDb, STC_IN_TENTHS).value
  const excess = calculated - Math.min(...limits)
  if (!(excess > 0)) return { lossDb, notes: [] }
  const text = `Held to ${MOST_GAIN_DB} STC above the wall without the leaf over the shallow gap; the calculation alone says ${Math.floor(calculated)}, which measured walls of this kind do not reach.`
  return { lossDb: shiftCurve(lossDb, -excess), notes: [{ code: 'held-to-existing', text }] }
}
