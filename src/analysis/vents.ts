import type { BandCurve } from '#acoustics/bands.ts'
import { lossOfFraction, transmittedFraction } from '#acoustics/curve.ts'
import type { Prediction } from '#acoustics/layered/predict.ts'
import type { Layer } from '#assemblies/layer.ts'
import { predictLayers } from '#assemblies/predict.ts'
import type { Decibels } from '#units/quantity.ts'

/**
 * A surface behind a vented space. Sound takes two ways side by side: through the whole build-up, and by the vents,
 * which hold the outer leaf to `ventLimit`, and then through what stands on the room side of the space alone. Both the
 * anchored curve and the calculation alone are told so, each from its own curves of the two ways.
 * @param closed  of the whole build-up with its outer leaf closed
 * @param layers  of the whole build-up, far side to room
 * @param ventLimit  dB, the same in every band
 * @source own derivation: transmitted energies of the two ways add
 */
export function withVents(
  closed: Prediction,
  layers: readonly Layer[],
  ventLimit: Decibels,
  quality: 'drag' | 'plot',
): Prediction {
  const inner = roomSide(layers, quality)
  return {
    ...closed,
    lossDb: twoWays(closed.lossDb, inner?.lossDb ?? null, ventLimit),
    physicsLossDb: twoWays(closed.physicsLossDb, inner?.physicsLossDb ?? null, ventLimit),
  }
}

function twoWays(through: BandCurve, inner: BandCurve | null, ventLimit: Decibels): BandCurve {
  return through.map((value, band) =>
    lossOfFraction(transmittedFraction(value) + transmittedFraction(ventLimit + (inner?.[band] ?? 0))),
  )
}

/** What stands on the room side of the last cavity, by itself; null where nothing does. */
function roomSide(layers: readonly Layer[], quality: 'drag' | 'plot'): Prediction | null {
  const last = layers.findLastIndex((layer) => layer.kind === 'cavity')
  const leaf = layers.slice(last + 1)
  if (leaf.length === 0) return null
  const predicted = predictLayers(leaf, quality)
  return predicted.ok ? predicted.value : null
}
