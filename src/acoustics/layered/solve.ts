import { MAX_NODES, type Workspace } from '#acoustics/layered/workspace.ts'

/** By cavity: coupling of its two leaves by connections, Pa s/m. */
export interface Springs {
  readonly re: Float64Array
  readonly im: Float64Array
}

/** Diagonal with loads on the outer leaves and the springs of both neighbouring cavities, into ws.pivot. */
function loadDiagonal(ws: Workspace, leaf: number, leaves: number, springs: Springs): void {
  const base = leaf * MAX_NODES
  const isInner = leaf < leaves - 1
  const re = (leaf > 0 ? springs.re[leaf - 1]! : 0) + (isInner ? springs.re[leaf]! : 0)
  const im = (leaf > 0 ? springs.im[leaf - 1]! : 0) + (isInner ? springs.im[leaf]! : 0)
  const loads = (leaf === 0 ? 1 : 0) + (isInner ? 0 : 1)
  for (let n = 0; n < ws.nodes.count; n++) {
    ws.pivotRe[base + n] = ws.diagRe[base + n]! + re + loads * ws.load[n]!
    ws.pivotIm[base + n] = ws.diagIm[base + n]! + im
  }
}

/** Takes leaf `done` out of the equation of leaf `next`; keeps the ratio v[done] / v[next] in ws.v of `done`. */
function eliminate(ws: Workspace, done: number, next: number, springs: Springs): void {
  const cavity = Math.min(done, next)
  const a = done * MAX_NODES
  const b = next * MAX_NODES
  const c = cavity * MAX_NODES
  const springRe = springs.re[cavity]!
  const springIm = springs.im[cavity]!
  for (let n = 0; n < ws.nodes.count; n++) {
    const pRe = ws.pivotRe[a + n]!
    const pIm = ws.pivotIm[a + n]!
    const oRe = ws.z12Re[c + n]! + springRe
    const oIm = ws.z12Im[c + n]! + springIm
    const norm = pRe * pRe + pIm * pIm
    const ratioRe = (oRe * pRe + oIm * pIm) / norm
    const ratioIm = (oIm * pRe - oRe * pIm) / norm
    ws.vRe[a + n] = ratioRe
    ws.vIm[a + n] = ratioIm
    ws.pivotRe[b + n]! -= oRe * ratioRe - oIm * ratioIm
    ws.pivotIm[b + n]! -= oRe * ratioIm + oIm * ratioRe
  }
}

function drive(ws: Workspace, leaf: number, pressure: number): void {
  const base = leaf * MAX_NODES
  for (let n = 0; n < ws.nodes.count; n++) {
    const re = ws.pivotRe[base + n]!
    const im = ws.pivotIm[base + n]!
    const norm = re * re + im * im
    ws.vRe[base + n] = (pressure * re) / norm
    ws.vIm[base + n] = (-pressure * im) / norm
  }
}

/** Turns the ratio kept for leaf `to` into its velocity. */
function follow(ws: Workspace, from: number, to: number): void {
  const a = from * MAX_NODES
  const b = to * MAX_NODES
  for (let n = 0; n < ws.nodes.count; n++) {
    const rRe = ws.vRe[b + n]!
    const rIm = ws.vIm[b + n]!
    ws.vRe[b + n] = rRe * ws.vRe[a + n]! - rIm * ws.vIm[a + n]!
    ws.vIm[b + n] = rRe * ws.vIm[a + n]! + rIm * ws.vRe[a + n]!
  }
}

/**
 * Velocities of all leaves at every node while one outer leaf is driven: a symmetric tridiagonal system, eliminated
 * towards the driven leaf and followed back. Results in ws.vRe/vIm, m/s.
 * @param leaves  number of leaves, 1 or more
 * @param pressure  Pa on the driven leaf
 * @param drivenLeaf  0 or leaves - 1
 * @source elimination of a tridiagonal matrix (Thomas), any numerical textbook
 */
export function solveVelocities(
  ws: Workspace,
  leaves: number,
  pressure: number,
  drivenLeaf: number,
  springs: Springs,
): void {
  const step = drivenLeaf === 0 ? 1 : -1
  const last = drivenLeaf === 0 ? leaves - 1 : 0
  for (let leaf = 0; leaf < leaves; leaf++) loadDiagonal(ws, leaf, leaves, springs)
  for (let leaf = last; leaf !== drivenLeaf; leaf -= step) eliminate(ws, leaf, leaf - step, springs)
  drive(ws, drivenLeaf, pressure)
  for (let leaf = drivenLeaf; leaf !== last; leaf += step) follow(ws, leaf, leaf + step)
}
