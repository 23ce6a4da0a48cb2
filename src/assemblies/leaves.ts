import type { BoardLayer, CavityLayer, FillerLayer, Layer } from '#assemblies/layer.ts'

/** Boards that move as one, far side to room. */
export interface LeafGroup {
  readonly boards: readonly BoardLayer[]
  /** Entry i is true where compound lies between board i and board i + 1. */
  readonly dampedJoints: readonly boolean[]
  /** What rides on the leaf without being one: foam, finish, siding. */
  readonly fillers: readonly FillerLayer[]
}

/** Leaves and the cavities between them: always one cavity less than leaves. */
export interface LeafGroups {
  readonly leaves: readonly LeafGroup[]
  readonly cavities: readonly CavityLayer[]
}

/**
 * Sorts layers into leaves and cavities. Cavities with no leaf on one side are left out (an open frame), so is
 * whatever stands on a floating layer, and so is filler or compound that meets no board; cavities that only such
 * layers part become one.
 */
export function groupLeaves(layers: readonly Layer[]): LeafGroups {
  const leaves: LeafGroup[] = []
  const cavities: CavityLayer[] = []
  let run: Exclude<Layer, CavityLayer>[] = []
  let open: CavityLayer | null = null
  for (const layer of [...upToFloating(layers), null]) {
    if (layer !== null && layer.kind !== 'cavity') {
      run.push(layer)
      continue
    }
    const leaf = leafOf(run)
    run = []
    if (leaf !== null) {
      if (leaves.length > 0 && open !== null) cavities.push(open)
      leaves.push(leaf)
      open = null
    }
    if (layer !== null) open = open === null ? layer : joinCavities(open, layer)
  }
  return { leaves, cavities }
}

/** A floating floor is not predicted, so what stands there counts without it. */
function upToFloating(layers: readonly Layer[]): readonly Layer[] {
  const floating = layers.findIndex((layer) => layer.kind === 'filler' && layer.floats)
  return floating < 0 ? layers : layers.slice(0, floating)
}

function leafOf(run: readonly Exclude<Layer, CavityLayer>[]): LeafGroup | null {
  const boards: BoardLayer[] = []
  const fillers: FillerLayer[] = []
  const dampedJoints: boolean[] = []
  let damped = false
  for (const layer of run) {
    if (layer.kind === 'filler') fillers.push(layer)
    if (layer.kind === 'damping-compound') damped = true
    if (layer.kind !== 'board') continue
    if (boards.length > 0) dampedJoints.push(damped)
    boards.push(layer)
    damped = false
  }
  return boards.length === 0 ? null : { boards, dampedJoints, fillers }
}

/** Two cavities parted by nothing solid: the first one's framing carries the far leaf, the second's the near one. */
function joinCavities(far: CavityLayer, near: CavityLayer): CavityLayer {
  const woolMm = [far, near].reduce((sum, cavity) => sum + (cavity.fill ? (cavity.fillMm ?? cavity.depthMm) : 0), 0)
  return {
    kind: 'cavity',
    depthMm: far.depthMm + near.depthMm,
    ...(woolMm > 0 ? { fill: 'mineral-wool', fillMm: woolMm } : {}),
    link: far.link.kind === 'none' ? far.link : near.link,
    frame: near.frame,
    farFrame: far.farFrame ?? far.frame,
  }
}
