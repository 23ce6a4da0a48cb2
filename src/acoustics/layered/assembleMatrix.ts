import links from '#acoustics/data/links.json' with { type: 'json' }
import { AIR_IMPEDANCE } from '#acoustics/layered/air.ts'
import type { LeafModel } from '#acoustics/layered/leaf.ts'
import { lineImpedance } from '#acoustics/layered/lineImpedance.ts'
import type { RibModel } from '#acoustics/layered/rib.ts'
import type { Tone } from '#acoustics/layered/tone.ts'
import { MAX_NODES, type Workspace } from '#acoustics/layered/workspace.ts'

const FOOTING = new Float64Array(2)
const RIB_LOSS = links.ribLoss.value

/**
 * Adds a row of studs to a leaf: the stud's mass and bending in series with the board's give between fasteners.
 * @source own derivation; board stiffness factor fitted, data/links.json
 */
function addRib(ws: Workspace, base: number, leaf: LeafModel, rib: RibModel, tone: Tone, studsBend: boolean): void {
  const { omega, k2 } = tone
  lineImpedance(leaf, rib.spacing, rib.spacing, tone, FOOTING)
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
    const per = 1 / (downRe * downRe + downIm * downIm)
    diagRe[base + n]! += (upRe * downRe + upIm * downIm) * per
    diagIm[base + n]! += (upIm * downRe - upRe * downIm) * per
  }
}

/** A leaf and the air on both its sides, into the diagonal. */
function joinAir(ws: Workspace, index: number, leaves: number): void {
  const { leafRe, leafIm, diagRe, diagIm, z11Re, z11Im, z22Re, z22Im } = ws
  const { count } = ws.nodes
  const base = index * MAX_NODES
  const before = base - MAX_NODES
  const hasBefore = index > 0
  const hasAfter = index < leaves - 1
  for (let n = 0; n < count; n++) {
    let re = leafRe[base + n]!
    let im = leafIm[base + n]!
    if (hasBefore) {
      re += z22Re[before + n]!
      im += z22Im[before + n]!
    }
    if (hasAfter) {
      re += z11Re[base + n]!
      im += z11Im[base + n]!
    }
    diagRe[base + n] = re
    diagIm[base + n] = im
  }
}

/** Diagonal of the system matrix without loads and connections: leaf, its studs and the air on both sides. */
export function fillDiagonal(ws: Workspace, leaves: readonly LeafModel[], tone: Tone, studsBend: boolean): void {
  for (let index = 0; index < leaves.length; index++) {
    const leaf = leaves[index]!
    joinAir(ws, index, leaves.length)
    if (leaf.rib) addRib(ws, index * MAX_NODES, leaf, leaf.rib, tone, studsBend)
  }
}

/** Least squared share of its mass impedance any leaf puts up, by node, into ws.incidence; at most 1. */
function fillLeastShare2(ws: Workspace, leaves: readonly LeafModel[], { omega }: Tone): void {
  const { leafRe, leafIm, incidence } = ws
  const { count } = ws.nodes
  incidence.fill(1, 0, count)
  for (let i = 0; i < leaves.length; i++) {
    const base = i * MAX_NODES
    const inertial = omega * leaves[i]!.mass
    const per = 1 / (inertial * inertial)
    for (let n = 0; n < count; n++) {
      const re = leafRe[base + n]!
      const im = leafIm[base + n]!
      const share2 = (re * re + im * im) * per
      if (share2 < incidence[n]!) incidence[n] = share2
    }
  }
}

/**
 * Share of a diffuse field's power by node into ws.incidence: 1 where a leaf resonates, else limited by what a finite
 * panel takes from a wave near grazing. Needed for heavy leaves, neutral for light walls.
 * @source own choice
 */
export function fillIncidence(ws: Workspace, leaves: readonly LeafModel[], tone: Tone): void {
  fillLeastShare2(ws, leaves, tone)
  const { sigma, incidence } = ws
  const { sin, cos, weight, count } = ws.nodes
  for (let n = 0; n < count; n++) {
    const least = Math.sqrt(incidence[n]!)
    const taken = Math.min(1, sigma[n]! * cos[n]!)
    incidence[n] = weight[n]! * sin[n]! * (least + (1 - least) * taken)
  }
}

/** Load of the finite panel's own radiation on the outer leaves. */
export function loadByRadiation(ws: Workspace): void {
  const { load, sigma } = ws
  const { count } = ws.nodes
  for (let n = 0; n < count; n++) load[n] = AIR_IMPEDANCE * sigma[n]!
}

/** Load of endless plates radiating plane waves. */
export function loadByPlaneWaves(ws: Workspace): void {
  const { load } = ws
  const { cos, count } = ws.nodes
  for (let n = 0; n < count; n++) load[n] = AIR_IMPEDANCE / cos[n]!
}
