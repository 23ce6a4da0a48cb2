import type { Room } from '#analysis/room.ts'
import { choiceFor, type Scheme } from '#analysis/scheme.ts'
import type { Assembly } from '#assemblies/assembly.ts'
import { projectCatalogue } from '#project/catalogue.ts'
import type { Project } from '#project/project.ts'

/** By wall of a room, what a scheme builds on the other face of the partitions it shares with other rooms. */
export function builtBeyond(
  project: Pick<Project, 'assemblies' | 'partitions'>,
  room: Pick<Room, 'id'>,
  scheme: Scheme,
): ReadonlyMap<string, Assembly> {
  const { assemblies } = projectCatalogue(project)
  const beyond = new Map<string, Assembly>()
  for (const { sides } of project.partitions) {
    const here = sides.find((side) => side.room === room.id)
    const there = sides.find((side) => side !== here)
    const assembly = there && assemblies.get(choiceFor(scheme, there.wall).assembly)
    if (here && assembly) beyond.set(here.wall, assembly)
  }
  return beyond
}
