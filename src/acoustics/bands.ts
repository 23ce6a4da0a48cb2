import type { Decibels, Hertz } from '#units/quantity.ts'

/**
 * The 21 one-third octaves every curve of this program is given over, Hz, by their nominal names.
 * @source ISO 266 preferred frequencies, memory
 */
export const BANDS_HZ: readonly Hertz[] = [
  50, 63, 80, 100, 125, 160, 200, 250, 315, 400, 500, 630, 800, 1000, 1250, 1600, 2000, 2500, 3150, 4000, 5000,
]

/** Number of the 50 Hz band in the base-ten series: its exact centre is 10^(17/10) Hz. @source IEC 61260-1, memory */
const FIRST_BAND_NUMBER = 17

/** Exact centres, Hz: the frequencies the physics is computed at. */
export const EXACT_CENTRES_HZ: readonly Hertz[] = BANDS_HZ.map((_, i) => 10 ** ((FIRST_BAND_NUMBER + i) / 10))

/** dB over BANDS_HZ, 21 numbers. */
export type BandCurve = readonly Decibels[]

/** Octaves a third-octave curve can be told in, Hz. */
export const OCTAVES_HZ: readonly Hertz[] = [63, 125, 250, 500, 1000, 2000, 4000]

/** dB over OCTAVES_HZ, 7 numbers. */
export type OctaveCurve = readonly Decibels[]

/** Names of the octaves in files, Hz. */
export type OctaveKey = '63' | '125' | '250' | '500' | '1000' | '2000' | '4000'
export const OCTAVE_KEYS: readonly OctaveKey[] = ['63', '125', '250', '500', '1000', '2000', '4000']

/** One value an octave, as files keep them; null: nobody has said. */
export type OctaveValues = Readonly<Record<OctaveKey, number | null>>

/** The same in the order of OCTAVES_HZ. */
export function octaveList(values: OctaveValues): readonly (number | null)[] {
  return OCTAVE_KEYS.map((key) => values[key])
}

/** Values in the order of OCTAVES_HZ by name; a missing one is null. */
export function octaveValues(list: readonly (number | null | undefined)[]): OctaveValues {
  const at = (index: number) => list[index] ?? null
  return { 63: at(0), 125: at(1), 250: at(2), 500: at(3), 1000: at(4), 2000: at(5), 4000: at(6) }
}

/** Place of a nominal frequency in BANDS_HZ; -1 when it is none of them. */
export function bandIndex(hz: Hertz): number {
  return BANDS_HZ.indexOf(hz)
}

/** True for 21 finite numbers. */
export function isBandCurve(values: readonly number[]): values is BandCurve {
  return values.length === BANDS_HZ.length && values.every(Number.isFinite)
}
