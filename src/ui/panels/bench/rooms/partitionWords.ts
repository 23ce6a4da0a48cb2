import type { Catalogue } from '#assemblies/assembly.ts'
import { layersDepth } from '#assemblies/layer.ts'
import type { Partition, Placement, Project } from '#project/project.ts'
import type { Option } from '#ui/fields/ChoiceField.tsx'
import type { Millimetres } from '#units/quantity.ts'

/** Where a new wall puts its thickness, as one looks along the line it was drawn on. */
export const PLACEMENTS: readonly Option<Placement>[] = [
  { value: 'first', text: 'all to the left of its line' },
  { value: 'middle', text: 'half to each side' },
  { value: 'second', text: 'all to the right of its line' },
]

/** What a partition can be built of. */
export function partitionConstructions({ existing }: Catalogue): readonly Option<string>[] {
  return [...existing.values()]
    .filter(({ surface }) => surface === 'wall')
    .map(({ id, name }) => ({ value: id, text: name }))
}

/** What it takes of the plan: the sum of its layers. */
export function partitionDepth(catalogue: Catalogue, { construction }: Pick<Partition, 'construction'>): Millimetres {
  return layersDepth(catalogue.existing.get(construction)?.layers ?? [])
}

/** The two rooms it stands between, with the wall it is in each: Booth, Wall 2 and Studio, Wall 4. */
export function sidesWords({ rooms }: Pick<Project, 'rooms'>, { sides }: Partition): string {
  return sides
    .map(({ room: roomId, wall }) => {
      const room = rooms.find(({ id }) => id === roomId)
      return room ? `${room.name}, Wall ${room.walls.findIndex(({ id }) => id === wall) + 1}` : 'a room that is gone'
    })
    .join(' and ')
}
