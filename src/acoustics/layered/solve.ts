import { type Springs, solvePair } from '#acoustics/layered/solvePair.ts'
import { solveTriple } from '#acoustics/layered/solveTriple.ts'
import { MAX_NODES, type Squares, type Workspace } from '#acoustics/layered/workspace.ts'

/** Diagonal with loads on the outer leaves and the springs of both neighbouring cavities, into ws.pivot. */
function loadDiagonal(ws: Workspace, leaf: number, leaves: number, springs: Springs): void {
  const { pivotRe, pivotIm, diagRe, diagIm, load } = ws
  const { count } = ws.nodes
  const base = leaf * MAX_NODES
  const isInner = leaf < leaves - 1
  const re = (leaf > 0 ? springs.re[leaf - 1]! : 0) + (isInner ? springs.re[leaf]! : 0)
  const im = (leaf > 0 ? springs.im[leaf - 1]! : 0) + (isInner ? springs.im[leaf]! : 0)
  const loads = (leaf === 0 ? 1 : 0) + (isInner ? 0 : 1)
  for (let n = 0; n < count; n++) {
    pivotRe[base + n] = diagRe[base + n]! + re + loads * load[n]!
    pivotIm[base + n] = diagIm[base + n]! + im
  }
}

/** Takes leaf `done` out of the equation of leaf `next`; keeps the ratio v[done] / v[next] in ws.v of `done`. */
function eliminate(ws: Workspace, done: number, next: number, springs: Springs): void {
  const { pivotRe, pivotIm, z12Re, z12Im, vRe, vIm } = ws
  const { count } = ws.nodes
  const cavity = Math.min(done, next)
  const a = done * MAX_NODES
  const b = next * MAX_NODES
  const c = cavity * MAX_NODES
  const springRe = springs.re[cavity]!
  const springIm = springs.im[cavity]!
  for (let n = 0; n < count; n++) {
    const pRe = pivotRe[a + n]!
    const pIm = pivotIm[a + n]!
    const oRe = z12Re[c + n]! + springRe
    const oIm = z12Im[c + n]! + springIm
    const norm = pRe * pRe + pIm * pIm
    const ratioRe = (oRe * pRe + oIm * pIm) / norm
    const ratioIm = (oIm * pRe - oRe * pIm) / norm
    vRe[a + n] = ratioRe
    vIm[a + n] = ratioIm
    pivotRe[b + n]! -= oRe * ratioRe - oIm * ratioIm
    pivotIm[b + n]! -= oRe * ratioIm + oIm * ratioRe
  }
}

function drive(ws: Workspace, leaf: number, pressure: number): void {
  const { pivotRe, pivotIm, vRe, vIm } = ws
  const { count } = ws.nodes
  const base = leaf * MAX_NODES
  for (let n = 0; n < count; n++) {
    const re = pivotRe[base + n]!
    const im = pivotIm[base + n]!
    const norm = re * re + im * im
    vRe[base + n] = (pressure * re) / norm
    vIm[base + n] = (-pressure * im) / norm
  }
}

/** Turns the ratio kept for leaf `to` into its velocity. */
function follow(ws: Workspace, from: number, to: number): void {
  const { vRe, vIm } = ws
  const { count } = ws.nodes
  const a = from * MAX_NODES
  const b = to * MAX_NODES
  for (let n = 0; n < count; n++) {
    const rRe = vRe[b + n]!
    const rIm = vIm[b + n]!
    vRe[b + n] = rRe * vRe[a + n]! - rIm * vIm[a + n]!
    vIm[b + n] = rRe * vIm[a + n]! + rIm * vRe[a + n]!
  }
}

/**
 * Velocities of all leaves at every node while one outer leaf is driven: a symmetric tridiagonal system, eliminated
 * towards the driven leaf and followed back. Results in ws.vRe/vIm, m/s.
 * @param drivenLeaf  0 or leaves - 1
 * @source elimination of a tridiagonal matrix (Thomas), any numerical textbook
 */
function solveVelocities(ws: Workspace, leaves: number, pressure: number, drivenLeaf: number, springs: Springs): void {
  const step = drivenLeaf === 0 ? 1 : -1
  const last = drivenLeaf === 0 ? leaves - 1 : 0
  for (let leaf = 0; leaf < leaves; leaf++) loadDiagonal(ws, leaf, leaves, springs)
  for (let leaf = last; leaf !== drivenLeaf; leaf -= step) eliminate(ws, leaf, leaf - step, springs)
  drive(ws, drivenLeaf, pressure)
  for (let leaf = drivenLeaf; leaf !== last; leaf += step) follow(ws, leaf, leaf + step)
}

/** Squares of the velocities in ws.vRe/vIm. */
function squareVelocities(ws: Workspace, leaves: number, lastLeaf: number, out: Squares): void {
  const { vRe, vIm } = ws
  const { count } = ws.nodes
  const last = lastLeaf * MAX_NODES
  for (let n = 0; n < count; n++) {
    const re = vRe[last + n]!
    const im = vIm[last + n]!
    out.through2[n] = re * re + im * im
  }
  for (let cavity = 0; cavity < leaves - 1; cavity++) {
    const a = cavity * MAX_NODES
    const b = a + MAX_NODES
    for (let n = 0; n < count; n++) {
      const re = vRe[a + n]! - vRe[b + n]!
      const im = vIm[a + n]! - vIm[b + n]!
      out.difference2[a + n] = re * re + im * im
    }
  }
}

/** Which outer leaf is driven. */
export type Driven = 'far' | 'room' | 'both'

/**
 * Squared velocities at every node under a pressure on an outer leaf, into ws.fromFar and ws.fromRoom as asked.
 * @param leaves  number of leaves, 1 or more
 * @param pressure  Pa on the driven leaf
 */
export function solveSquares(ws: Workspace, leaves: number, pressure: number, springs: Springs, driven: Driven): void {
  if (leaves === 2) {
    solvePair(ws, pressure, springs)
    return
  }
  if (leaves === 3) {
    solveTriple(ws, pressure, springs)
    return
  }
  if (driven !== 'room') {
    solveVelocities(ws, leaves, pressure, 0, springs)
    squareVelocities(ws, leaves, leaves - 1, ws.fromFar)
  }
  if (driven !== 'far') {
    solveVelocities(ws, leaves, pressure, leaves - 1, springs)
    squareVelocities(ws, leaves, 0, ws.fromRoom)
  }
}
