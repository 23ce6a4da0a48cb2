import type { Assembly, ExistingConstruction } from '#assemblies/assembly.ts'
import { linkOn } from '#assemblies/combine.ts'
import type { CavityLayer, Layer } from '#assemblies/layer.ts'

/**
 * An assembly on the far face of a construction, in the order of a build-up: what its own room sees last comes first.
 * It stands on that face as it is told from here: where a frame has a board there, in front of that board.
 */
export function mirrored(assembly: Assembly, existing: ExistingConstruction): readonly Layer[] {
  return assembly.layers
    .map((layer) => (layer.kind === 'cavity' ? turned({ ...layer, link: linkOn(existing, layer.link) }) : layer))
    .toReversed()
}

/** A cavity seen from its other side. */
function turned({ frame, farFrame, fillAgainst, ...cavity }: CavityLayer): CavityLayer {
  return {
    ...cavity,
    ...(frame && { farFrame: frame }),
    ...(farFrame && { frame: farFrame }),
    ...(fillAgainst && { fillAgainst: OTHER_SIDE[fillAgainst] }),
  }
}

const OTHER_SIDE = { far: 'room', room: 'far', both: 'both' } as const
