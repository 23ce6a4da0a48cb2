import type { SurfaceFacts } from '#analysis/room.ts'
import type { Choice } from '#analysis/scheme.ts'
import type { Assembly } from '#assemblies/assembly.ts'
import { layersDepth } from '#assemblies/layer.ts'
import type { Millimetres } from '#units/quantity.ts'

/** What a choice takes in front of a surface, counted from three lines. Negative: the face moves outward. */
export interface Depths {
  /** From the line that was drawn, which is what the tape touched. */
  readonly net: Millimetres
  readonly fromFace: Millimetres
  readonly fromStructure: Millimetres
}

/** True where the lining is there and the choice takes it off. */
export function takesLiningOff(facts: SurfaceFacts, choice: Choice): boolean {
  return choice.removeLining && facts.lining !== null
}

/**
 * Depths of a choice. A kept lining stands behind the assembly; a removed one gives its thickness back, which moves the
 * room's edge only where the tape touched the finished face. The out-of-true allowance comes before an assembly.
 */
export function depthsOf(facts: SurfaceFacts, choice: Choice, assembly: Assembly | null): Depths {
  const lining = facts.lining?.thicknessMm ?? 0
  const built = assembly ? layersDepth(assembly.layers) + facts.outOfTrueMm : 0
  const fromFace = built - (takesLiningOff(facts, choice) ? lining : 0)
  const fromStructure = fromFace + lining
  return { net: facts.measuredTo === 'finished-face' ? fromFace : fromStructure, fromFace, fromStructure }
}
