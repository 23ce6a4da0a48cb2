import type { Quality } from '#acoustics/layered/method.ts'
import { type Prediction, predictLoss } from '#acoustics/layered/predict.ts'
import type { Layer } from '#assemblies/layer.ts'
import type { LayerProblem } from '#assemblies/layerProblems.ts'
import { layerMass } from '#assemblies/mass.ts'
import { toLayeredSystem } from '#assemblies/system.ts'
import type { KilogramsPerSquareMetre, SquareMetres } from '#units/quantity.ts'
import { fail, ok, type Result } from '#units/result.ts'

/** Build-ups kept: a search tries each assembly on each kind of surface, a few hundred in all. */
const MOST_KEPT = 512

/** By content, least recently asked first: what the same layers give never changes. */
const kept = new Map<string, Prediction>()

/**
 * Transmission loss expected of these layers, far side to room, as one layered system. Open frames and floating
 * floors are left out; equal layers are computed once.
 * @param areaM2 of the specimen; absent: the area of a laboratory wall
 */
export function predictLayers(
  layers: readonly Layer[],
  quality: Quality,
  areaM2?: SquareMetres | undefined,
): Result<Prediction, readonly LayerProblem[]> {
  const system = toLayeredSystem(layers)
  if (!system.ok) return fail(system.error)
  const key = JSON.stringify([quality, areaM2 ?? null, sorted(system.value)])
  const known = kept.get(key)
  kept.delete(key)
  const prediction = known ?? predictLoss(system.value, { quality, areaM2 })
  kept.set(key, prediction)
  const oldest = kept.keys().next()
  if (kept.size > MOST_KEPT && !oldest.done) kept.delete(oldest.value)
  return ok(prediction)
}

/** The same value with the keys of every object in order, so that equal content has equal text. */
function sorted(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(sorted)
  if (typeof value !== 'object' || value === null) return value
  return Object.entries(value)
    .toSorted(([a], [b]) => (a < b ? -1 : 1))
    .map(([key, entry]) => [key, sorted(entry)])
}

/** Weight of a build-up, kg/m2: boards, compound, frames, hardware and fillers, without wool. */
export function layersMass(layers: readonly Layer[]): KilogramsPerSquareMetre {
  return layers.reduce((sum, layer) => sum + layerMass(layer), 0)
}
