import { BANDS_HZ, type BandCurve, OCTAVE_KEYS, type OctaveKey } from '#acoustics/bands.ts'
import { capForDisplay, flatCurve, shiftCurve } from '#acoustics/curve.ts'
import { thirdsOfOctaves } from '#acoustics/octaves.ts'
import { rate, STC } from '#acoustics/rating.ts'
import table from '#assemblies/data/openings.json' with { type: 'json' }
import type { Layer } from '#assemblies/layer.ts'
import type { OpeningLoss, Pane, PanePair } from '#assemblies/opening.ts'
import { predictLayers } from '#assemblies/predict.ts'
import type { Decibels } from '#units/quantity.ts'
import { fail, invariant, ok, type Result } from '#units/result.ts'

/** What one leaf, sash or filling lets through by itself, its seals as they were tested. */
export interface OpeningCurve {
  /** dB over BANDS_HZ, for its own area, >= 0. */
  readonly lossDb: BandCurve
  /** One standard deviation by band. */
  readonly sdDb: BandCurve
  /** One standard deviation of the single number. */
  readonly sdStcDb: Decibels
  /** Octaves nobody has printed or calculated: extended by a rule. */
  readonly assumed: readonly OctaveKey[]
}

type Octaves = Extract<OpeningLoss, { kind: 'octaves' }>

/** Octaves in print over BANDS_HZ, each third with its octave's; 63 Hz extended by mass law where it was not printed. */
export function octavesCurve({ lossDb, sdDb }: Octaves): OpeningCurve {
  const lowest = lossDb['125']
  invariant(lowest !== undefined, 'a printed curve begins at 125 Hz at the latest')
  const extended = Math.max(0, lowest - table.extension.fallDbPerOctave)
  const isPrinted = lossDb['63'] !== undefined
  const byOctave = OCTAVE_KEYS.map((key) => {
    const value = lossDb[key]
    invariant(value !== undefined || key === '63', 'a printed curve has every octave above 63 Hz')
    return value ?? extended
  })
  const spread = OCTAVE_KEYS.map((key) => (key === '63' && !isPrinted ? Math.hypot(sdDb, table.extension.sdDb) : sdDb))
  return {
    lossDb: thirdsOfOctaves(byOctave),
    sdDb: thirdsOfOctaves(spread),
    sdStcDb: sdDb * table.singleNumber.ofBands,
    assumed: isPrinted ? [] : ['63'],
  }
}

/** Below its own lowest band the contour is taken on at the slope of the mass law, dB a third. */
const FALL_PER_THIRD = table.extension.fallDbPerOctave / 3

/** The STC contour over BANDS_HZ against its value at 500 Hz. */
function contourShape(): BandCurve {
  const relative = STC.contourRelativeTo500HzDb
  const first = BANDS_HZ.indexOf(STC.firstBandHz)
  return BANDS_HZ.map((_, band) => {
    if (band < first) return relative[0]! - FALL_PER_THIRD * (first - band)
    return relative[band - first] ?? relative.at(-1)!
  })
}

const SHAPE = contourShape()

/** A contour may be missed by 2 dB in all its 16 bands: a curve two below it still has its number. */
const BELOW_CONTOUR = 2

/** A single number laid along the STC contour so that the curve has that number again; everything in it is assumed. */
export function contourCurve(stc: Decibels, sdDb: Decibels): OpeningCurve {
  const lossDb = shiftCurve(SHAPE, stc - BELOW_CONTOUR).map((loss) => Math.max(0, loss))
  const sd = table.contour.sdDb.map((strays) => Math.hypot(strays, sdDb))
  return { lossDb, sdDb: thirdsOfOctaves(sd), sdStcDb: sdDb, assumed: OCTAVE_KEYS }
}

/** Layers from outside to the room as one system. */
export function layersCurve(layers: readonly Layer[]): Result<OpeningCurve, string> {
  const predicted = predictLayers(layers, 'plot')
  if (!predicted.ok) return fail(predicted.error.map((problem) => problem.message).join(' '))
  const { lossDb, spreadBandDb, spreadStcDb } = predicted.value
  return ok({ lossDb, sdDb: spreadBandDb, sdStcDb: spreadStcDb, assumed: [] })
}

/** Two panes in frames of their own as layers. */
export function paneLayers({ outer, gapMm, inner }: PanePair): readonly Layer[] {
  const pane = ({ thicknessMm, isLaminated }: Pane): Layer => ({
    kind: 'board',
    material: isLaminated ? 'laminated-glass' : 'glass',
    thicknessMm,
  })
  return [pane(outer), { kind: 'cavity', depthMm: gapMm, link: { kind: 'none' } }, pane(inner)]
}

/** Closed as the wall is as it is shown, and weaker by so much. */
export function asTheWall(
  wall: Pick<OpeningCurve, 'lossDb' | 'sdDb'>,
  less: { readonly lessDb: Decibels; readonly sdDb: Decibels },
): OpeningCurve {
  const sdDb = wall.sdDb.map((sd) => Math.hypot(sd, less.sdDb))
  return {
    lossDb: capForDisplay(wall.lossDb).map((loss) => Math.max(0, loss - less.lessDb)),
    sdDb,
    sdStcDb: rootMeanSquare(sdDb) * table.singleNumber.ofBands,
    assumed: less.lessDb > 0 ? OCTAVE_KEYS : [],
  }
}

/** Nothing in it: everything that meets it goes through. */
export const OPEN_CURVE: OpeningCurve = { lossDb: flatCurve(0), sdDb: flatCurve(0), sdStcDb: 0, assumed: [] }

/** STC by E413; null for what stops nothing. */
export function stcOf(lossDb: BandCurve): Decibels | null {
  const { value } = rate(lossDb, STC)
  return value > 0 ? value : null
}

function rootMeanSquare(values: readonly number[]): number {
  return Math.sqrt(values.reduce((sum, value) => sum + value * value, 0) / values.length)
}
