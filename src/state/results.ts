import { analyseScheme, type SchemeAnalysis } from '#analysis/analyse.ts'
import type { Room } from '#analysis/room.ts'
import type { Scheme } from '#analysis/scheme.ts'
import type { Assembly, Catalogue } from '#assemblies/assembly.ts'
import { builtBeyond } from '#project/beyond.ts'
import { projectCatalogue } from '#project/catalogue.ts'
import type { Project } from '#project/project.ts'

/**
 * Computes a scheme's results with what the project can name, remembering the answer as long as its own assemblies, the
 * room and the scheme are the same objects, and the same is built beyond the walls it shares.
 */
export type ResultsMemo = (
  project: Pick<Project, 'assemblies' | 'partitions'>,
  room: Room,
  scheme: Scheme,
) => SchemeAnalysis

interface Kept {
  readonly beyond: ReadonlyMap<string, Assembly>
  readonly analysis: SchemeAnalysis
}

export function createResultsMemo(): ResultsMemo {
  const byCatalogue = new WeakMap<Catalogue, WeakMap<Room, WeakMap<Scheme, Kept>>>()
  return (project, room, scheme) => {
    const catalogue = projectCatalogue(project)
    const byRoom = byCatalogue.get(catalogue) ?? new WeakMap<Room, WeakMap<Scheme, Kept>>()
    byCatalogue.set(catalogue, byRoom)
    const known = byRoom.get(room) ?? new WeakMap<Scheme, Kept>()
    byRoom.set(room, known)
    const beyond = builtBeyond(project, room, scheme)
    const remembered = known.get(scheme)
    if (remembered && isSame(remembered.beyond, beyond)) return remembered.analysis
    const analysis = analyseScheme({ room, scheme, catalogue, quality: 'plot', beyond })
    known.set(scheme, { beyond, analysis })
    return analysis
  }
}

function isSame(one: ReadonlyMap<string, Assembly>, other: ReadonlyMap<string, Assembly>): boolean {
  return one.size === other.size && [...one].every(([wall, assembly]) => other.get(wall) === assembly)
}
