import { type BandCurve, EXACT_CENTRES_HZ, type OctaveCurve } from '#acoustics/bands.ts'
import table from '#acoustics/data/duct.json' with { type: 'json' }
import { SOUND_SPEED } from '#acoustics/layered/air.ts'
import { thirdsOfOctaves } from '#acoustics/octaves.ts'
import type { Decibels, Hertz, Millimetres, SquareMetres } from '#units/quantity.ts'
import { invariant } from '#units/result.ts'

/** Where a duct ends: in the plane of a wall, or standing free. */
export type DuctEnd = 'flush' | 'free'

/** A run of duct with the same section all along. */
export interface Section {
  /** Round the inside. */
  readonly perimeterMm: Millimetres
  readonly areaM2: SquareMetres
}

/** Lining on all sides of a straight run. */
export interface LinedRun extends Section {
  readonly liningMm: Millimetres
  readonly lengthM: number
}

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

const { endReflection, lining, bare, bends: bendTable } = table

/** Straight between printed points; held at the first and the last beyond them. */
function between(x: number, xs: readonly number[], ys: readonly number[]): number {
  const above = xs.findIndex((at) => at > x)
  if (above === 0) return ys[0]!
  if (above < 0) return ys.at(-1)!
  const share = (x - xs[above - 1]!) / (xs[above]! - xs[above - 1]!)
  return ys[above - 1]! + share * (ys[above]! - ys[above - 1]!)
}

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

/**
 * Loss of lined duct, dB a metre, where sound fills the section.
 * @param absorption  coefficient of the lining; above 0.8 the rule counts 0.8
 * @source Sabine's rule, METHOD section 12, memory
 */
export function lossPerMetre(absorption: number, { perimeterMm, areaM2 }: Section): Decibels {
  const { factor, exponent, greatestAbsorption } = lining.rule
  return (factor * Math.min(absorption, greatestAbsorption) ** exponent * (perimeterMm / 1000)) / areaM2
}

/** Absorption of a lining by octave, straight between the printed thicknesses. */
function absorptionOf(liningMm: Millimetres): OctaveCurve {
  return table.octavesHz.map((_, octave) =>
    between(
      liningMm,
      lining.thicknessMm,
      lining.absorption.map((row) => row[octave]!),
    ),
  )
}

/** Smaller side of a rectangle with that perimeter and area, m; of a rounder section its diameter. */
function smallestSideM({ perimeterMm, areaM2 }: Section): number {
  const quarter = perimeterMm / 4000
  const difference = quarter ** 2 - areaM2
  return difference >= 0 ? quarter - Math.sqrt(difference) : areaM2 / quarter
}

/**
 * What a lined straight run takes, dB over BANDS_HZ, at most 40. Above c/(2 x smallest side) sound beams past the lining:
 * there the loss falls as the frequency rises (our own choice, the safe side).
 * @source data/duct.json, memory
 */
export function liningLoss(run: LinedRun): BandCurve {
  invariant(run.areaM2 > 0 && run.perimeterMm > 0, 'a duct has a section')
  const absorption = thirdsOfOctaves(absorptionOf(run.liningMm))
  const beamsFromHz = SOUND_SPEED / (2 * smallestSideM(run))
  return EXACT_CENTRES_HZ.map((hz, band) => {
    const filled = Math.min(1, beamsFromHz / hz)
    return Math.min(lining.rule.greatestLossDb, lossPerMetre(absorption[band]!, run) * run.lengthM * filled)
  })
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
