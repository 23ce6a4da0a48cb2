import { AS_IS, type Assembly, type Catalogue, type Source } from '#assemblies/assembly.ts'
import type { CavityFrame, CavityLayer, Layer } from '#assemblies/layer.ts'
import { assemblyLayerProblems, lengthFaults, SPACING_MM } from '#assemblies/layerProblems.ts'

/** Where the build-up of an own assembly comes from. */
export const OWN_SOURCE: Source = { text: 'Built by the user of this project.', status: 'derived' }

/** One thing wrong with an assembly somebody wrote, and where: a layer's place counted from 1, or null: the whole. */
export interface OwnAssemblyProblem {
  readonly layer: number | null
  /** A full sentence. */
  readonly message: string
}

/** Everything that keeps an assembly from being built as it is written; empty: nothing. */
export function ownAssemblyProblems(assembly: Assembly): readonly OwnAssemblyProblem[] {
  const { layers, layerSources } = assembly
  const sources =
    layerSources === undefined || layerSources.length === layers.length
      ? []
      : [{ layer: null, message: `There are ${layers.length} layers and ${layerSources.length} layer sources.` }]
  const problems = assemblyLayerProblems(layers).map(({ layer, message }) => ({
    layer: layer === 0 ? null : layer,
    message,
  }))
  return [...problems, ...frameProblems(layers), ...sources].toSorted((a, b) => (a.layer ?? 0) - (b.layer ?? 0))
}

/** What stands in a cavity has to fit in it and be such as is built; studs that reach beyond it count by the part inside. */
function frameProblems(layers: readonly Layer[]): OwnAssemblyProblem[] {
  return layers.flatMap((layer, index) => {
    if (layer.kind !== 'cavity') return []
    return [layer.frame, layer.farFrame].flatMap((frame) =>
      (frame === undefined ? [] : frameFaults(frame, layer)).map((fault) => ({
        layer: index + 1,
        message: `Layer ${index + 1} (cavity): ${fault}.`,
      })),
    )
  })
}

function frameFaults({ name, depthMm, massKgM2, members }: CavityFrame, cavity: CavityLayer): string[] {
  const fits = !(depthMm > cavity.depthMm + SAME_MM)
  return [
    ...(fits ? [] : [`its ${name} are ${depthMm} mm deep in a cavity of ${cavity.depthMm} mm`]),
    ...(massKgM2 <= HEAVIEST_FRAME_KG_M2 ? [] : [`its ${name} weigh ${massKgM2} kg/m2; check the unit`]),
    ...(members === undefined
      ? []
      : [
          ...lengthFaults('stud depth', members.depthMm, STUD_MM),
          ...lengthFaults('stud spacing', members.spacingMm, SPACING_MM),
        ]),
  ]
}

/** Heaviest frame in a cavity. @source our own choice */
const HEAVIEST_FRAME_KG_M2 = 500
/** Shallowest furring and deepest joist, mm. @source our own choice */
const STUD_MM = { least: 5, most: 1500 }

/** Lengths this near are the same one. */
const SAME_MM = 0.001

/** Why an own assembly may not have this id; null: it may. */
export function idProblem(id: string, catalogue: Catalogue): string | null {
  if (id === AS_IS) return `the id "${AS_IS}" means that nothing is built`
  return catalogue.assemblies.has(id) ? `the id "${id}" is one of the built-in assemblies'` : null
}

/** The built-in catalogue and a project's own assemblies after it. */
export function withOwnAssemblies(catalogue: Catalogue, own: readonly Assembly[]): Catalogue {
  if (own.length === 0) return catalogue
  return {
    ...catalogue,
    assemblies: new Map([...catalogue.assemblies, ...own.map((assembly) => [assembly.id, assembly] as const)]),
    own: new Set(own.map(({ id }) => id)),
  }
}

/** True for an assembly that the user of the project built. */
export function isOwn(catalogue: Catalogue, assemblyId: string): boolean {
  return catalogue.own?.has(assemblyId) ?? false
}

/** What a catalogue text says of its own depth or weight: a copy is about to change, and its figures are computed. */
const FIGURE = /\bweighs? about\b|^It takes\b/

/**
 * A copy to be changed, under a name of its own. Sentences that state the weight or depth of the original are left
 * behind: those of the copy are computed and stand beside it.
 */
export function copyOfAssembly(assembly: Assembly, id: string, name: string): Assembly {
  return {
    ...assembly,
    id,
    name,
    cautions: assembly.cautions.filter((text) => !FIGURE.test(text)),
    source: OWN_SOURCE,
  }
}
