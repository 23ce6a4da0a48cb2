/**
 * Most integration nodes one frequency can need; with more coincidences than fit, each gets fewer nodes. Not a power of
 * two: rows of 4096 bytes would all fall on the same few lines of the processor's cache.
 */
export const MAX_NODES = 520

/**
 * Scratch arrays of one prediction: for each leaf or cavity i and node n, entry i * MAX_NODES + n.
 * Complex numbers are two arrays; allocating objects in the inner loops would cost ten times the arithmetic.
 */
export interface Workspace {
  /** Integration angles in use. */
  readonly nodes: NodeSet
  readonly leafRe: Float64Array
  readonly leafIm: Float64Array
  /** Cavity impedances z11, z12 (= z21) and z22, Pa s/m. */
  readonly z11Re: Float64Array
  readonly z11Im: Float64Array
  readonly z12Re: Float64Array
  readonly z12Im: Float64Array
  readonly z22Re: Float64Array
  readonly z22Im: Float64Array
  /** System matrix: diagonal and (negative) off-diagonal. */
  readonly diagRe: Float64Array
  readonly diagIm: Float64Array
  /** Diagonal during elimination. */
  readonly pivotRe: Float64Array
  readonly pivotIm: Float64Array
  /** Leaf velocities of the last solve, m/s. */
  readonly vRe: Float64Array
  readonly vIm: Float64Array
  /** What a sound driving the first leaf does, and one driving the last. */
  readonly fromFar: Squares
  readonly fromRoom: Squares
  /** Radiation efficiency by node. */
  readonly sigma: Float64Array
  /** Share of a diffuse field's power by node: weight times sin times the resonant window. */
  readonly incidence: Float64Array
  /** Load on the outer leaves by node, Pa s/m. */
  readonly load: Float64Array
}

/** Squared velocities by node, (m/s)^2. */
export interface Squares {
  /** Of the outer leaf that is not driven. */
  readonly through2: Float64Array
  /** Of the difference across each cavity: entry cavity * MAX_NODES + node. */
  readonly difference2: Float64Array
}

export interface NodeSet {
  readonly sin: Float64Array
  readonly sin2: Float64Array
  readonly cos: Float64Array
  /** Weight of d theta. */
  readonly weight: Float64Array
  count: number
  /** True for the plain nodes used when no leaf coincides: they are the same at every frequency. */
  plain: boolean
}

const KEPT = new Map<number, Workspace>()

/** Scratch for a number of leaves, made once: predictions run one after the other and clear what they use. */
export function workspaceFor(leaves: number): Workspace {
  const kept = KEPT.get(leaves) ?? createWorkspace(leaves)
  KEPT.set(leaves, kept)
  return kept
}

/** Rows by leaf and rows by node a workspace has, counted for its one block of memory. */
const LEAF_ROWS = 16
const NODE_ROWS = 9

function createWorkspace(leaves: number): Workspace {
  const block = new Float64Array((LEAF_ROWS * leaves + NODE_ROWS) * MAX_NODES)
  let taken = 0
  const rows = (count: number) => {
    const from = taken
    taken += count * MAX_NODES
    return block.subarray(from, taken)
  }
  const perNode = () => rows(1)
  const perLeaf = () => rows(leaves)
  return {
    nodes: { sin: perNode(), sin2: perNode(), cos: perNode(), weight: perNode(), count: 0, plain: false },
    leafRe: perLeaf(),
    leafIm: perLeaf(),
    z11Re: perLeaf(),
    z11Im: perLeaf(),
    z12Re: perLeaf(),
    z12Im: perLeaf(),
    z22Re: perLeaf(),
    z22Im: perLeaf(),
    diagRe: perLeaf(),
    diagIm: perLeaf(),
    pivotRe: perLeaf(),
    pivotIm: perLeaf(),
    vRe: perLeaf(),
    vIm: perLeaf(),
    fromFar: { through2: perNode(), difference2: perLeaf() },
    fromRoom: { through2: perNode(), difference2: perLeaf() },
    sigma: perNode(),
    incidence: perNode(),
    load: perNode(),
  }
}
