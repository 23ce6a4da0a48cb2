import type { SchemeResult } from '#analysis/results.ts'
import { choiceFor, type Scheme } from '#analysis/scheme.ts'
import type { Catalogue } from '#assemblies/assembly.ts'

/** Sum of cost band (1 to 5) times area (m2) of everything built: an index for comparing, no price. */
export function costIndex(result: SchemeResult, scheme: Scheme, catalogue: Catalogue): number {
  return result.surfaces.reduce((sum, surface) => {
    const assembly = catalogue.assemblies.get(choiceFor(scheme, surface.id).assembly)
    return sum + (assembly ? assembly.costBand * surface.soundAreaM2 : 0)
  }, 0)
}
