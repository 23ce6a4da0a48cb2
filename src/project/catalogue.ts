import type { Assembly, Catalogue } from '#assemblies/assembly.ts'
import { builtInCatalogue } from '#assemblies/catalogue.ts'
import { withOwnAssemblies } from '#assemblies/ownAssembly.ts'
import type { Project } from '#project/project.ts'

const known = new WeakMap<readonly Assembly[], Catalogue>()

/** Everything this project can name: the built-in catalogue and its own assemblies; the same object while those are. */
export function projectCatalogue({ assemblies }: Pick<Project, 'assemblies'>): Catalogue {
  const found = known.get(assemblies)
  if (found) return found
  const made = withOwnAssemblies(builtInCatalogue(), assemblies)
  known.set(assemblies, made)
  return made
}
