import table from '#acoustics/data/cavity.json' with { type: 'json' }
import { AIR_BULK_MODULUS, AIR_DENSITY, AIR_IMPEDANCE, SOUND_SPEED } from '#acoustics/layered/air.ts'
import { MAX_NODES, type NodeSet, type Workspace } from '#acoustics/layered/workspace.ts'

/** One layer across a cavity, of air or of wool. */
export interface CavityLayer {
  /** m, > 0 */
  readonly depth: number
  readonly isFill: boolean
}

/** A cavity ready for the solver: its layers from the far side to the room and the loss of its air. */
export interface CavityModel {
  readonly layers: readonly CavityLayer[]
  readonly loss: number
}

/**
 * Loss factor of the air in a cavity of a depth in m: shallow ones lose more at their edges and frames.
 * @source fitted, data/cavity.json
 */
export function cavityLoss(depth: number): number {
  const { atReferenceDepth, referenceDepthM, depthExponent, max } = table.loss
  return Math.min(max, atReferenceDepth * (referenceDepthM / depth) ** depthExponent)
}

/**
 * Loss factor of the gap between two panes, depth in m: little in a factory-sealed unit, as any cavity when deep.
 * @source data/cavity.json
 */
export function glazingLoss(depth: number): number {
  const { loss, upToMm, noneFromMm } = table.sealedUnit
  const open = Math.min(1, Math.max(0, (1000 * depth - upToMm) / (noneFromMm - upToMm)))
  return loss + open * (cavityLoss(depth) - loss)
}

/** What one medium is at one frequency: squared wavenumber (1/m2) and impedance times wavenumber (Pa s/m2). */
interface Medium {
  readonly k2Re: number
  readonly k2Im: number
  readonly zkRe: number
  readonly zkIm: number
}

/** Lossy air: the impedance stays real, the wavenumber becomes k (1 - j l / 2). */
function airMedium(hz: number, loss: number): Medium {
  const k = (2 * Math.PI * hz) / SOUND_SPEED
  const half = loss / 2
  return {
    k2Re: k * k * (1 - half * half),
    k2Im: -2 * k * k * half,
    zkRe: AIR_IMPEDANCE * k,
    zkIm: -AIR_IMPEDANCE * k * half,
  }
}

/**
 * Mineral wool as a limp porous medium with an adiabatic bulk modulus (Miki's own isothermal one puts framed walls
 * 1 dB too high).
 * @source Miki (1990) and Panneton (2007), both memory; adiabatic modulus our own choice
 */
function fillMedium(hz: number, loss: number): Medium {
  const { miki, fill } = table
  const omega = 2 * Math.PI * hz
  const ratio = hz / fill.flowResistivityPaSM2
  const zPower = ratio ** miki.impedanceExponent
  const kPower = ratio ** miki.wavenumberExponent
  const [zRe, zIm] = [1 + miki.impedanceRe * zPower, -miki.impedanceIm * zPower]
  const [kRe, kIm] = [1 + miki.wavenumberRe * kPower, -miki.wavenumberIm * kPower]
  // Effective density of a rigid frame: Zc kp / w = rho0 x (relative impedance x relative wavenumber).
  const rigidRe = AIR_DENSITY * (zRe * kRe - zIm * kIm)
  const rigidIm = AIR_DENSITY * (zRe * kIm + zIm * kRe)
  const total = fill.bulkDensityKgM3 + AIR_DENSITY
  const upRe = total * rigidRe - AIR_DENSITY ** 2
  const upIm = total * rigidIm
  const downRe = total + rigidRe - 2 * AIR_DENSITY
  const norm = downRe * downRe + rigidIm * rigidIm
  const densityRe = (upRe * downRe + upIm * rigidIm) / norm
  const densityIm = (upIm * downRe - upRe * rigidIm) / norm
  // kp^2 = w^2 rho / (K0 (1 + j l))
  const scale = (omega * omega) / (AIR_BULK_MODULUS * (1 + loss * loss))
  return {
    k2Re: scale * (densityRe + loss * densityIm),
    k2Im: scale * (densityIm - loss * densityRe),
    zkRe: omega * densityRe,
    zkIm: omega * densityIm,
  }
}

/** Impedances of one symmetric layer: own (Z coth) and transfer (Z / sinh). */
interface LayerSeries {
  readonly ownRe: Float64Array
  readonly ownIm: Float64Array
  readonly transferRe: Float64Array
  readonly transferIm: Float64Array
}

function layerSeries(): LayerSeries {
  const series = () => new Float64Array(MAX_NODES)
  return { ownRe: series(), ownIm: series(), transferRe: series(), transferIm: series() }
}

const LAYER: LayerSeries = layerSeries()

/**
 * One layer at every node: Z (1 + q) / (1 - q) and 2 Z e / (1 - q) with e = exp(-j kz d), q = e^2, Z = Zc kp / kz.
 * Written with the decaying exponential, so a thick absorbing layer cannot overflow.
 */
function fillLayer(nodes: NodeSet, medium: Medium, depth: number, k2: number): void {
  const { k2Re, k2Im, zkRe, zkIm } = medium
  const { ownRe, ownIm, transferRe, transferIm } = LAYER
  const { sin2, count } = nodes
  for (let n = 0; n < count; n++) {
    const xRe = k2Re - k2 * sin2[n]!
    const size = Math.sqrt(xRe * xRe + k2Im * k2Im)
    let kRe: number
    let kIm: number
    if (xRe >= 0) {
      kRe = Math.sqrt((size + xRe) / 2)
      kIm = k2Im / (2 * kRe)
    } else {
      kIm = -Math.sqrt((size - xRe) / 2)
      kRe = k2Im / (2 * kIm)
    }
    const fade = Math.exp(kIm * depth)
    const eRe = fade * Math.cos(kRe * depth)
    const eIm = -fade * Math.sin(kRe * depth)
    const qRe = eRe * eRe - eIm * eIm
    const qIm = 2 * eRe * eIm
    const zRe = (zkRe * kRe + zkIm * kIm) / size
    const zIm = (zkIm * kRe - zkRe * kIm) / size
    // w = Z / (1 - q)
    const gap = 1 - qRe
    const norm = gap * gap + qIm * qIm
    const wRe = (zRe * gap - zIm * qIm) / norm
    const wIm = (zIm * gap + zRe * qIm) / norm
    ownRe[n] = wRe * (1 + qRe) - wIm * qIm
    ownIm[n] = wIm * (1 + qRe) + wRe * qIm
    transferRe[n] = 2 * (wRe * eRe - wIm * eIm)
    transferIm[n] = 2 * (wIm * eRe + wRe * eIm)
  }
}

function storeFirst(ws: Workspace, base: number): void {
  for (let n = 0; n < ws.nodes.count; n++) {
    ws.z11Re[base + n] = LAYER.ownRe[n]!
    ws.z11Im[base + n] = LAYER.ownIm[n]!
    ws.z22Re[base + n] = LAYER.ownRe[n]!
    ws.z22Im[base + n] = LAYER.ownIm[n]!
    ws.z12Re[base + n] = LAYER.transferRe[n]!
    ws.z12Im[base + n] = LAYER.transferIm[n]!
  }
}

/** Joins the next layer b to what stands in the workspace: z11 - z12^2 / s, z12 b12 / s, b22 - b12^2 / s, s = z22 + b11. */
function joinNext(ws: Workspace, base: number): void {
  const { z11Re, z11Im, z12Re, z12Im, z22Re, z22Im } = ws
  const { count } = ws.nodes
  for (let n = 0; n < count; n++) {
    const i = base + n
    const sRe = z22Re[i]! + LAYER.ownRe[n]!
    const sIm = z22Im[i]! + LAYER.ownIm[n]!
    const norm = sRe * sRe + sIm * sIm
    const aRe = z12Re[i]!
    const aIm = z12Im[i]!
    const bRe = LAYER.transferRe[n]!
    const bIm = LAYER.transferIm[n]!
    const uRe = (aRe * sRe + aIm * sIm) / norm
    const uIm = (aIm * sRe - aRe * sIm) / norm
    const wRe = (bRe * sRe + bIm * sIm) / norm
    const wIm = (bIm * sRe - bRe * sIm) / norm
    z11Re[i]! -= uRe * aRe - uIm * aIm
    z11Im[i]! -= uRe * aIm + uIm * aRe
    z12Re[i] = uRe * bRe - uIm * bIm
    z12Im[i] = uRe * bIm + uIm * bRe
    z22Re[i] = LAYER.ownRe[n]! - (wRe * bRe - wIm * bIm)
    z22Im[i] = LAYER.ownIm[n]! - (wRe * bIm + wIm * bRe)
  }
}

/**
 * Impedance matrix of cavity `index` at every node into ws.z11/z12/z22: p1 = z11 v1 - z12 v2, p2 = z12 v1 - z22 v2,
 * velocities positive towards the room.
 * @source transfer matrices of fluid layers in impedance form, own derivation
 */
export function fillCavityImpedance(ws: Workspace, index: number, cavity: CavityModel, hz: number, k2: number): void {
  const base = index * MAX_NODES
  cavity.layers.forEach((layer, place) => {
    const medium = layer.isFill ? fillMedium(hz, cavity.loss) : airMedium(hz, cavity.loss)
    fillLayer(ws.nodes, medium, layer.depth, k2)
    if (place === 0) storeFirst(ws, base)
    else joinNext(ws, base)
  })
}
