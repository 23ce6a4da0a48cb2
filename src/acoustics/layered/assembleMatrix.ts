import links from '#acoustics/data/links.json' with { type: 'json' }
import { AIR_IMPEDANCE } from '#acoustics/layered/air.ts'
import { bendingAt, type LeafModel } from '#acoustics/layered/leaf.ts'
import { lineImpedance } from '#acoustics/layered/lineImpedance.ts'
import type { RibModel } from '#acoustics/layered/rib.ts'
import { MAX_NODES, type Workspace } from '#acoustics/layered/workspace.ts'

/** Frequency, factor on Young's modulus and squared wavenumber in air (1/m2) of one solve. */
export interface Tone {
  readonly hz: number
  readonly stiffness: number
  readonly k2: number
}

const FOOTING = new Float64Array(2)
const RIB_LOSS = links.ribLoss.value

/**
 * Adds a row of studs to a leaf: the stud's mass and bending in series with the board's give between fasteners.
 * @source own derivation; board stiffness factor fitted, data/links.json
 */
function addRib(ws: Workspace, base: number, leaf: LeafModel, rib: RibModel, tone: Tone, studsBend: boolean): void {
  const { hz, stiffness, k2 } = tone
  const omega = 2 * Math.PI * hz
  const bending = bendingAt(leaf, hz, stiffness)
  lineImpedance(leaf.mass, bending, rib.spacing, rib.spacing, hz, FOOTING)
  const fRe = FOOTING[0]!
  const fIm = FOOTING[1]!
  const inertial = (omega * rib.massPerLength) / rib.spacing
  const flexural = studsBend ? rib.bending / (4 * rib.spacing * omega) : 0
  const { diagRe, diagIm } = ws
  const { sin2, count } = ws.nodes
  for (let n = 0; n < count; n++) {
    const kt2 = k2 * sin2[n]!
    const bent = flexural * kt2 * kt2
    const sRe = bent * RIB_LOSS
    const sIm = inertial - bent
    const upRe = sRe * fRe - sIm * fIm
    const upIm = sRe * fIm + sIm * fRe
    const downRe = sRe + fRe
    const downIm = sIm + fIm
    const norm = downRe * downRe + downIm * downIm
    diagRe[base + n]! += (upRe * downRe + upIm * downIm) / norm
    diagIm[base + n]! += (upIm * downRe - upRe * downIm) / norm
  }
}

function addCavities(ws: Workspace, index: number, leaves: number): void {
  const { diagRe, diagIm, z11Re, z11Im, z22Re, z22Im } = ws
  const { count } = ws.nodes
  const base = index * MAX_NODES
  const before = base - MAX_NODES
  for (let n = 0; n < count; n++) {
    if (index > 0) {
      diagRe[base + n]! += z22Re[before + n]!
      diagIm[base + n]! += z22Im[before + n]!
    }
    if (index < leaves - 1) {
      diagRe[base + n]! += z11Re[base + n]!
      diagIm[base + n]! += z11Im[base + n]!
    }
  }
}

/** Diagonal of the system matrix without loads and connections: leaf, its studs and the air on both sides. */
export function fillDiagonal(ws: Workspace, leaves: readonly LeafModel[], tone: Tone, studsBend: boolean): void {
  for (let index = 0; index < leaves.length; index++) {
    const leaf = leaves[index]!
    const base = index * MAX_NODES
    for (let n = base; n < base + ws.nodes.count; n++) {
      ws.diagRe[n] = ws.leafRe[n]!
      ws.diagIm[n] = ws.leafIm[n]!
    }
    if (leaf.rib) addRib(ws, base, leaf, leaf.rib, tone, studsBend)
    addCavities(ws, index, leaves.length)
  }
}

/**
 * Share of the incident power that counts, by node: 1 where a leaf resonates, else limited by what a finite panel
 * takes from a wave near grazing. Needed for heavy leaves, neutral for light walls.
 * @source own choice
 */
export function fillWindow(ws: Workspace, leaves: readonly LeafModel[], hz: number): void {
  const omega = 2 * Math.PI * hz
  for (let n = 0; n < ws.nodes.count; n++) {
    let least = 1
    for (let i = 0; i < leaves.length; i++) {
      const place = i * MAX_NODES + n
      const re = ws.leafRe[place]!
      const im = ws.leafIm[place]!
      const share = Math.sqrt(re * re + im * im) / (omega * leaves[i]!.mass)
      if (share < least) least = share
    }
    const taken = Math.min(1, ws.sigma[n]! * ws.nodes.cos[n]!)
    ws.window[n] = least + (1 - least) * taken
  }
}

/** Load of the finite panel's own radiation on the outer leaves. */
export function loadByRadiation(ws: Workspace): void {
  for (let n = 0; n < ws.nodes.count; n++) ws.load[n] = AIR_IMPEDANCE * ws.sigma[n]!
}

/** Load of endless plates radiating plane waves. */
export function loadByPlaneWaves(ws: Workspace): void {
  for (let n = 0; n < ws.nodes.count; n++) ws.load[n] = AIR_IMPEDANCE / ws.nodes.cos[n]!
}
