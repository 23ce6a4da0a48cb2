import { analyseScheme, type SchemeAnalysis } from '#analysis/analyse.ts'
import type { Room } from '#analysis/room.ts'
import type { Scheme } from '#analysis/scheme.ts'
import type { Catalogue } from '#assemblies/assembly.ts'
import { projectCatalogue } from '#project/catalogue.ts'
import type { Project } from '#project/project.ts'

/**
 * Computes a scheme's results with what the project can name, remembering the answer as long as its own assemblies, the
 * room and the scheme are the same objects.
 */
export type ResultsMemo = (project: Pick<Project, 'assemblies'>, room: Room, scheme: Scheme) => SchemeAnalysis

export function createResultsMemo(): ResultsMemo {
  const byCatalogue = new WeakMap<Catalogue, WeakMap<Room, WeakMap<Scheme, SchemeAnalysis>>>()
  return (project, room, scheme) => {
    const catalogue = projectCatalogue(project)
    const byRoom = byCatalogue.get(catalogue) ?? new WeakMap<Room, WeakMap<Scheme, SchemeAnalysis>>()
    byCatalogue.set(catalogue, byRoom)
    const known = byRoom.get(room) ?? new WeakMap<Scheme, SchemeAnalysis>()
    byRoom.set(room, known)
    const remembered = known.get(scheme)
    if (remembered) return remembered
    const computed = analyseScheme({ room, scheme, catalogue, quality: 'plot' })
    known.set(scheme, computed)
    return computed
  }
}
