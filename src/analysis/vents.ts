import type { BandCurve } from '#acoustics/bands.ts'
import { lossOfFraction, transmittedFraction } from '#acoustics/curve.ts'
import type { Layer } from '#assemblies/layer.ts'
import { predictLayers } from '#assemblies/predict.ts'
import type { Decibels } from '#units/quantity.ts'

/**
 * Loss of a surface behind a vented space. Sound takes two ways side by side: through the whole build-up, and by the
 * vents, which hold the outer leaf to `ventLimit`, and then through what stands on the room side of the space alone.
 * @param loss  of the whole build-up with its outer leaf closed, dB over BANDS_HZ
 * @param layers  of the whole build-up, far side to room
 * @param ventLimit  dB, the same in every band
 * @source own derivation: transmitted energies of the two ways add
 */
export function lossWithVents(
  loss: BandCurve,
  layers: readonly Layer[],
  ventLimit: Decibels,
  quality: 'drag' | 'plot',
): BandCurve {
  const inner = lossOfRoomSide(layers, quality)
  return loss.map((value, band) =>
    lossOfFraction(transmittedFraction(value) + transmittedFraction(ventLimit + (inner?.[band] ?? 0))),
  )
}

/** Loss of what stands on the room side of the last cavity, dB; null where nothing does. */
function lossOfRoomSide(layers: readonly Layer[], quality: 'drag' | 'plot'): BandCurve | null {
  const last = layers.findLastIndex((layer) => layer.kind === 'cavity')
  const leaf = layers.slice(last + 1)
  if (leaf.length === 0) return null
  const predicted = predictLayers(leaf, quality)
  return predicted.ok ? predicted.value.lossDb : null
}
