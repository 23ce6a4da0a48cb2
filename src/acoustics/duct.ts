import { type BandCurve, EXACT_CENTRES_HZ } from '#acoustics/bands.ts'
import { between } from '#acoustics/between.ts'
import table from '#acoustics/data/duct.json' with { type: 'json' }
import { SOUND_SPEED } from '#acoustics/layered/air.ts'
import { liningLoss, type Section } from '#acoustics/lining.ts'
import { thirdsOfOctaves } from '#acoustics/octaves.ts'
import type { Decibels, Hertz, Millimetres, SquareMetres } from '#units/quantity.ts'
import { invariant } from '#units/result.ts'

/** Where a duct ends: in the plane of a wall, or standing free. */
export type DuctEnd = 'flush' | 'free'

/** A duct from grille to grille. */
export interface DuctRun extends Section {
  readonly lengthM: number
  readonly liningMm: Millimetres
  /** Of its length; more than the length counts as all of it. */
  readonly linedLengthM: number
  readonly bends: number
  /** dB by octave; null: not stated, counted as 0. */
  readonly silencerDb: readonly (Decibels | null)[]
  readonly end: DuctEnd
}

const { endReflection, bare, bends: bendTable } = table

function reflectionFormula(hz: Hertz, diameterM: number, end: DuctEnd): Decibels {
  const { exponent } = endReflection.formula
  const size = (endReflection.formula[end] * SOUND_SPEED) / (Math.PI * hz * diameterM)
  return 10 * Math.log10(1 + size ** exponent)
}

const PRINTED_SIZES = endReflection.hzMetres.map(Math.log2)

/** The printed table, on octaves of frequency times size. */
function reflectionPrinted(hz: Hertz, diameterM: number): Decibels {
  return between(Math.log2(hz * diameterM), PRINTED_SIZES, endReflection.lossDb)
}

/**
 * What the open end of a duct sends back, dB over BANDS_HZ: the lower of the formula and the printed table, the safe side.
 * @param areaM2  of the opening; a rectangle counts as the circle of the same area
 * @source formula ASHRAE, memory; table data/duct.json, seen, 0 to 3 dB lower
 */
export function endReflectionLoss(areaM2: SquareMetres, end: DuctEnd): BandCurve {
  invariant(areaM2 > 0, 'a duct has an opening')
  const diameterM = Math.sqrt((4 * areaM2) / Math.PI)
  return EXACT_CENTRES_HZ.map((hz) => Math.min(reflectionFormula(hz, diameterM, end), reflectionPrinted(hz, diameterM)))
}

/** What right-angled bends take, dB over BANDS_HZ. @source data/duct.json, memory, lower ends */
export function bendLoss(bends: number, isLined: boolean): BandCurve {
  const each = isLined ? bendTable.lined.lossDb : bendTable.bare.lossDb
  return thirdsOfOctaves(each.map((loss) => loss * bends))
}

/**
 * Transmission loss of a duct for the area of its own opening, dB over BANDS_HZ: the end's reflection once, lining, bare
 * sheet, bends and silencer. Sound through the duct's own walls is not in it.
 * @source sum of its parts, own, METHOD section 12
 */
export function ductLoss(run: DuctRun): BandCurve {
  const linedM = run.liningMm > 0 ? Math.min(run.linedLengthM, run.lengthM) : 0
  const reflected = endReflectionLoss(run.areaM2, run.end)
  const lined = liningLoss({ ...run, lengthM: linedM })
  const bent = bendLoss(run.bends, linedM > 0)
  const silenced = thirdsOfOctaves(table.octavesHz.map((_, octave) => run.silencerDb[octave] ?? 0))
  const sheet = bare.lossDbPerMetre * (run.lengthM - linedM)
  return reflected.map((loss, band) => loss + lined[band]! + bent[band]! + silenced[band]! + sheet)
}
