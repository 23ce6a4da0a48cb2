import { type BandCurve, OCTAVES_HZ, type OctaveCurve } from '#acoustics/bands.ts'
import { between } from '#acoustics/between.ts'
import table from '#acoustics/data/duct.json' with { type: 'json' }
import { thirdsOfOctaves } from '#acoustics/octaves.ts'
import { type Decibels, type Millimetres, MM_PER_FOOT, MM_PER_INCH, type SquareMetres } from '#units/quantity.ts'
import { invariant } from '#units/result.ts'

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

const { absorption, printed, rule, thicknessMm } = table.lining
const FEET_PER_METRE = 1000 / MM_PER_FOOT

/**
 * Loss of lined duct, dB a metre, where sound fills the section.
 * @param coefficient  absorption of the lining; above 0.8 the rule counts 0.8
 * @source Sabine's rule, METHOD section 12, memory
 */
export function lossPerMetre(coefficient: number, { perimeterMm, areaM2 }: Section): Decibels {
  const counted = Math.min(coefficient, rule.greatestAbsorption)
  return (rule.factor * counted ** rule.exponent * (perimeterMm / 1000)) / areaM2
}

/** One row by octave, straight between the rows of a table. */
function rowBetween(x: number, xs: readonly number[], rows: readonly OctaveCurve[]): OctaveCurve {
  return OCTAVES_HZ.map((_, octave) =>
    between(
      x,
      xs,
      rows.map((row) => row[octave]!),
    ),
  )
}

/** A square has (P/4)^2 = S, which nothing rectangular goes under, and a circle 0.79 S. */
const SQUARE_OR_ROUND = 0.9

function isRound({ perimeterMm, areaM2 }: Section): boolean {
  return (perimeterMm / 4000) ** 2 < SQUARE_OR_ROUND * areaM2
}

/** Most that any lining of that thickness counts for, dB a metre by octave. @source data/duct.json, seen */
function printedPerMetre({ liningMm, perimeterMm, areaM2 }: LinedRun, round: boolean): OctaveCurve {
  const perFt = round
    ? rowBetween(perimeterMm / Math.PI / MM_PER_INCH, printed.round.diameterIn, printed.round.lossDbPerFt)
    : rowBetween(
        perimeterMm / 1000 / areaM2 / FEET_PER_METRE,
        printed.rectangular.perimeterOverAreaPerFt,
        printed.rectangular.lossDbPerFt,
      )
  const isThin = liningMm < printed.thinner.belowMm
  return perFt.map((loss, octave) => loss * FEET_PER_METRE * (isThin ? printed.thinner.share[octave]! : 1))
}

/**
 * What a lined straight run takes, dB over BANDS_HZ, at most 40: the lower of Sabine's rule and the printed tables, which
 * fall far below it where the wave is long or very short; never less than bare sheet.
 * @source data/duct.json: rule memory, tables seen
 */
export function liningLoss(run: LinedRun): BandCurve {
  invariant(run.areaM2 > 0 && run.perimeterMm > 0, 'a duct has a section')
  const coefficients = rowBetween(run.liningMm, thicknessMm, absorption)
  const most = printedPerMetre(run, isRound(run))
  const byOctave = coefficients.map((coefficient, octave) => {
    const perMetre = Math.max(table.bare.lossDbPerMetre, Math.min(lossPerMetre(coefficient, run), most[octave]!))
    return Math.min(rule.greatestLossDb, perMetre * run.lengthM)
  })
  return thirdsOfOctaves(byOctave)
}
