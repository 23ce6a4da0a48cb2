import { type BandCurve, EXACT_CENTRES_HZ } from '#acoustics/bands.ts'
import { lossOfFraction } from '#acoustics/curve.ts'
import { compileSystem, type SystemModel } from '#acoustics/layered/compile.ts'
import { transmittedAt } from '#acoustics/layered/integrate.ts'
import { type MethodOptions, QUALITY, type Quality, type Sampling } from '#acoustics/layered/method.ts'
import type { Run } from '#acoustics/layered/run.ts'
import type { LayeredSystem } from '#acoustics/layered/system.ts'
import { newTone } from '#acoustics/layered/tone.ts'
import { workspaceFor } from '#acoustics/layered/workspace.ts'
import type { Hertz, SquareMetres } from '#units/quantity.ts'

function startRun(model: SystemModel, areaM2: SquareMetres, method: MethodOptions): Run {
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
    nodesPerSide: Math.round(method.gaussNodes * model.detail.nodeFactor),
    cavitiesAtHz: 0,
  }
}

/** Where a coincidence sets in, as a share of its critical frequency: there the loss changes within one band. */
const ONSET = [0.8, 1.25] as const

/** True where a band has to be sampled more finely: around the onset of a coincidence, or everywhere. */
function isSharp({ leaves, detail }: SystemModel, centre: Hertz): boolean {
  if (detail.hasSharpBands) return true
  return leaves.some(({ lowestCriticalHz: critical }) => centre > ONSET[0] * critical && centre < ONSET[1] * critical)
}

/** Frequencies that divide a band evenly, as shares of its centre. */
function subBandOffsets(count: number): readonly number[] {
  return Array.from({ length: count }, (_, i) => 2 ** (((i + 0.5) / count - 0.5) / 3))
}

/**
 * Transmission loss of a checked construction by the method alone: no guards, no display cap.
 * @returns dB over BANDS_HZ; each band the energy mean over its sub-bands and stiffness samples
 */
export function lossCurve(
  system: LayeredSystem,
  areaM2: SquareMetres,
  sampling: Quality | Sampling,
  method: MethodOptions,
): BandCurve {
  return modelLossCurve(compileSystem(system, method), areaM2, sampling, method)
}

/** The same of a construction already in SI units; dB over BANDS_HZ. */
export function modelLossCurve(
  model: SystemModel,
  areaM2: SquareMetres,
  sampling: Quality | Sampling,
  method: MethodOptions,
): BandCurve {
  const run = startRun(model, areaM2, method)
  const { subBands, finerSubBands, stiffnessFactors } = typeof sampling === 'string' ? QUALITY[sampling] : sampling
  const [usual, finer] = [subBandOffsets(subBands), subBandOffsets(finerSubBands)]
  return EXACT_CENTRES_HZ.map((centre) => {
    const offsets = isSharp(model, centre) ? finer : usual
    let sum = 0
    for (const offset of offsets) {
      for (const stiffness of stiffnessFactors) sum += transmittedAt(run, centre * offset, stiffness)
    }
    return lossOfFraction(sum / (offsets.length * stiffnessFactors.length))
  })
}
