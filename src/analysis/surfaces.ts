import type { Prediction } from '#acoustics/layered/predict.ts'
import { rate, rateAll, STC } from '#acoustics/rating.ts'
import { depthsOf, takesLiningOff } from '#analysis/depths.ts'
import type { Note, SurfaceRating, SurfaceResult } from '#analysis/results.ts'
import type { SurfaceFacts } from '#analysis/room.ts'
import type { Choice } from '#analysis/scheme.ts'
import type { Assembly, Catalogue, SurfaceKind } from '#assemblies/assembly.ts'
import { combineLayers } from '#assemblies/combine.ts'
import type { BoardLayer } from '#assemblies/layer.ts'
import { layersMass, predictLayers } from '#assemblies/predict.ts'
import { invariant } from '#units/result.ts'

/** Everything about a surface that does not depend on its neighbours. */
export interface SurfaceInput {
  readonly facts: SurfaceFacts
  readonly kind: SurfaceKind
  readonly label: string
  readonly choice: Choice
  readonly catalogue: Catalogue
  readonly quality: 'drag' | 'plot'
}

/** What only the plan can tell about a surface. */
type FromThePlan = 'areaLostM2' | 'clearLengthMm' | 'swallowed' | 'soundAreaM2' | 'addedMassKg'

/** A surface's build-up, depths and predicted rating. */
export function describeSurface(input: SurfaceInput): Omit<SurfaceResult, FromThePlan> {
  const { facts, choice, catalogue } = input
  const assembly = catalogue.assemblies.get(choice.assembly) ?? null
  const depths = depthsOf(facts, choice, assembly)
  const built = buildUp(input, assembly)
  const rated = rateSurface(input, built.layers)
  return {
    id: facts.id,
    kind: input.kind,
    label: input.label,
    assembly: choice.assembly,
    assemblyName: assembly?.name ?? 'as it stands',
    removeLining: takesLiningOff(facts, choice),
    hasLining: facts.lining !== null,
    netDepthMm: depths.net,
    depthFromFaceMm: depths.fromFace,
    depthFromStructureMm: depths.fromStructure,
    addedMassKgM2: assembly ? layersMass(assembly.layers) : 0,
    layers: built.layers,
    existingLayerCount: built.existingLayerCount,
    rating: rated.rating,
    notes: [...built.notes, ...rated.notes],
  }
}

function buildUp(input: SurfaceInput, assembly: Assembly | null) {
  const { facts, choice, catalogue } = input
  const existing = catalogue.existing.get(facts.existing)
  invariant(existing, `existing construction ${facts.existing} is in the catalogue`)
  const kept = takesLiningOff(facts, choice) ? null : facts.lining
  const lining: BoardLayer | null = kept && {
    kind: 'board',
    material: kept.material ?? 'gypsum-regular',
    thicknessMm: kept.thicknessMm,
  }
  return combineLayers({ existing, lining, assembly })
}

function rateSurface(
  input: SurfaceInput,
  layers: SurfaceResult['layers'],
): { rating: SurfaceRating | null; notes: readonly Note[] } {
  if (input.facts.farSide === 'soil') {
    return unrated('soil', `${input.label}: there is soil behind it, so no airborne path to rate.`)
  }
  const predicted = predictLayers(layers, input.quality)
  if (!predicted.ok) {
    return unrated('not-predicted', `${input.label}: ${predicted.error.map((problem) => problem.message).join(' ')}`)
  }
  return { rating: ratingOf(predicted.value), notes: predicted.value.notes }
}

function unrated(code: string, text: string): { rating: null; notes: readonly Note[] } {
  return { rating: null, notes: [{ code, text }] }
}

/** Two-sided 95 % of a normal distribution. */
const SDS_95 = 1.96

/** One prediction as the numbers a client asks for; the likely range is 95 %, in whole STC rounded outward. */
export function ratingOf(prediction: Prediction): SurfaceRating {
  const { stc, stcNo8dbRule, rw, c, ctr } = rateAll(prediction.lossDb)
  const plusMinus95 = SDS_95 * prediction.spreadStcDb
  return {
    stc,
    stcNo8dbRule,
    rw,
    c,
    ctr,
    plusMinus95,
    likely: [Math.floor(stc - plusMinus95), Math.ceil(stc + plusMinus95)],
    stcRating: rate(prediction.lossDb, STC),
    prediction,
    published: null,
  }
}
