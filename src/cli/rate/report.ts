import { BANDS_HZ } from '#acoustics/bands.ts'
import { SHOWN_LOSS_CAP_DB } from '#acoustics/curve.ts'
import { LABORATORY_AREA_M2 } from '#acoustics/layered/predict.ts'
import { type PublishedStc, publishedStc, publishedWords } from '#analysis/published.ts'
import type { Note, SurfaceRating } from '#analysis/results.ts'
import { ratingOf } from '#analysis/surfaces.ts'
import { isUnknownFloat, type Layer } from '#assemblies/layer.ts'
import { predictLayers } from '#assemblies/predict.ts'
import { type PublishedValue, publishedFor } from '#assemblies/published/match.ts'
import { problemText, type RateSystem } from '#cli/rate/input.ts'
import type { Decibels, Hertz } from '#units/quantity.ts'
import { fail, ok, type Result } from '#units/result.ts'

/** One system as the command line's JSON gives it; numbers unrounded. */
export interface RatedSystem {
  readonly id: string | number
  readonly bandsHz: readonly Hertz[]
  /** After the shift towards published measurements, at most 80 dB. */
  readonly tlDb: readonly Decibels[]
  /** One standard deviation a band. */
  readonly tlSdDb: readonly Decibels[]
  readonly stc: Decibels
  readonly stcNo8dbRule: Decibels
  readonly rw: Decibels
  readonly c: Decibels
  readonly ctr: Decibels
  readonly c50: Decibels
  readonly ctr50: Decibels
  readonly oitc: Decibels
  /** STC of the calculation alone, whole dB, by the rule of `stc`. */
  readonly physicsStc: Decibels
  readonly plusMinus95: Decibels
  readonly published: PublishedStc | null
  readonly resonances: readonly { readonly hz: Hertz; readonly cause: string }[]
  readonly notes: readonly Note[]
}

/** A system rated, or one sentence a problem. */
export function rateSystem(system: RateSystem): Result<RatedSystem, readonly string[]> {
  const { id, layers, areaM2 } = system
  const predicted = predictLayers(layers, 'plot', areaM2)
  if (!predicted.ok) return fail(predicted.error.map((problem) => `system ${id}${problemText(problem)}`))
  const published = publishedFor(layers)
  const { lossDb, physicsLossDb, spreadBandDb, resonances } = predicted.value
  if (![...lossDb, ...physicsLossDb].every(Number.isFinite)) {
    return fail([`system ${id}: no transmission loss can be calculated for such extreme layers`])
  }
  const rating = ratingOf(predicted.value, published)
  const { evidence } = rating
  return ok({
    id,
    bandsHz: BANDS_HZ,
    tlDb: lossDb.map((loss) => Math.min(loss, SHOWN_LOSS_CAP_DB)),
    tlSdDb: spreadBandDb,
    stc: rating.stc,
    stcNo8dbRule: rating.stcNo8dbRule,
    rw: rating.rw,
    c: rating.c,
    ctr: rating.ctr,
    c50: evidence.c50.value,
    ctr50: evidence.ctr50.value,
    oitc: evidence.oitc.value,
    physicsStc: rating.physicsStc,
    plusMinus95: rating.plusMinus95,
    published: publishedStc(published),
    resonances: resonances.map(({ hz, cause }) => ({ hz, cause })),
    notes: notesOn(system, rating, published),
  })
}

function notesOn(
  { layers, areaM2 }: RateSystem,
  { prediction }: SurfaceRating,
  published: readonly PublishedValue[],
): readonly Note[] {
  const { anchor, notes } = prediction
  const all: Note[] = [...notes, ...layerNotes(layers)]
  const isAlone = !anchor.isNear && published.length === 0
  if (isAlone && !all.some(({ text }) => text.includes(NOT_NEAR_WORDS))) all.push(NOT_NEAR)
  if (published.length > 1 || (published.length > 0 && publishedStc(published) === null)) {
    all.push({ code: 'published', text: `In print for this build-up: ${publishedWords(published)}.` })
  }
  if (areaM2 !== undefined && areaM2 !== LABORATORY_AREA_M2) {
    const text = `Calculated for a specimen of ${areaM2} m2; published values are of about ${LABORATORY_AREA_M2} m2.`
    all.push({ code: 'area', text })
  }
  return all
}

const NOT_NEAR_WORDS = 'no published measurement near this build-up'
const NOT_NEAR: Note = { code: 'no-published-measurement', text: `There is ${NOT_NEAR_WORDS}.` }

/** Parts of the input that the figure leaves out. */
function layerNotes(layers: readonly Layer[]): readonly Note[] {
  if (!layers.some(isUnknownFloat)) return []
  const text =
    'What stands on the floating layer is left out of the figure: its "dynamicStiffnessMNm3" is not given. Footsteps and structure-borne sound, which a floating floor is built against, are not predicted.'
  return [{ code: 'floating-floor', text }]
}
