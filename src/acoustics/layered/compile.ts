import links from '#acoustics/data/links.json' with { type: 'json' }
import { type CavityLayer, type CavityModel, cavityLoss, glazingLoss } from '#acoustics/layered/cavity.ts'
import type { ConnectionModel } from '#acoustics/layered/connection.ts'
import { type Detail, detailOf } from '#acoustics/layered/detail.ts'
import { type LeafModel, modelLeaf } from '#acoustics/layered/leaf.ts'
import { isMasonryLeaf, isPaneLeaf } from '#acoustics/layered/leafKind.ts'
import { modelLink } from '#acoustics/layered/link.ts'
import type { MethodOptions } from '#acoustics/layered/method.ts'
import { modelRib } from '#acoustics/layered/rib.ts'
import { hasRowsBeside, studRowsOf } from '#acoustics/layered/studRows.ts'
import { type Cavity, heldSideOf, type LayeredSystem, type Leaf, type Side } from '#acoustics/layered/system.ts'

/** A construction in SI units, ready for the solver. */
export interface SystemModel {
  readonly leaves: readonly LeafModel[]
  readonly cavities: readonly CavityModel[]
  /** Solid connections by cavity. */
  readonly connections: readonly (readonly ConnectionModel[])[]
  /** The same construction from both sides: one direction tells both. */
  readonly isSymmetric: boolean
  readonly detail: Detail
}

/** Leaves closer than this move as one. @source our own choice */
const CLOSEST_LEAVES_MM = 1
/** A fill layer or air gap thinner than this is left out, mm. */
const THINNEST_LAYER_MM = 0.5

function joinLeaves(a: Leaf, b: Leaf): Leaf {
  return {
    sheets: [...a.sheets, ...b.sheets],
    dampedJoints: [...a.dampedJoints, ...b.dampedJoints.map((joint) => joint + a.sheets.length)],
  }
}

/** The same construction with leaves that touch joined into one. */
export function joinTouchingLeaves(system: LayeredSystem): LayeredSystem {
  const leaves: Leaf[] = system.leaves.slice(0, 1)
  const cavities: Cavity[] = []
  system.cavities.forEach((cavity, i) => {
    const next = system.leaves[i + 1]
    if (next === undefined) return
    if (cavity.depthMm < CLOSEST_LEAVES_MM) {
      leaves[leaves.length - 1] = joinLeaves(leaves[leaves.length - 1]!, next)
      return
    }
    leaves.push(next)
    cavities.push(cavity)
  })
  return { leaves, cavities }
}

/**
 * Where a part fill lies when it is not told: in the frame behind a channel or clip, in the studs before masonry, else
 * half at each leaf, the one choice that is the same from both sides (it moves no band above 63 Hz by 0.2 dB).
 */
function usualFillSide(cavity: Cavity, far: Leaf, room: Leaf): Side | 'both' {
  const { link } = cavity
  if (isMasonryLeaf(far) !== isMasonryLeaf(room)) return isMasonryLeaf(far) ? 'room' : 'far'
  const isOneFrame = 'frame' in link && link.frame !== 'separate-studs' && link.frame !== 'staggered-stud'
  if (!isOneFrame) return 'both'
  return heldSideOf(link) === 'room' ? 'far' : 'room'
}

function cavityLayers(cavity: Cavity, far: Leaf, room: Leaf): readonly CavityLayer[] {
  const fill = Math.min(cavity.fillMm, cavity.depthMm)
  const air = cavity.depthMm - fill
  const ofAir = (mm: number): CavityLayer => ({ depth: mm / 1000, isFill: false })
  const ofFill = (mm: number): CavityLayer => ({ depth: mm / 1000, isFill: true })
  if (fill < THINNEST_LAYER_MM) return [ofAir(cavity.depthMm)]
  if (air < THINNEST_LAYER_MM) return [ofFill(cavity.depthMm)]
  switch (cavity.fillAgainst ?? usualFillSide(cavity, far, room)) {
    case 'far':
      return [ofFill(fill), ofAir(air)]
    case 'room':
      return [ofAir(air), ofFill(fill)]
    case 'both':
      return [ofFill(fill / 2), ofAir(air), ofFill(fill / 2)]
  }
}

function modelCavity(cavity: Cavity, far: Leaf, room: Leaf): CavityModel {
  const depth = cavity.depthMm / 1000
  const { link } = cavity
  if (link.kind === 'resilient-layer') {
    const spring = { stiffness: 1e6 * link.dynamicStiffnessMNm3, loss: links.floatingFloor.loss }
    return { layers: [], loss: 0, spring }
  }
  const loss = isPaneLeaf(far) && isPaneLeaf(room) ? glazingLoss(depth) : cavityLoss(depth)
  return { layers: cavityLayers(cavity, far, room), loss, spring: null }
}

function isPalindrome(values: readonly string[]): boolean {
  return values.every((value, i) => value === values[values.length - 1 - i])
}

/** True when swapping the two sides of a cavity changes nothing. */
function isEven(cavity: CavityModel, connections: readonly ConnectionModel[]): boolean {
  return (
    isPalindrome(cavity.layers.map((layer) => `${layer.isFill} ${layer.depth}`)) &&
    connections.every((connection) => connection.kind === 'point' || connection.spanFar === connection.spanRoom)
  )
}

/** Conservative: a mirrored pair of uneven cavities is not recognised and merely costs a second direction. */
function isSymmetric(model: Omit<SystemModel, 'isSymmetric' | 'detail'>): boolean {
  const connections = (i: number) => model.connections[i] ?? []
  return (
    model.cavities.every((cavity, i) => isEven(cavity, connections(i))) &&
    isPalindrome(model.leaves.map((leaf) => JSON.stringify(leaf))) &&
    isPalindrome(model.cavities.map((cavity, i) => JSON.stringify([cavity, connections(i)])))
  )
}

/** A construction in SI units with its studs, connections and cavity layers worked out. */
export function compileSystem(told: LayeredSystem, method: MethodOptions): SystemModel {
  const system = joinTouchingLeaves(told)
  const rows = studRowsOf(system)
  const leaves = system.leaves.map((leaf, i) => modelLeaf(leaf, rows[i] ? modelRib(rows[i]) : null))
  const between = system.cavities.map((cavity, i) => ({ cavity, far: system.leaves[i]!, room: system.leaves[i + 1]! }))
  const cavities = between.map(({ cavity, far, room }) => modelCavity(cavity, far, room))
  const connections = between.map((at, i) => modelLink({ ...at, method }, hasRowsBeside(system, i)))
  const model = { leaves, cavities, connections }
  return { ...model, isSymmetric: isSymmetric(model), detail: detailOf(system) }
}
