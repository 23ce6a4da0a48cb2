import { capForDisplay } from '#acoustics/curve.ts'
import type { Prediction } from '#acoustics/layered/predict.ts'
import { rate, rateWithEvidence, STC } from '#acoustics/rating.ts'
import { depthsOf, takesLiningOff } from '#analysis/depths.ts'
import type { Note, SurfaceRating, SurfaceResult } from '#analysis/results.ts'
import type { SurfaceFacts } from '#analysis/room.ts'
import type { Choice } from '#analysis/scheme.ts'
import { withVents } from '#analysis/vents.ts'
import type { Assembly, Catalogue, SurfaceKind } from '#assemblies/assembly.ts'
import { combineLayers } from '#assemblies/combine.ts'
import { type BoardLayer, isUnknownFloat } from '#assemblies/layer.ts'
import { mirrored } from '#assemblies/mirrored.ts'
import { layersMass, predictLayers } from '#assemblies/predict.ts'
import { type PublishedValue, publishedFor } from '#assemblies/published/match.ts'
import type { Decibels } from '#units/quantity.ts'
import { invariant, ok } from '#units/result.ts'

/** Everything about a surface that does not depend on its neighbours. */
export interface SurfaceInput {
  readonly facts: SurfaceFacts
  readonly kind: SurfaceKind
  readonly label: string
  readonly choice: Choice
  readonly catalogue: Catalogue
  readonly quality: 'drag' | 'plot'
  /** What the same scheme builds on the other face of a wall that two rooms share; absent: nothing, or it is no such wall. */
  readonly beyond?: Assembly | undefined
}

/** What only the plan can tell about a surface. */
type FromThePlan = 'areaLostM2' | 'clearLengthMm' | 'swallowed' | 'soundAreaM2' | 'addedMassKg'

type Described = Omit<SurfaceResult, FromThePlan>

/** What was described of a surface, by the catalogue it was described with: dragging a corner changes none of it. */
const kept = new WeakMap<SurfaceFacts, WeakMap<Catalogue, Map<string, Described>>>()

/** A surface's build-up, depths and predicted rating; kept for as long as the same surface is asked about. */
export function describeSurface(input: SurfaceInput): Described {
  const { facts, choice, catalogue, kind, label, quality } = input
  const byCatalogue = kept.get(facts) ?? new WeakMap<Catalogue, Map<string, Described>>()
  const byChoice = byCatalogue.get(catalogue) ?? new Map<string, Described>()
  const key = JSON.stringify([choice.assembly, choice.removeLining, kind, label, quality, input.beyond?.id])
  const described = byChoice.get(key) ?? describe(input)
  kept.set(facts, byCatalogue)
  byCatalogue.set(catalogue, byChoice)
  byChoice.set(key, described)
  return described
}

function describe(input: SurfaceInput): Described {
  const { facts, choice, catalogue } = input
  const assembly = catalogue.assemblies.get(choice.assembly) ?? null
  const depths = depthsOf(facts, choice, assembly)
  const built = buildUp(input, assembly)
  const rated = rateSurface(input, [...layersBeyond(input), ...built.layers])
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
    notes: [...built.notes, ...rated.notes, ...beyondNotes(input)],
    ...(input.beyond && { beyond: input.beyond }),
  }
}

/** What stands on the other face of a shared wall, as the first layers of the whole. */
function layersBeyond({ beyond, facts, catalogue }: SurfaceInput): SurfaceResult['layers'] {
  const existing = catalogue.existing.get(facts.existing)
  return beyond && existing ? mirrored(beyond, existing) : []
}

function beyondNotes({ beyond, label }: SurfaceInput): readonly Note[] {
  if (!beyond) return []
  const text = `${label}: two rooms share it, and this scheme builds ${beyond.shortName} on its other face: both linings are rated as one wall. What its far side is made of is taken as this room has it.`
  return [{ code: 'rated-with-beyond', text }]
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
  if (floatsOnUnknown(input)) {
    const text = `${input.label}: nobody has said how stiff the layer is that this floor floats on, so its airborne figure is not predicted.`
    return unrated('floating-floor', text)
  }
  const predicted = predictWithVents(input, layers)
  if (!predicted.ok) {
    return unrated('not-predicted', `${input.label}: ${predicted.error.map((problem) => problem.message).join(' ')}`)
  }
  const rating = ratingOf(predicted.value, isVented(input) ? [] : publishedFor(layers))
  return {
    rating,
    notes: rating.stc > FLANKING_FROM_STC ? [...predicted.value.notes, FLANKING] : predicted.value.notes,
  }
}

/** Past this no wall is heard alone any more: the junctions around it carry as much. @source common practice, no source */
const FLANKING_FROM_STC = 65
const FLANKING: Note = {
  code: 'flanking-decides',
  text: 'Above about STC 65 what goes round the surface, through floor, junctions and frame, decides; the figure is of the surface alone.',
}

/** A floor on a resilient layer of unknown stiffness. */
function floatsOnUnknown({ kind, choice, catalogue }: SurfaceInput): boolean {
  const layers = catalogue.assemblies.get(choice.assembly)?.layers ?? []
  return kind === 'floor' && layers.some(isUnknownFloat)
}

/** What is in print was measured closed: it says nothing of a surface behind a vented space. */
function isVented(input: SurfaceInput): boolean {
  return ventLimitOf(input) !== undefined
}

function ventLimitOf({ catalogue, facts }: SurfaceInput): Decibels | undefined {
  return catalogue.existing.get(facts.existing)?.ventLimitDb
}

function predictWithVents(input: SurfaceInput, layers: SurfaceResult['layers']) {
  const predicted = predictLayers(layers, input.quality)
  const ventLimitDb = ventLimitOf(input)
  if (!predicted.ok || ventLimitDb === undefined) return predicted
  return ok(withVents(predicted.value, layers, ventLimitDb, input.quality))
}

function unrated(code: string, text: string): { rating: null; notes: readonly Note[] } {
  return { rating: null, notes: [{ code, text }] }
}

/** Two-sided 95 % of a normal distribution. */
const SDS_95 = 1.96

/** One prediction as the numbers a client asks for; the likely range is 95 %, in whole STC rounded outward. */
export function ratingOf(prediction: Prediction, published: readonly PublishedValue[]): SurfaceRating {
  const evidence = rateWithEvidence(capForDisplay(prediction.lossDb))
  const stc = evidence.stc.value
  const plusMinus95 = SDS_95 * prediction.spreadStcDb
  return {
    stc,
    stcNo8dbRule: evidence.stcNo8dbRule.value,
    rw: evidence.rw.value,
    c: evidence.c.value,
    ctr: evidence.ctr.value,
    plusMinus95,
    likely: [Math.floor(stc - plusMinus95), Math.ceil(stc + plusMinus95)],
    evidence,
    prediction,
    physicsStc: rate(capForDisplay(prediction.physicsLossDb), STC).value,
    published,
  }
}
