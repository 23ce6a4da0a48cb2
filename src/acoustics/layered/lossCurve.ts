import { type BandCurve, EXACT_CENTRES_HZ } from '#acoustics/bands.ts'
import { lossOfFraction } from '#acoustics/curve.ts'
import { compileSystem } from '#acoustics/layered/compile.ts'
import { transmittedAt } from '#acoustics/layered/integrate.ts'
import { type MethodOptions, QUALITY, type Quality } from '#acoustics/layered/method.ts'
import type { Run } from '#acoustics/layered/run.ts'
import type { LayeredSystem } from '#acoustics/layered/system.ts'
import { newTone } from '#acoustics/layered/tone.ts'
import { workspaceFor } from '#acoustics/layered/workspace.ts'
import type { SquareMetres } from '#units/quantity.ts'

function startRun(system: LayeredSystem, areaM2: SquareMetres, method: MethodOptions): Run {
  const model = compileSystem(system, method)
  const hasConnections = model.connections.some((list) => list.length > 0)
  const cavities = () => new Float64Array(Math.max(1, model.cavities.length))
  return {
    model,
    method,
    area: areaM2,
    tone: newTone(),
    ws: workspaceFor(model.leaves.length),
    springs: { re: cavities(), im: cavities() },
    noSprings: { re: cavities(), im: cavities() },
    spring: new Float64Array(2),
    spring2: model.connections.map((list) => new Float64Array(list.length)),
    drivenFromFar: cavities(),
    drivenFromRoom: cavities(),
    hasConnections,
    bothWays: method.directions === 'both' && hasConnections && !model.isSymmetric,
    cavitiesAtHz: 0,
  }
}

/**
 * Transmission loss of a checked construction by the method alone: no guards, no display cap.
 * @returns dB over BANDS_HZ; each band the energy mean over its sub-bands and stiffness samples
 */
export function lossCurve(
  system: LayeredSystem,
  areaM2: SquareMetres,
  quality: Quality,
  method: MethodOptions,
): BandCurve {
  const run = startRun(system, areaM2, method)
  const { subBands, stiffnessFactors } = QUALITY[quality]
  const offsets = Array.from({ length: subBands }, (_, i) => 2 ** (((i + 0.5) / subBands - 0.5) / 3))
  return EXACT_CENTRES_HZ.map((centre) => {
    let sum = 0
    for (const offset of offsets) {
      for (const stiffness of stiffnessFactors) sum += transmittedAt(run, centre * offset, stiffness)
    }
    return lossOfFraction(sum / (subBands * stiffnessFactors.length))
  })
}
