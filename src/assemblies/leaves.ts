import { type BoardLayer, type CavityLayer, type FillerLayer, isUnknownFloat, type Layer } from '#assemblies/layer.ts'
import type { Millimetres } from '#units/quantity.ts'

/** Boards that move as one, far side to room. */
export interface LeafGroup {
  readonly boards: readonly BoardLayer[]
  /** Entry i is true where compound lies between board i and board i + 1. */
  readonly dampedJoints: readonly boolean[]
  /** What rides on the leaf without being one: foam, finish, siding. */
  readonly fillers: readonly FillerLayer[]
}

/** What a floor floats on, between two leaves. */
export interface FloatingGap {
  readonly kind: 'floating'
  readonly depthMm: Millimetres
  readonly dynamicStiffnessMNm3: number
  /** null: a layer all over, without air. */
  readonly mountSpacingMm: Millimetres | null
}

/** What parts two leaves. */
export type Gap = CavityLayer | FloatingGap

/** Leaves and the gaps between them: always one gap less than leaves. */
export interface LeafGroups {
  readonly leaves: readonly LeafGroup[]
  readonly gaps: readonly Gap[]
}

/**
 * Sorts layers into leaves and gaps. Cavities with no leaf on one side are left out (an open frame), so is whatever
 * stands on a floating layer of unknown stiffness, and so is filler or compound that meets no board; cavities that only
 * such layers part become one.
 */
export function groupLeaves(layers: readonly Layer[]): LeafGroups {
  const leaves: LeafGroup[] = []
  const gaps: Gap[] = []
  let run: Exclude<Layer, CavityLayer>[] = []
  let open: Gap | null = null
  const close = (next: Gap | null) => {
    const leaf = leafOf(run)
    run = []
    if (leaf !== null) {
      if (leaves.length > 0 && open !== null) gaps.push(open)
      leaves.push(leaf)
      open = null
    }
    if (next !== null) open = open === null ? next : joinGaps(open, next)
  }
  const predicted = upToUnknown(layers)
  predicted.forEach((layer, index) => {
    const gap = gapAt(predicted, index)
    if (gap !== null) close(gap)
    else if (layer.kind !== 'cavity') run.push(layer)
  })
  close(null)
  return { leaves, gaps }
}

/** Where nobody knows how stiff a floating layer is, what stands there counts without what is on it. */
function upToUnknown(layers: readonly Layer[]): readonly Layer[] {
  const unknown = layers.findIndex(isUnknownFloat)
  return unknown < 0 ? layers : layers.slice(0, unknown)
}

/** The gap a layer makes; null: it belongs to a leaf. */
function gapAt(layers: readonly Layer[], index: number): Gap | null {
  const layer = layers[index]
  if (layer?.kind === 'cavity') return layer
  if (layer?.kind !== 'filler' || !layer.floats || layer.dynamicStiffnessMNm3 === undefined) return null
  const { thicknessMm, dynamicStiffnessMNm3, mountSpacingMm } = layer
  const raised = mountSpacingMm === undefined ? 0 : fillersAfter(layers, index)
  return {
    kind: 'floating',
    depthMm: thicknessMm + raised,
    dynamicStiffnessMNm3,
    mountSpacingMm: mountSpacingMm ?? null,
  }
}

/** Battens on mounts: they hang on the floor above and keep it that much higher over the air. */
function fillersAfter(layers: readonly Layer[], index: number): Millimetres {
  let depthMm = 0
  for (const layer of layers.slice(index + 1)) {
    if (layer.kind !== 'filler') break
    depthMm += layer.thicknessMm
  }
  return depthMm
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

/** Two gaps parted by nothing solid; a spring among them is what holds the leaves apart. */
function joinGaps(far: Gap, near: Gap): Gap {
  if (far.kind === 'floating') return { ...far, depthMm: far.depthMm + near.depthMm }
  if (near.kind === 'floating') return { ...near, depthMm: far.depthMm + near.depthMm }
  return joinCavities(far, near)
}

/** The first cavity's framing carries the far leaf, the second's the near one. */
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
